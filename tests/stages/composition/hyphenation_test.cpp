// Word division against published divisions, and what is never divided.
#include "compiler/stages/composition/hyphenation.hpp"

#include "compiler/stages/fit/fit.hpp"
#include "tests/composed.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <thread>
#include <vector>

namespace hyphenation_test {

namespace {

const quoin::composition::Hyphenation& english() {
    return quoin::composition::english_hyphenation(QUOIN_DATA_FOLDER);
}

std::string divided(std::string text) {
    const std::vector<std::size_t> points = english().points(text);
    for (std::size_t i = points.size(); i-- > 0;)
        text.insert(points[i], "-");
    return text;
}

std::size_t hyphens_of(const quoin::composition::Composition& composition) {
    std::size_t count = 0;
    for (const quoin::composition::Paragraph& paragraph : composition.paragraphs)
        count += static_cast<std::size_t>(
            std::ranges::count(paragraph.breaks, true, &quoin::composition::BreakPoint::hyphen));
    return count;
}

quoin::composition::Composition compose(const std::string& settings,
                                        const std::string& theme = "") {
    const std::string markup = "name: Ottoline Brandt\n" + settings +
                               "\nsection: Summary\ntext: Interpretation of understanding\n";
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    const auto file = sources.add("test.resume", markup, diagnostics);
    const auto resume =
        quoin::model::build_resume(sources, *file, QUOIN_DATA_FOLDER "/themes/words", diagnostics);
    REQUIRE(resume);
    const auto theme_file = sources.add("test.theme", "based-on: turnstone\n" + theme, diagnostics);
    const auto read = quoin::theme::read_theme(
        sources, *theme_file, std::filesystem::path(QUOIN_DATA_FOLDER) / "themes", diagnostics);
    REQUIRE(read);
    auto composition = quoin::composition::compose(*resume, *read, quoin::composed::fonts(),
                                                   diagnostics, &english());
    REQUIRE(composition);
    return *std::move(composition);
}

}

TEST_CASE("words are divided as published") {
    const std::pair<const char*, const char*> cases[] = {
        // F. M. Liang, Word Hy-phen-a-tion by Com-put-er, Stanford STAN-CS-83-977 (1983)
        {"hyphenation", "hy-phen-ation"},
        // the running example of libhyphen's README.hyphen
        {"example", "ex-am-ple"},
        // libhyphen's tests/base.hyph, the words a résumé might have
        {"accommodating", "ac-com-mo-dat-ing"},
        {"accountant", "ac-coun-tant"},
        {"administratively", "ad-min-is-tra-tively"},
        {"algorithms", "al-go-rithms"},
        {"approximated", "ap-prox-i-mated"},
        {"architectures", "ar-chi-tec-tures"},
        {"biochemistry", "bio-chem-istry"},
        {"calculus", "cal-cu-lus"},
        {"collaborator", "col-lab-o-ra-tor"},
        {"communicated", "com-mu-ni-cated"},
        {"conservation", "con-ser-va-tion"},
        {"coordinates", "co-or-di-nates"},
        {"development", "de-vel-op-ment"},
        {"documentaries", "doc-u-men-taries"},
        {"educating", "ed-u-cat-ing"},
        {"electronics", "elec-tron-ics"},
        {"enterprise", "en-ter-prise"},
        {"aquifer", "aquifer"},
        {"acid", "acid"},
    };
    for (const auto& [word, expected] : cases)
        CHECK(divided(word) == expected);
}

TEST_CASE("two letters before a hyphen and three after it, at least") {
    // Common practice in English.
    for (const char* word : {"about", "iris", "ably", "only", "even", "radio", "area", "onto"}) {
        CAPTURE(word);
        for (const std::size_t point : english().points(word)) {
            CHECK(point >= 2);
            CHECK(std::string(word).size() - point >= 3);
        }
    }
}

TEST_CASE("what is no plain word is left alone; punctuation around one is not") {
    const std::pair<const char*, const char*> cases[] = {
        {"Hyphenation", "Hyphenation"},
        {"HYPHENATION", "HYPHENATION"},
        {"hyphenAtion", "hyphenAtion"},
        {"self-understanding", "self-understanding"},
        {"hyphenation.example", "hyphenation.example"},
        {"https://example.example/hyphenation", "https://example.example/hyphenation"},
        {"hyphenation@example", "hyphenation@example"},
        {"hyphénation", "hyphénation"},
        {"àhyphenation", "àhyphenation"},
        {"hyphenation2", "hyphenation2"},
        {"", ""},
        {" ", " "},
        {"...", "..."},
        {"(hyphenation),", "(hy-phen-ation),"},
        {"an example of hyphenation", "an ex-am-ple of hy-phen-ation"},
        {"4\u00A0example\u00A0hyphenation", "4\u00A0ex-am-ple\u00A0hy-phen-ation"},
    };
    for (const auto& [text, expected] : cases)
        CHECK(divided(text) == expected);
    const std::string endless(5000, 'a');
    CHECK(divided(endless) == endless);
}

TEST_CASE("off unless asked for; the résumé's word goes before the theme's") {
    struct Case {
        const char* settings;
        const char* theme;
        bool divides;
    };
    const Case cases[] = {
        {"", "", false},
        {"hyphenate: yes\n", "", true},
        {"hyphenate: no\n", "hyphenate: yes\n", false},
        {"", "hyphenate: yes\n", true},
        {"hyphenate: yes\nlanguage: de\n", "", false},
        {"hyphenate: yes\nlanguage: en-GB\n", "", true},
    };
    for (const Case& each : cases) {
        CAPTURE(each.settings);
        CAPTURE(each.theme);
        // un-der-stand-ing; `Interpretation` has a capital
        CHECK(hyphens_of(compose(each.settings, each.theme)) == (each.divides ? 3 : 0));
    }
}

TEST_CASE("threads share the patterns") {
    const quoin::composition::Hyphenation fresh(std::filesystem::path(QUOIN_DATA_FOLDER) /
                                                "hyphenation" / "hyph_en_US.dic");
    std::vector<std::vector<std::size_t>> found(4);
    {
        std::vector<std::jthread> threads;
        for (auto& points : found)
            threads.emplace_back([&] {
                for (int i = 0; i < 200; ++i)
                    points = fresh.points("an example of hyphenation and understanding");
            });
    }
    for (const auto& points : found)
        CHECK(points == found.front());
    CHECK(found.front().size() == 7);
}

TEST_CASE("without the patterns it is the installation that is wrong") {
    const quoin::composition::Hyphenation missing("/nowhere/hyph.dic");
    CHECK(missing.points("no HTML").empty()); // no word asks for them
    CHECK_THROWS_WITH(missing.points("understanding"),
                      "cannot read the hyphenation patterns /nowhere/hyph.dic");
}

} // namespace hyphenation_test
