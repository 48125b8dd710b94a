// The list of families, and every face in it against what the font files and Debian say of them.

#include "compiler/stages/fonts/fonts.hpp"

#include <doctest/doctest.h>
#include <hb-ot.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <memory>
#include <set>
#include <sstream>
#include <string>
#include <vector>

using quoin::Diagnostics;
using quoin::Sources;
using quoin::fonts::Face;
using quoin::fonts::FaceStyle;
using quoin::fonts::Family;
using quoin::fonts::Fonts;

namespace {

namespace files = std::filesystem;

const files::path carried = files::path(QUOIN_DATA_FOLDER) / "fonts";

class Folder { // of font files, gone with the test
public:
    Folder() {
        std::string name = (files::temp_directory_path() / "quoin-fonts-XXXXXX").string();
        REQUIRE(mkdtemp(name.data()) != nullptr);
        path_ = name;
    }
    ~Folder() {
        std::error_code ignored;
        files::remove_all(path_, ignored);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    void write(const std::string& name, const std::string& bytes) const {
        std::ofstream(path_ / name) << bytes;
    }
    const files::path& path() const { return path_; }

private:
    files::path path_;
};

struct Opened {
    Sources sources;
    Diagnostics diagnostics;
    std::unique_ptr<Fonts> fonts;

    explicit Opened(const files::path& folder) : fonts(Fonts::open(sources, folder, diagnostics)) {}

    std::vector<std::string> messages() const {
        std::vector<std::string> texts;
        for (const quoin::Diagnostic& diagnostic : diagnostics.all())
            texts.push_back(std::to_string(diagnostic.place.line) + ": " + diagnostic.text);
        return texts;
    }
};

std::string bytes_of(const files::path& file) {
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

std::string output_of(const std::string& command) {
    const std::unique_ptr<std::FILE, int (*)(std::FILE*)> pipe(popen(command.c_str(), "r"), pclose);
    std::string output;
    std::array<char, 4096> chunk{};
    while (const std::size_t count = std::fread(chunk.data(), 1, chunk.size(), pipe.get()))
        output.append(chunk.data(), count);
    return output;
}

void check_against_os2(const Face& face) {
    hb_position_t cap_height = 0;
    hb_position_t x_height = 0;
    CHECK(hb_ot_metrics_get_position(face.hb_font(), HB_OT_METRICS_TAG_CAP_HEIGHT, &cap_height));
    CHECK(hb_ot_metrics_get_position(face.hb_font(), HB_OT_METRICS_TAG_X_HEIGHT, &x_height));
    // Makers state these without the serifs' and curves' overshoot, which is within 2 % of an em.
    const int near = face.units_per_em() / 50;
    CHECK(std::abs(face.cap_height() - cap_height) <= near);
    CHECK(std::abs(face.x_height() - x_height) <= near);
}

const std::string whole = "family: Tidal\nlicence: OFL-1.1\npackage: fonts-tidal\nregular: r.otf\n"
                          "italic: i.otf\nbold: b.otf\nbold-italic: z.otf\n";

struct Bad {
    std::string text;
    std::vector<std::string> messages;
};

const std::vector<Bad> bad_lists = {
    {"family: Tidal\nlicence: OFL-1.1\npackage: fonts-tidal\nregular: r.otf\nitalic: i.otf\n",
     {"1: font family without 'bold'; add the line",
      "1: font family without 'bold-italic'; add the line"}},
    {whole + "itallic: j.otf\n",
     {"8: unknown label 'itallic' in a font family; did you mean 'italic'?"}},
    {whole + "weight: 700\n",
     {"8: unknown label 'weight' in a font family; expected family, licence, package or a style"}},
    {whole + "bold: c.otf\n",
     {"8: second 'bold' in one font family; expected one, so leave a blank line before the next "
      "family"}},
    {whole + "\n" + whole, {"9: second font family 'Tidal'; expected each name once"}},
    {whole + "- r.otf\n", {"8: bullet in a font family; expected 'label: value'"}},
};

}

TEST_SUITE("fonts") {
    TEST_CASE("the list of families is in order, and each has four different files") {
        const Opened opened(carried);
        REQUIRE(opened.fonts);
        CHECK(opened.messages().empty());
        CHECK(opened.fonts->names() ==
              std::vector<std::string_view>{"Libertine", "Gentium Book", "Gentium", "Charis",
                                            "Vollkorn", "Lato", "Inter", "Open Sans", "Stix",
                                            "Carlito", "Caladea"});
        for (const std::string_view name : opened.fonts->names()) {
            CAPTURE(name);
            const Family* family = opened.fonts->family(name);
            REQUIRE(family != nullptr);
            std::set<std::string> different;
            for (const auto& [style, file] : family->files)
                different.insert(file);
            CHECK(different.size() == 4);
        }
    }

    TEST_CASE("names are found whatever their case") {
        const Opened opened(carried);
        REQUIRE(opened.fonts);
        const Family* family = opened.fonts->family("Gentium Book");
        CHECK(family != nullptr);
        CHECK(opened.fonts->family("gentium BOOK") == family);
        CHECK(opened.fonts->family("Gentium Bok") == nullptr);
        CHECK(opened.fonts->family("") == nullptr);
    }

    TEST_CASE("every face opens and says of itself what its file says") {
        const Opened opened(carried);
        REQUIRE(opened.fonts);
        for (const std::string_view name : opened.fonts->names())
            for (const auto& [style, relative] : opened.fonts->family(name)->files) {
                const std::string file = relative;
                CAPTURE(file);
                std::string fault;
                const Face* face = opened.fonts->face(*opened.fonts->family(name), style, fault);
                CHECK(fault.empty());
                REQUIRE(face != nullptr);
                CHECK(opened.fonts->face(*opened.fonts->family(name), style, fault) == face);
                CHECK(face->file() == carried / file);
                // OpenType 1.9, "Organization of an OpenType Font": 'OTTO' means CFF outlines
                CHECK(face->is_cff() == bytes_of(face->file()).starts_with("OTTO"));
                check_against_os2(*face);
                CHECK(face->x_height() < face->cap_height());
                CHECK(face->cap_height() < face->ascent() + face->units_per_em() / 50);
                CHECK(face->descent() > face->units_per_em() / 10);
                CHECK(face->has_glyph(U'é'));
                CHECK_FALSE(face->has_glyph(U'漢'));
                // OS/2 usWeightClass and slant, as style-sensitive values of the file
                CHECK((hb_style_get_value(face->hb_font(), HB_STYLE_TAG_WEIGHT) > 550) ==
                      style.bold);
                const bool italic =
                    hb_style_get_value(face->hb_font(), HB_STYLE_TAG_ITALIC) > 0 ||
                    hb_style_get_value(face->hb_font(), HB_STYLE_TAG_SLANT_ANGLE) != 0;
                CHECK(italic == style.italic);
            }
    }

    TEST_CASE("Debian says the same of packages and licences") {
        const Opened opened(carried);
        REQUIRE(opened.fonts);
        std::string command = "dpkg-query -S";
        std::vector<std::string> expected;
        for (const std::string_view name : opened.fonts->names()) {
            const Family& family = *opened.fonts->family(name);
            CAPTURE(family.package);
            for (const auto& [style, file] : family.files) {
                command += " /usr/share/fonts/" + file;
                expected.push_back(family.package + ": /usr/share/fonts/" + file);
            }
            const std::string copyright =
                bytes_of("/usr/share/doc/" + family.package + "/copyright");
            const std::string licence = family.licence.substr(0, family.licence.find("-RFN"));
            CHECK(copyright.find(licence) != std::string::npos);
        }
        std::istringstream output(output_of(command));
        std::vector<std::string> found;
        for (std::string line; std::getline(output, line);)
            found.push_back(line);
        std::ranges::sort(found);
        std::ranges::sort(expected);
        CHECK(found == expected);
    }

    TEST_CASE("a missing file is named, with the package that carries it") {
        const Folder folder;
        folder.write("families", "# invented\n\n" + whole);
        const Opened opened(folder.path());
        REQUIRE(opened.fonts);
        CHECK(opened.messages().empty());
        std::string fault;
        CHECK(opened.fonts->face(*opened.fonts->family("Tidal"), {true, true}, fault) == nullptr);
        CHECK(fault == "font file '" + (folder.path() / "z.otf").string() +
                           "' is missing; the Debian package 'fonts-tidal' carries it");
    }

    TEST_CASE("a file that is no font, or lacks what is measured, is a fault") {
        const Folder folder;
        folder.write("families", whole);
        folder.write("r.otf", "no font");
        folder.write("i.otf", "");
        const std::string half = bytes_of(carried / "truetype/lato/Lato-Regular.ttf");
        folder.write("b.otf", half.substr(0, 2000));
        files::create_directory(folder.path() / "z.otf");
        const Opened opened(folder.path());
        REQUIRE(opened.fonts);
        const Family& family = *opened.fonts->family("tidal");
        const auto fault_of = [&](FaceStyle style) {
            std::string fault;
            CHECK(opened.fonts->face(family, style, fault) == nullptr);
            return fault;
        };
        const auto named = [&](const std::string& name) {
            return "file '" + (folder.path() / name).string() + "' ";
        };
        CHECK(fault_of({false, false}) == named("r.otf") + "is not an OpenType font");
        CHECK(fault_of({false, true}) == named("i.otf") + "is not an OpenType font");
        CHECK(fault_of({true, false}) ==
              "font " + named("b.otf") + "lacks the letter 'd', which text is measured by");
        CHECK(fault_of({true, true}) == "font " + named("z.otf") + "cannot be read");
    }

    TEST_CASE("faults in the list are reported where they stand") {
        for (const Bad& bad : bad_lists) {
            const Folder folder;
            folder.write("families", bad.text);
            const Opened opened(folder.path());
            REQUIRE(opened.fonts);
            CAPTURE(bad.text);
            CHECK(opened.messages() == bad.messages);
        }
    }

    TEST_CASE("a folder without a list gives no fonts") {
        const Folder folder;
        const Opened opened(folder.path());
        CHECK_FALSE(opened.fonts);
        CHECK(opened.diagnostics.has_errors());
    }
}
