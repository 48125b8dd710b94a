// The PDF as a whole, read by other programs: poppler (pdftotext, pdffonts, pdfinfo) and qpdf.
#include "compiler/stages/pdf/pdf.hpp"

#include "compiler/base/write_file.hpp"
#include "compiler/stages/pdf/font_descriptor.hpp"
#include "tests/fixtures/hand_set.hpp"

#include <doctest/doctest.h>

#include <unistd.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <sstream>
#include <string>
#include <thread>
#include <vector>

using namespace quoin;
using namespace quoin::pdf;

namespace {

// Other programs read the PDF from a file in a folder of the test's own.
class Reader {
public:
    explicit Reader(const std::string& pdf) {
        std::string name = (std::filesystem::temp_directory_path() / "quoin-XXXXXX").string();
        folder_ = ::mkdtemp(name.data());
        REQUIRE_FALSE(write_file(file(), pdf));
    }
    ~Reader() { std::filesystem::remove_all(folder_); }
    Reader(const Reader&) = delete;
    Reader& operator=(const Reader&) = delete;

    std::string run(const std::string& command, const std::string& after = "") const {
        const std::string line = command + " " + file() + " " + after + " 2>&1";
        std::FILE* const pipe = ::popen(line.c_str(), "r");
        REQUIRE(pipe != nullptr);
        std::string output;
        std::array<char, 4096> buffer{};
        while (const std::size_t got = std::fread(buffer.data(), 1, buffer.size(), pipe))
            output.append(buffer.data(), got);
        status_ = ::pclose(pipe);
        return output;
    }
    int status() const { return status_; }

private:
    std::string file() const { return folder_ + "/set.pdf"; }

    std::string folder_;
    mutable int status_ = 0;
};

const fonts::Face& face(const std::string& file) {
    static std::map<std::string, fonts::Face> faces;
    const auto path = "/usr/share/fonts/" + file;
    return faces.try_emplace(file, std::filesystem::path(path)).first->second;
}

const char* const glyf_file = "truetype/vollkorn/Vollkorn-Regular.ttf";
const char* const glyf_bold_file = "truetype/vollkorn/Vollkorn-Bold.ttf";
const char* const cff_file = "opentype/linux-libertine/LinLibertine_R.otf";

std::string pdf_of(const HandSet& set) {
    return write_pdf(set.composition, set.pages, std::nullopt);
}

// With every object and stream in the open.
std::string unpacked(const std::string& pdf) {
    return Reader(pdf).run("qpdf --qdf --object-streams=disable", "-");
}

std::string text_of(const HandSet& set, const std::string& mode = "") {
    return Reader(pdf_of(set)).run("pdftotext -enc UTF-8 " + mode, "-");
}

// Two pages with all that a résumé has.
HandSet whole(const fonts::Face& text, const fonts::Face& bold) {
    HandSet set;
    const auto section = set.element(composition::StructureType::sect, 0);
    const auto name = set.element(composition::StructureType::h1, section);
    set.paragraph(name, {{name, &bold, "Ottoline Brandt", 0.05}});
    const auto contact = set.element(composition::StructureType::p, section);
    const auto link = set.element(composition::StructureType::link, contact,
                                  "mailto:brandt@ellery.example", "e-mail Ottoline Brandt");
    set.paragraph(contact, {{contact, &text, "Port Ellery, WA · 555-0142 · "},
                            {link, &text, "brandt@ellery.example", 0, true, {20, 60, 140}}});
    set.rule();
    for (const char* title : {"Education", "Expérience"}) {
        const auto part = set.element(composition::StructureType::sect, 0);
        const auto heading = set.element(composition::StructureType::h2, part);
        set.composition.outlines.push_back(
            {title, set.paragraph(heading, {{heading, &bold, title}})});
        const auto list = set.element(composition::StructureType::l, part);
        for (int i = 0; i < 3; ++i) {
            const auto item = set.element(composition::StructureType::li, list);
            const auto label = set.element(composition::StructureType::lbl, item);
            const auto body = set.element(composition::StructureType::lbody, item);
            const auto paragraph = set.element(composition::StructureType::p, body);
            set.paragraph(paragraph,
                          {{label, &text, "• "},
                           {paragraph, &text,
                            "Surveyed fourteen tide pools a week, filed the first affluent office "
                            "findings of five officers, and cut the time from sample to result by "
                            "a third over one summer"}},
                          1, 12);
        }
        if (title == std::string("Education")) {
            set.new_page();
            set.running_head({0, &text, "Ottoline Brandt, page 2"});
        }
    }
    return set;
}

HandSet one_paragraph(const fonts::Face& text, const std::string& words) {
    HandSet set;
    const auto element = set.element(composition::StructureType::h1, 0);
    set.paragraph(element, {{element, &text, words}});
    return set;
}

// The left edge of each word, as poppler measures it.
std::vector<double> word_edges(const std::string& bbox) {
    std::vector<double> edges;
    for (std::size_t at = bbox.find("xMin=\""); at != std::string::npos;
         at = bbox.find("xMin=\"", at + 1))
        edges.push_back(std::stod(bbox.substr(at + 6)));
    return edges;
}

}

TEST_SUITE("pdf") {
    TEST_CASE("qpdf finds no fault, poppler finds it tagged and its fonts embedded") {
        for (const char* file : {glyf_file, cff_file}) {
            const Reader reader(pdf_of(whole(face(file), face(glyf_bold_file))));
            const std::string check = reader.run("qpdf --check");
            CHECK_MESSAGE(reader.status() == 0, check);
            CHECK(check.find("WARNING") == std::string::npos);
            CHECK(reader.run("pdfinfo").find("Tagged:          yes") != std::string::npos);
            std::istringstream fonts(reader.run("pdffonts"));
            std::string line;
            int rows = 0;
            while (std::getline(fonts, line))
                if (line.find("Identity-H") != std::string::npos) {
                    ++rows;
                    CHECK_MESSAGE(line.find("yes yes yes") != std::string::npos, line);
                }
            CHECK(rows == 2);
        }
    }

    TEST_CASE("the same input gives the same bytes, in every thread") {
        const HandSet set = whole(face(glyf_file), face(glyf_bold_file));
        const std::string first = pdf_of(set);
        std::vector<std::string> files(4);
        std::vector<std::thread> threads;
        for (std::string& file : files)
            threads.emplace_back([&] {
                for (int i = 0; i < 5; ++i)
                    file = pdf_of(set);
            });
        for (std::thread& thread : threads)
            thread.join();
        for (const std::string& file : files)
            CHECK(file == first);
    }

    TEST_CASE("the date is the one given") {
        const HandSet set = one_paragraph(face(glyf_file), "words");
        CHECK(unpacked(pdf_of(set)).find("Date") == std::string::npos);
        const std::string dated = write_pdf(set.composition, set.pages, 951827696);
        CHECK(unpacked(dated).find("(D:20000229123456Z)") != std::string::npos);
        CHECK(Reader(dated).run("pdfinfo -isodates").find("2000-02-29T12:34:56Z") !=
              std::string::npos);
    }

    TEST_CASE("every word comes out as it was written") {
        const std::string words = "office affluent fjord difficult café naïve Łódź C++ 100% (x)\\y";
        for (const char* file : {glyf_file, cff_file, "opentype/inter/Inter-Regular.otf",
                                 "truetype/lato/Lato-Regular.ttf"})
            for (const char* mode : {"", "-layout", "-raw"})
                CHECK_MESSAGE(
                    text_of(one_paragraph(face(file), words), mode).starts_with(words + "\n"), file,
                    mode);
    }

    TEST_CASE("a no-break space and a no-break hyphen come out as they are typed") {
        CHECK(text_of(one_paragraph(face(glyf_file), "5\u00A0June, co\u2011op")) ==
              "5 June, co-op\n\n\f");
    }

    TEST_CASE("one glyph may stand for different texts") {
        // A hyphen at a line's end is U+00AD (ISO 32000-1, 14.8.2.2.3), in a word it is itself.
        HandSet set = one_paragraph(face(glyf_file), "well-known manage");
        set.composition.paragraphs[0].hyphen_glyphs = {
            set.composition.paragraphs[0].runs[0].glyphs[4].id};
        set.page().runs[0].hyphen = true;
        const Reader reader(pdf_of(set));
        const std::string text = reader.run("pdftotext -enc UTF-8 -raw", "-");
        CHECK(text.starts_with("well-known manage\u00AD"));
        CHECK(reader.run("pdffonts").find("Identity-H") != std::string::npos);
    }

    TEST_CASE("a cluster of more glyphs than characters has its text as ActualText") {
        // 14.9.4: poppler honours it; each glyph is mapped besides, so the base is whole anywhere.
        HandSet set = one_paragraph(face(glyf_file), "ab");
        set.composition.paragraphs[0].runs[0].text = "\u00E9";
        auto& glyphs = set.composition.paragraphs[0].runs[0].glyphs;
        glyphs[0].text_length = 2;
        glyphs[1].text_length = 0;
        const Reader reader(pdf_of(set));
        CHECK(reader.run("pdftotext -enc UTF-8", "-") == "\u00E9\n\n\f");
        CHECK(reader.run("qpdf --qdf --object-streams=disable", "-")
                  .find("/Span<</ActualText<feff00e9>>>BDC") != std::string::npos);
    }

    TEST_CASE("glyphs stand where they were placed, within 0.01 pt") {
        // Kerned text, tracked and stretched: each word's edge is the sum of what goes before it.
        HandSet set;
        set.word_space = 0.37;
        const auto element = set.element(composition::StructureType::h1, 0);
        set.paragraph(element,
                      {{element, &face(glyf_file),
                        "AVATAR Toy Wave, Type fit To Water. Yes, Valued Team of Twelve", 0.02}});
        const pages::PlacedRun& placed = set.page().runs.at(0);
        const composition::Run& run = set.composition.paragraphs[0].runs[0];
        std::vector<double> expected{placed.x};
        double x = placed.x;
        for (const fonts::Glyph& glyph : run.glyphs) {
            x += (static_cast<double>(glyph.advance) / run.face->units_per_em() + run.tracking) *
                 placed.size;
            if (run.text[glyph.text_begin] == ' ') expected.push_back(x += set.word_space);
        }
        const auto edges = word_edges(Reader(pdf_of(set)).run("pdftotext -bbox", "-"));
        REQUIRE(edges.size() == expected.size());
        for (std::size_t i = 0; i < edges.size(); ++i)
            CHECK(edges[i] == doctest::Approx(expected[i]).epsilon(0.01 / expected[i]));
    }

    TEST_CASE("the structure tree, as poppler reads it") {
        const Reader reader(pdf_of(whole(face(glyf_file), face(glyf_bold_file))));
        const std::string tree = reader.run("pdfinfo -struct-text");
        CHECK_MESSAGE(tree.starts_with("Document\n"
                                       "  Sect\n"
                                       "    H1 (block)\n"
                                       "      \"Ottoline Brandt\"\n"
                                       "    P (block)\n"
                                       "      \"Port Ellery, WA · 555-0142 · \"\n"
                                       "      Link (inline)\n"
                                       "        \"brandt@ellery.example\"\n"),
                      tree);
        CHECK(tree.find("/ListNumbering /Disc") != std::string::npos);
        CHECK(tree.find("page 2") == std::string::npos); // the running head is an artifact
    }

    TEST_CASE("a link over two lines has an area on each") {
        HandSet set;
        const auto paragraph = set.element(composition::StructureType::p, 0);
        const auto link = set.element(composition::StructureType::link, paragraph,
                                      "https://shore.example/", "survey data");
        set.measure = 120;
        set.paragraph(paragraph, {{paragraph, &face(glyf_file), "See "},
                                  {link, &face(glyf_file), "the survey data of the shore"}});
        const std::string pdf = unpacked(pdf_of(set));
        std::size_t areas = 0;
        for (std::size_t at = pdf.find("/Subtype /Link"); at != std::string::npos;
             at = pdf.find("/Subtype /Link", at + 1))
            ++areas;
        CHECK(areas == 2);
    }

    TEST_CASE("flags of a face: ISO 32000-1, table 123") {
        const auto flags = [](const std::string& file) {
            for (const PdfEntry& entry : font_descriptor(face(file)))
                if (entry.key == std::string("Flags"))
                    return std::get<std::int64_t>(entry.value.held);
            return std::int64_t{-1};
        };
        CHECK(flags(cff_file) == 4 + 2);                                     // by its family class
        CHECK(flags("truetype/crosextra/Caladea-Italic.ttf") == 4 + 2 + 64); // by its PANOSE
        CHECK(flags("truetype/lato/Lato-Regular.ttf") == 4);
        CHECK(postscript_name(face(glyf_file)) == "Vollkorn-Regular");
    }

    TEST_CASE("what cannot be written is a runtime_error") {
        HandSet missing = one_paragraph(face(glyf_file), "word");
        missing.composition.paragraphs[0].runs[0].glyphs[2].id = 0;
        CHECK_THROWS_AS(pdf_of(missing), std::runtime_error);
        HandSet empty = one_paragraph(face(glyf_file), "word");
        empty.pages.pages.clear();
        CHECK_THROWS_AS(pdf_of(empty), std::runtime_error);
        HandSet nowhere = one_paragraph(face(glyf_file), "word");
        nowhere.page().runs[0].y = std::numeric_limits<double>::quiet_NaN();
        CHECK_THROWS_AS(pdf_of(nowhere), std::runtime_error);
    }

    TEST_CASE("malformed text in the document's properties does no harm") {
        HandSet set = one_paragraph(face(glyf_file), "word");
        set.composition.title = "R\xC3";
        set.composition.author = "\xFF(\\";
        const Reader reader(pdf_of(set));
        CHECK(reader.run("qpdf --check").find("WARNING") == std::string::npos);
        CHECK(reader.run("pdfinfo -enc UTF-8").find("R\uFFFD") != std::string::npos);
    }
}
