// Words in another language and abbreviations: how they are stated, where they are found, what the
// structure says of them.
#include "compiler/stages/composition/glosses.hpp"
#include "compiler/stages/pdf/pdf.hpp"
#include "grammar/settings.hpp"
#include "tests/composed.hpp"
#include "tests/fixtures/read_resume.hpp"

#include <doctest/doctest.h>
#include <tao/pegtl/contrib/analyze.hpp>

#include <algorithm>
#include <random>
#include <string>
#include <vector>

namespace quoin::composition {

namespace {

std::string stated(const std::vector<model::Gloss>& glosses) {
    std::string text;
    for (const model::Gloss& gloss : glosses)
        text += '[' + gloss.words + '|' + gloss.language + '|' + gloss.expansion + ']';
    return text;
}

// The text with what is found in brackets.
std::string found_in(std::string text, const std::vector<model::Gloss>& glosses,
                     bool capitals = false) {
    auto ranges = GlossedWords(glosses, "en-US").tree(capitals).ranges_in(text);
    for (auto range = ranges.rbegin(); range != ranges.rend(); ++range) {
        text.insert(range->end, "]");
        text.insert(range->begin, '[' + std::to_string(range->gloss) + ' ');
    }
    return text;
}

const std::vector<model::Gloss> glosses = {
    {"GIS", "", "geographic information system"},
    {"L'herbier marin", "fr", ""},
    {"herbier", "fr", ""},
    {"C++", "", "C plus plus"},
    {"e - f", "", "a dash"},
};

bool within_word(const std::string& text, std::size_t at) {
    const auto letter = [](char c) { return c != ' '; };
    return at > 0 && at < text.size() && letter(text[at - 1]) && letter(text[at]);
}

// The same by looking for each gloss at each letter; of letters and spaces alone.
std::string slowly_found_in(const std::string& text, const std::vector<model::Gloss>& all) {
    std::string shown;
    bool may_begin = true;
    for (std::size_t at = 0; at < text.size();) {
        std::size_t longest = 0, gloss = 0;
        for (std::size_t i = 0; i < all.size(); ++i) {
            const std::string& words = all[i].words;
            const bool here = may_begin && text.compare(at, words.size(), words) == 0 &&
                              !within_word(text, at) && !within_word(text, at + words.size());
            if (!here || words.size() <= longest) continue;
            longest = words.size();
            gloss = i;
        }
        may_begin = longest == 0;
        const std::string part = text.substr(at, std::max<std::size_t>(longest, 1));
        shown += longest > 0 ? '[' + std::to_string(gloss) + ' ' + part + ']' : part;
        at += part.size();
    }
    return shown;
}

struct Spans {
    std::vector<std::string> told; // "words|language|expansion", in order of reading
};

Spans spans_of(const Composition& composition) {
    Spans spans;
    for (std::size_t e = 0; e < composition.elements.size(); ++e) {
        const Element& element = composition.elements[e];
        if (element.type != StructureType::span) continue;
        std::string words;
        for (const Paragraph& paragraph : composition.paragraphs)
            for (const Run& run : paragraph.runs)
                if (run.element == e) words += run.text;
        spans.told.push_back(words + '|' + element.language + '|' + element.expansion);
    }
    return spans;
}

}

TEST_CASE("glosses: their grammar has no endless loop") {
    CHECK(tao::pegtl::analyze<grammar::settings::foreign_value>() == 0);
    CHECK(tao::pegtl::analyze<grammar::settings::abbreviations_value>() == 0);
}

TEST_CASE("glosses: as they are stated") {
    const struct {
        std::string lines, glosses, messages;
    } cases[] = {
        {"foreign: Casa del Mar (es)", "[Casa del Mar|es|]", ""},
        {"foreign: a b (FR); c(pt-br)\nforeign: d ( zh-hant )", "[a b|fr|][c|pt-BR|][d|zh-Hant|]",
         ""},
        {"abbreviations: GIS (geographic information system)",
         "[GIS||geographic information system]", ""},
        {"abbreviations: CTD (conductivity, temperature (in situ), and depth);\n  pH (p)",
         "[CTD||conductivity, temperature (in situ), and depth][pH||p]", ""},
        {"foreign: Casa del Mar", "",
         "draft.resume:2:10: error: expected words and the tag of their language, such as 'Les "
         "Cahiers du littoral (fr)', several parted by ';', found 'Casa del Mar'"},
        {"foreign: Casa del Mar (Spanish!)", "",
         "draft.resume:2:24: error: expected a BCP 47 language tag, such as 'en-US', found "
         "'Spanish!'"},
        {"abbreviations: (nothing)", "",
         "draft.resume:2:16: error: expected an abbreviation and what it is short for, such as "
         "'CTD (conductivity, temperature, and depth)', several parted by ';', found '(nothing)'"},
        {"abbreviations: GIS ()", "",
         "draft.resume:2:16: error: expected an abbreviation and what it is short for, such as "
         "'CTD (conductivity, temperature, and depth)', several parted by ';', found 'GIS ()'"},
    };
    for (const auto& one : cases) {
        CAPTURE(one.lines);
        const auto reading = fixtures::read_resume("name: Ana Reyes\n" + one.lines + "\n");
        CHECK(reading.messages() == one.messages);
        if (reading.resume) CHECK(stated(reading.resume->settings.glosses) == one.glosses);
    }
}

TEST_CASE("glosses: where they stand") {
    const struct {
        std::string text, found;
    } cases[] = {
        {"", ""},
        {"Made GIS maps", "Made [0 GIS] maps"},
        {"GIS", "[0 GIS]"},
        {"(GIS), GIS-based, GIS/GPS", "([0 GIS]), [0 GIS]-based, [0 GIS]/GPS"},
        {"QGIS, GISs, GIS2, éGIS, GISé", "QGIS, GISs, GIS2, éGIS, GISé"}, // within other words
        {"gis", "gis"},
        {"L’herbier marin", "[1 L’herbier marin]"}, // the longest, through a typographic sign
        {"L’herbier vert", "L’[2 herbier] vert"},
        {"L’herbier\u00A0marin", "[1 L’herbier\u00A0marin]"},
        {"C++, C++20, C+", "[3 C++], [3 C++]20, C+"}, // no word to go on after a sign
        {"e – f", "[4 e – f]"},
    };
    for (const auto& one : cases) {
        CAPTURE(one.text);
        CHECK(found_in(one.text, glosses) == one.found);
    }
    CHECK(found_in("L’HERBIER MARIN", glosses, true) == "[1 L’HERBIER MARIN]");
}

TEST_CASE("glosses: where they stand is where they are found one by one") {
    std::mt19937 random(20261130);
    const auto some = [&](std::size_t most) {
        std::string text(1 + random() % most, ' ');
        for (char& sign : text)
            sign = "ab "[random() % 3];
        return text;
    };
    for (int round = 0; round < 2000; ++round) {
        std::vector<model::Gloss> all(1 + random() % 8);
        for (model::Gloss& gloss : all)
            gloss.words = 'a' + some(6) + 'b';
        const std::string text = some(60);
        CAPTURE(text);
        CHECK(found_in(text, all) == slowly_found_in(text, all));
    }
}

TEST_CASE("glosses: become spans, also through marks, links and folds") {
    const std::string above = "name: Ana Reyes\nforeign: L'herbier marin (fr)\n"
                              "abbreviations: GIS (geographic information system)\n\n"
                              "section: Work\n\nrole: GIS Aide\nemployer: Harbor\n";
    const struct {
        std::string bullet;
        std::vector<std::string> told;
    } cases[] = {
        {"- Sorted maps", {}},
        {"- Drew GIS maps", {"GIS||geographic information system"}},
        {"- Read L'herbier marin", {"L’herbier marin|fr|"}},
        {"- Read *L'herbier* marin", {"L’herbier marin|fr|"}}, // one element of two runs
        {"- Read L'herbier\n  marin", {"L’herbier marin|fr|"}},
        {"- See GIS <https://shore.example>", {"GIS||geographic information system"}},
        {"- GIS GIS", {"GIS||geographic information system", "GIS||geographic information system"}},
    };
    for (const auto& one : cases) {
        CAPTURE(one.bullet);
        auto expected = one.told;
        expected.insert(expected.begin(), "GIS||geographic information system"); // of the role
        const Composition composition = composed::compose(above + one.bullet + "\n");
        CHECK(spans_of(composition).told == expected);
        // nothing that is printed changes
        const std::string plain = above.substr(above.find("\n\n"));
        const Composition bare = composed::compose("name: Ana Reyes" + plain + one.bullet + "\n");
        for (std::size_t p = 0; p < bare.paragraphs.size(); ++p)
            CHECK(composed::text_of(bare.paragraphs[p]) ==
                  composed::text_of(composition.paragraphs[p]));
    }
}

TEST_CASE("glosses: a span in a link is the link's, and the link stays whole") {
    const Composition composition = composed::compose(
        "name: Ana Reyes\nabbreviations: GIS (geographic information system)\n\nsection: Work\n\n"
        "role: Aide\nemployer: Harbor\n- See \"GIS maps\" <https://shore.example>\n");
    std::size_t links = 0;
    for (const Element& element : composition.elements) {
        if (element.type == StructureType::link) ++links;
        if (element.type == StructureType::span)
            CHECK(composition.elements[element.parent].type == StructureType::link);
    }
    CHECK(links == 1);
}

}
