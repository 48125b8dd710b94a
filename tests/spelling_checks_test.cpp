// Spelling: what is flagged, what is passed over, and in which order words are suggested.
// Hunspell's en_US is the outside reference for what is right.
#include "compiler/language/language.hpp"
#include "compiler/language/spelling.hpp"
#include "compiler/model/build.hpp"
#include "compiler/proof/check.hpp"

#include <doctest/doctest.h>
#include <hunspell/hunspell.hxx>

#include <algorithm>
#include <filesystem>
#include <string>
#include <thread>
#include <vector>

namespace quoin {

namespace {

const Language& language() {
    static const Language one{std::filesystem::path(QUOIN_DATA_FOLDER)};
    return one;
}

std::vector<Finding> misspelt(const std::string& lines, const std::string& settings = "") {
    Sources sources;
    Diagnostics diagnostics;
    const std::string markup = "name: Ottoline Brandt\n" + settings +
                               "\nsection: Experience\n\nrole: Field Intern\nemployer: Zorble "
                               "Tidal Trust\ndates: Jun 2025 - Aug 2025\n" +
                               lines;
    const auto file = sources.add("test.resume", markup, diagnostics);
    REQUIRE(file);
    const auto resume = build_resume(sources, *file, diagnostics);
    REQUIRE(resume);
    const ProofContext context{sources, *resume, nullptr, Date{2026, 11, {}, {}}, language()};
    std::vector<Finding> findings;
    for (const Check& check : spelling_checks())
        check.run(context, findings);
    return findings;
}

}

TEST_CASE("what is flagged") {
    for (const std::string word : {"recieved", "managment", "acheived", "definately", "occured",
                                   "thier", "seperate", "liason", "Managment", "enviroment"}) {
        CAPTURE(word);
        const auto findings = misspelt("- Counted " + word + " 14 times\n");
        REQUIRE(findings.size() == 1);
        CHECK(findings.front().text == "'" + word + "' is not in the dictionary of US English");
    }
}

TEST_CASE("what is passed over") {
    for (const std::string words : {"kubernetes",
                                    "devops",
                                    "fintech",
                                    "onboarding",
                                    "refactored",
                                    "stakeholder",
                                    "scalable",
                                    "PostgreSQL",
                                    "NumPy",
                                    "iNaturalist",
                                    "McCarthy",
                                    "Zorble",
                                    "Zorble's",
                                    "co-led",
                                    "e-filed",
                                    "fact-checked",
                                    "ellerystate.example",
                                    "GIS",
                                    "qPCR",
                                    "Kwon",
                                    "eelgrass",
                                    "crowdsourced",
                                    "upskilled",
                                    "Node.js",
                                    "14th",
                                    "<ottoline.brandt@ellerystate.example>"}) {
        CAPTURE(words);
        CHECK(misspelt("- Counted " + words + " 14 times\n").empty());
    }
}

TEST_CASE("the writer's own words are right") {
    CHECK(misspelt("- Fed blennies 14 times\n- Sorted gribbles\n").size() <= 2);
    CHECK(misspelt("- Sorted zostera wrack\n").size() == 1);
    CHECK(misspelt("- Sorted zostera wrack\n", "words: zostera, ulva\n").empty());
}

TEST_CASE("a word is told once") {
    CHECK(misspelt("- Counted recieved mail\n- Logged recieved mail\n").size() == 1);
}

TEST_CASE("British spelling is told as such, and other languages not at all") {
    const auto findings = misspelt("- Organised 14 dives\n");
    REQUIRE(findings.size() == 1);
    CHECK(findings.front().text == "'Organised' is not US spelling");
    CHECK(findings.front().suggestion == "write 'Organized', or set 'language: en-GB'");
    CHECK(misspelt("- Organised 14 dives\n", "language: en-GB\n").empty());
}

// Swaps and doubled letters come first, as slips of the hand are (common practice).
TEST_CASE("suggestions, best first") {
    struct Case {
        std::string_view word, best;
    };
    for (const Case& one : std::initializer_list<Case>{{"recieved", "received"},
                                                       {"managment", "management"},
                                                       {"Managment", "Management"},
                                                       {"occured", "occurred"},
                                                       {"thier", "their"},
                                                       {"seperate", "separate"},
                                                       {"liason", "liaison"},
                                                       {"calandar", "calendar"},
                                                       {"accomodate", "accommodate"},
                                                       {"definately", "definitely"}}) {
        CAPTURE(one.word);
        const auto near = language().spellings_near(one.word);
        REQUIRE(!near.empty());
        CHECK(near.front() == one.best);
        CHECK(near.size() <= 5);
    }
}

TEST_CASE("what Hunspell has right is right, and no suggestion is wrong") {
    const std::string folder = std::string(QUOIN_DATA_FOLDER) + "/dictionaries/en_US";
    Hunspell hunspell((folder + ".aff").c_str(), (folder + ".dic").c_str());
    for (const std::string word : {"received", "recieved", "teh", "cut", "xq", "harbour",
                                   "labelled", "I'm", "don't", "Port", "estuary", "estuarry"}) {
        CAPTURE(word);
        CHECK(language().spelled_right(word) == (hunspell.spell(word) || is_trade_word(word)));
        for (const std::string& near : language().spellings_near(word))
            CHECK(hunspell.spell(near));
    }
}

TEST_CASE("spelling may be asked from several threads, and without a dictionary") {
    const Language fresh{std::filesystem::path(QUOIN_DATA_FOLDER)};
    std::vector<std::thread> threads;
    std::vector<int> right(4);
    for (std::size_t i = 0; i < right.size(); ++i)
        threads.emplace_back([&, i] { right[i] = fresh.spelled_right("estuary"); });
    for (std::thread& thread : threads)
        thread.join();
    CHECK(std::ranges::count(right, 1) == 4);
    const Language none{"/nowhere"};
    CHECK(none.spelled_right("recieved"));
    CHECK(none.spellings_near("recieved").empty());
}

TEST_CASE("endless words end") {
    CHECK(misspelt("- Counted " + std::string(100000, 'q') + "\n").empty());
}

}
