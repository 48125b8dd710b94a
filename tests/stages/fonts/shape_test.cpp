// Shaping against HarfBuzz's own hb-shape, run as a process, and the text each glyph stands for.

#include "compiler/stages/fonts/shape.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <memory>
#include <sstream>
#include <stdexcept>
#include <string>
#include <thread>
#include <vector>

namespace shape_test {

using namespace std::string_literals;
using quoin::fonts::Face;
using quoin::fonts::Glyph;
using quoin::fonts::ShapingFeatures;

namespace {

const Face& face(const std::string& file) {
    static std::map<std::string, std::unique_ptr<Face>> open;
    std::unique_ptr<Face>& found = open[file];
    if (!found) found = std::make_unique<Face>("/usr/share/fonts/" + file);
    return *found;
}

const std::string libertine = "opentype/linux-libertine/LinLibertine_R.otf";
const std::string carlito = "truetype/crosextra/Carlito-Regular.ttf";

const std::vector<std::string> faces = {
    libertine,
    "opentype/linux-libertine/LinLibertine_RBI.otf",
    "truetype/gentiumplus/GentiumBookPlus-Regular.ttf",
    "truetype/gentiumplus/GentiumPlus-Italic.ttf",
    "truetype/charis/CharisSIL-Bold.ttf",
    "truetype/vollkorn/Vollkorn-Regular.ttf",
    "truetype/lato/Lato-Regular.ttf",
    "opentype/inter/Inter-Regular.otf",
    "truetype/open-sans/OpenSans-Italic.ttf",
    "opentype/stix-word/STIX-Regular.otf",
    carlito,
    "truetype/crosextra/Caladea-Bold.ttf",
};

const std::vector<std::string> latin = {
    "Counted 212 eelgrass quadrats at 9 sites and cut entry time 18%",
    "office affluent shuffle fjord offline fffi",
    "AVATAR To. We, Ty LT P. (AV) \"V.\"",
    "Zoë Ångström naïve façade São Łódź Ćirić Đặng",
    "Zoe\u0308 A\u030Angstro\u0308m x\u0301q\u0323\u0302",
    "(360) 555-0142 +1 360 555 0142 2019–2021 — $1.2M 3.62/4.00",
    "‘quotes’ “and” • bullets · © § ½",
    "fi\u200Dfi f\u200Ci",
    "2026",
};
const std::vector<std::string> greek = {"Κώστας Παπαδόπουλος, 2026", "ΑΥΤΟ"};
const std::vector<std::string> cyrillic = {"Наталья Гоголь — 2026", "ТАУ"};

struct Shaped { // a glyph as hb-shape prints it: `36=0@5,6+1200`
    unsigned id = 0;
    unsigned cluster = 0;
    int x_offset = 0, y_offset = 0, advance = 0;
};

std::string shown(const std::vector<Shaped>& glyphs) {
    std::ostringstream stream;
    for (const Shaped& glyph : glyphs)
        stream << glyph.id << '=' << glyph.cluster << '@' << glyph.x_offset << ',' << glyph.y_offset
               << '+' << glyph.advance << ' ';
    return stream.str();
}

int take_number(std::string_view& text) {
    int number = 0;
    const auto end = std::from_chars(text.data(), text.data() + text.size(), number).ptr;
    text.remove_prefix(static_cast<std::size_t>(end - text.data()));
    return number;
}

bool take(std::string_view& text, char sign) {
    const bool found = text.starts_with(sign);
    text.remove_prefix(found ? 1 : 0);
    return found;
}

std::vector<Shaped> parse_line(std::string_view line) {
    std::vector<Shaped> glyphs;
    for (take(line, '['); !line.empty() && line.front() != ']'; take(line, '|')) {
        Shaped glyph;
        glyph.id = static_cast<unsigned>(take_number(line));
        REQUIRE(take(line, '='));
        glyph.cluster = static_cast<unsigned>(take_number(line));
        if (take(line, '@')) {
            glyph.x_offset = take_number(line);
            REQUIRE(take(line, ','));
            glyph.y_offset = take_number(line);
        }
        REQUIRE(take(line, '+'));
        glyph.advance = take_number(line);
        glyphs.push_back(glyph);
    }
    return glyphs;
}

std::string output_of(const std::string& command) {
    const std::unique_ptr<std::FILE, int (*)(std::FILE*)> pipe(popen(command.c_str(), "r"), pclose);
    std::string output;
    std::array<char, 4096> chunk{};
    while (const std::size_t count = std::fread(chunk.data(), 1, chunk.size(), pipe.get()))
        output.append(chunk.data(), count);
    return output;
}

std::vector<std::vector<Shaped>> hb_shape_lines(const std::string& file, const std::string& options,
                                                const std::vector<std::string>& texts) {
    std::string list = (std::filesystem::temp_directory_path() / "quoin-shape-XXXXXX").string();
    const int descriptor = mkstemp(list.data());
    REQUIRE(descriptor >= 0);
    std::ofstream lines(list);
    for (const std::string& text : texts)
        lines << text << '\n';
    lines.close();
    std::istringstream output(output_of(
        "hb-shape --shapers=ot --font-funcs=ot --direction=ltr --no-glyph-names --utf8-clusters "
        "--cluster-level=1 --remove-default-ignorables --text-file='" +
        list + "' " + options + " '/usr/share/fonts/" + file + "'"));
    std::vector<std::vector<Shaped>> shaped;
    for (std::string line; std::getline(output, line);)
        shaped.push_back(parse_line(line));
    std::filesystem::remove(list);
    REQUIRE(shaped.size() == texts.size());
    return shaped;
}

// The words of a text and the spaces between them, in order.
std::vector<std::string> words_and_spaces(const std::string& text) {
    std::vector<std::string> parts;
    for (const char c : text) {
        const bool goes_on = !parts.empty() && (parts.back().back() == ' ') == (c == ' ');
        if (!goes_on) parts.emplace_back();
        parts.back() += c;
    }
    return parts;
}

// The outside reference, the glyphs of each text: its words shaped one by one, for a space is not
// kerned against.
std::vector<std::vector<Shaped>> hb_shape(const std::string& file, const std::string& options,
                                          const std::vector<std::string>& texts) {
    std::vector<std::string> parts;
    for (const std::string& text : texts)
        std::ranges::copy(words_and_spaces(text), std::back_inserter(parts));
    const auto lines = hb_shape_lines(file, options, parts);
    std::vector<std::vector<Shaped>> shaped;
    for (std::size_t next = 0; const std::string& text : texts) {
        shaped.emplace_back();
        for (std::size_t at = 0; at < text.size(); at += parts[next++].size())
            for (Shaped glyph : lines[next]) {
                glyph.cluster += static_cast<unsigned>(at);
                shaped.back().push_back(glyph);
            }
    }
    return shaped;
}

// Our glyphs as hb-shape would show them: each with the first byte of its cluster, which is where
// the text of the cluster's first glyph begins.
std::vector<Shaped> as_shaped(const std::vector<Glyph>& glyphs,
                              const std::vector<Shaped>& reference) {
    std::vector<Shaped> shaped;
    for (std::size_t i = 0; i < glyphs.size(); ++i) {
        const Glyph& glyph = glyphs[i];
        const bool goes_on =
            i > 0 && i < reference.size() && reference[i].cluster == reference[i - 1].cluster;
        shaped.push_back({glyph.id, goes_on ? shaped.back().cluster : glyph.text_begin,
                          glyph.x_offset, glyph.y_offset, glyph.advance});
    }
    return shaped;
}

struct Setting {
    ShapingFeatures features;
    std::string options; // the same for hb-shape
};

const std::vector<Setting> settings = {
    {{false, false, true, "en-US"}, "--features=lnum --language=en-US"},
    {{true, true, true, "en-US"}, "--features=smcp,onum --language=en-US"},
    {{false, true, true, "pl"}, "--features=onum --language=pl"},
    {{false, false, false, "en-US"}, "--features=lnum,-liga,-clig --language=en-US"},
    {{true, false, true, ""}, "--features=smcp,lnum --language=und"},
};

// Beside signs figures stay high, which hb-shape knows nothing of.
bool has_high_figures(const std::string& text) {
    return text.find_first_of("%$+") != std::string::npos || text.find("½") != std::string::npos;
}

void compare(const std::string& file, const Setting& setting, const std::string& script,
             std::vector<std::string> texts) {
    if (setting.features.oldstyle_figures) std::erase_if(texts, has_high_figures);
    const auto reference = hb_shape(file, setting.options + " --script=" + script, texts);
    for (std::size_t i = 0; i < texts.size(); ++i) {
        CAPTURE(file);
        CAPTURE(setting.options);
        CAPTURE(texts[i]);
        const auto glyphs = quoin::fonts::shape(face(file), texts[i], setting.features);
        CHECK(shown(as_shaped(glyphs, reference[i])) == shown(reference[i]));
    }
}

// Which piece of the text each glyph stands for.
std::string pieces(const std::string& file, const std::string& text, ShapingFeatures features) {
    std::string result;
    for (const Glyph& glyph : quoin::fonts::shape(face(file), text, features))
        result += (result.empty() ? "" : "|") + text.substr(glyph.text_begin, glyph.text_length);
    return result;
}

std::vector<unsigned> ids(const std::string& file, const std::string& text,
                          const ShapingFeatures& features = {}) {
    std::vector<unsigned> result;
    for (const Glyph& glyph : quoin::fonts::shape(face(file), text, features))
        result.push_back(glyph.id);
    return result;
}

}

TEST_SUITE("shaping") {
    TEST_CASE("glyphs, advances, offsets and clusters are those of hb-shape") {
        for (const std::string& file : faces)
            for (const Setting& setting : settings) {
                compare(file, setting, "Latn", latin);
                compare(file, setting, "Grek", greek);
                compare(file, setting, "Cyrl", cyrillic);
            }
    }

    TEST_CASE("a text of several scripts is shaped script by script") {
        const std::vector<std::string> parts = {"(Ottoline) ", "Κώστας: 2026, ", "Наталья ",
                                                "fi AV."};
        const std::vector<std::string> scripts = {"Latn", "Grek", "Cyrl", "Latn"};
        for (const std::string& file : {libertine, faces[2], faces[5]}) {
            CAPTURE(file);
            std::vector<Shaped> expected;
            std::string text;
            for (std::size_t i = 0; i < parts.size(); ++i) {
                const auto part =
                    hb_shape(file, "--features=lnum --script=" + scripts[i], {parts[i]});
                for (Shaped glyph : part.front()) {
                    glyph.cluster += static_cast<unsigned>(text.size());
                    expected.push_back(glyph);
                }
                text += parts[i];
            }
            const auto glyphs = quoin::fonts::shape(face(file), text, {});
            CHECK(shown(as_shaped(glyphs, expected)) == shown(expected));
        }
    }

    TEST_CASE("each glyph says what text it stands for") {
        const std::string garamond = "opentype/ebgaramond/EBGaramond12-Regular.otf";
        CHECK(pieces(libertine, "office fix", {}) == "o|ffi|c|e| |fi|x");
        CHECK(pieces(libertine, "office", {true, false, true, ""}) == "o|f|f|i|c|e");
        CHECK(pieces(libertine, "é\u00A0—x", {}) == "é|\u00A0|—|x");
        CHECK(pieces(libertine, "Zoe\u0308", {}) == "Z|o|e\u0308");
        CHECK(pieces(libertine, "eel\u00ADgrass\uFEFF", {}) == "e|e|l|g|r|a|s|s");
        CHECK(pieces(libertine, "\u00ADa\u200Bb\u2060", {}) == "a|b");
        CHECK(pieces(libertine, "", {}).empty());
        CHECK(pieces(libertine, "\u00AD", {}).empty());
        if (std::filesystem::exists("/usr/share/fonts/" + garamond)) // two glyphs, one cluster
            CHECK(pieces(garamond, "fix", {}) == "f|i|x");
    }

    TEST_CASE("signs that keep words together are shaped as what a reader would type") {
        CHECK(ids(libertine, "a\u00A0b") == ids(libertine, "a b"));
        CHECK(ids(libertine, "a\u2011b") == ids(libertine, "a\u2010b"));
        CHECK(face(libertine).has_glyph(0x2010));
        CHECK_FALSE(face(carlito).has_glyph(0x2010));
        CHECK(ids(carlito, "a\u2011b") == ids(carlito, "a-b"));
        CHECK(ids(carlito, "a\u2010b") == ids(carlito, "a-b"));
        CHECK(pieces(carlito, "a\u2011b", {}) == "a|\u2011|b");
        CHECK(ids(libertine, "eel\u00ADgrass") == ids(libertine, "eelgrass"));
    }

    // Lato kerns them by 0.22 em (hb-shape), and readers part words that overlap so far.
    TEST_CASE("two slashes stand apart") {
        for (const std::string& file : faces) {
            CAPTURE(file);
            const auto alone = quoin::fonts::shape(face(file), "/", {});
            const auto both = quoin::fonts::shape(face(file), "s://a", {});
            REQUIRE(both.size() == 5);
            CHECK(both[2].advance == alone.front().advance);
        }
    }

    TEST_CASE("nothing is kerned against an at sign") {
        for (const std::string& file : faces) {
            CAPTURE(file);
            const auto glyphs = quoin::fonts::shape(face(file), "y@w", {});
            for (std::size_t i = 0; i < 3; ++i)
                CHECK(glyphs.at(i).advance ==
                      quoin::fonts::shape(face(file), std::string("y@w").substr(i, 1), {})
                          .front()
                          .advance);
        }
    }

    TEST_CASE(
        "addresses have no ligatures, and figures are high beside capitals, signs and units") {
        const ShapingFeatures oldstyle{false, true, true, "en"};
        const auto high = [&](const std::string& text) {
            return ids(libertine, text, oldstyle) == ids(libertine, text, {});
        };
        struct Row {
            std::string text;
            bool is_high;
        };
        for (const Row& row : std::vector<Row>{{"2026", false},
                                               {"in 2026, with 12", false},
                                               {"(212)", false},
                                               {"B12", true},
                                               {"$385", true},
                                               {"18%", true},
                                               {"24/7", true},
                                               {"GPA 371", true},
                                               {"301 BIO", true},
                                               {"300 mL;", true},
                                               {"371 / 400", true},
                                               {"300 more", false},
                                               {"May 2026", false}}) {
            CAPTURE(row.text);
            CHECK(high(row.text) == row.is_high);
        }
        for (const std::string text :
             {"office@fjord.example", "fjord.example/office", "x://office"}) {
            CAPTURE(text);
            const ShapingFeatures letters{false, false, false, "en"};
            CHECK(ids(libertine, text, {}) == ids(libertine, text, letters));
        }
        CHECK(ids(libertine, "office", {}).size() == 4);
    }

    TEST_CASE("a missing character is glyph 0 and keeps its text") {
        const auto glyphs = quoin::fonts::shape(face(carlito), "a漢b", {});
        REQUIRE(glyphs.size() == 3);
        CHECK(glyphs[0].id != 0);
        CHECK(glyphs[1].id == 0);
        CHECK(glyphs[1].text_begin == 1);
        CHECK(glyphs[1].text_length == 3);
        CHECK(glyphs[2].text_begin == 4);
    }

    TEST_CASE("the pieces of any text, in order, are the text") {
        std::string all;
        for (const auto* texts : {&latin, &greek, &cyrillic})
            for (const std::string& text : *texts)
                all += text + " ";
        all += "\u05E9\u05DC\u05D5\u05DD 2026, \u05D1 and \u0627\u0644 \U0001F600 漢字";
        const std::string without_joiners = [&] {
            std::string text = all;
            for (const std::string& joiner : {"\u200C"s, "\u200D"s})
                for (std::size_t at = text.find(joiner); at != std::string::npos;
                     at = text.find(joiner))
                    text.erase(at, joiner.size());
            return text;
        }();
        for (const std::string& file : faces) {
            CAPTURE(file);
            std::string joined = pieces(file, all, {true, true, true, "en"});
            std::erase(joined, '|');
            CHECK(joined == without_joiners);
        }
    }

    TEST_CASE("right-to-left letters come in order of reading") {
        const std::string hebrew = "\u05E9\u05DC\u05D5\u05DD";
        CHECK(pieces(libertine, "a " + hebrew + " 12", {}) ==
              "a| |\u05E9|\u05DC|\u05D5|\u05DD| |1|2");
        auto expected = hb_shape(libertine, "--direction=rtl --script=Hebr", {hebrew}).front();
        std::ranges::reverse(expected); // it gives them from left to right
        REQUIRE(expected.size() == 4);
        const auto found = quoin::fonts::shape(face(libertine), hebrew, {});
        REQUIRE(found.size() == 4);
        for (std::size_t i = 0; i < 4; ++i) {
            CHECK(found[i].text_begin == expected[i].cluster);
            CHECK(found[i].advance == expected[i].advance);
            CHECK(found[i].x_offset == expected[i].x_offset);
        }
    }

    TEST_CASE("malformed UTF-8 is shaped as U+FFFD, within its bounds") {
        // Unicode Standard 15.0, tables 3-8 to 3-11
        for (const std::string_view text :
             {"\xC0\xAF\xE0\x80\xBF\xF0\x81\x82\x41", "\xED\xA0\x80\xED\xBF\xBF\xED\xAF\x41",
              "\xF4\x91\x92\x93\xFF\x41\x80\xBF\x42", "\xE1\x80\xE2\xF0\x91\x92\xF1\xBF\x41"}) {
            const auto glyphs = quoin::fonts::shape(face(libertine), text, {});
            REQUIRE_FALSE(glyphs.empty());
            for (const Glyph& glyph : glyphs)
                CHECK(glyph.text_begin + glyph.text_length <= text.size());
        }
    }

    TEST_CASE("threads share a face") {
        const auto sum = [](const Face& shared, int& total) {
            for (int i = 0; i < 200; ++i)
                for (const std::string& text : latin)
                    for (const Glyph& glyph :
                         quoin::fonts::shape(shared, text, {i % 2 == 0, false, true, "en"}))
                        total += glyph.advance;
        };
        const Face shared("/usr/share/fonts/" + faces[6]);
        std::array<int, 3> totals{};
        std::thread first(sum, std::cref(shared), std::ref(totals[0]));
        std::thread second(sum, std::cref(shared), std::ref(totals[1]));
        first.join();
        second.join();
        sum(shared, totals[2]);
        CHECK(totals[0] > 0);
        CHECK(totals[0] == totals[1]);
        CHECK(totals[0] == totals[2]);
    }
}

} // namespace shape_test
