// Spelling: what is flagged, what is passed over, and in which order words are suggested.
// Hunspell's en_US is the outside reference for what is right.
#include "compiler/advice/check.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/english/language.hpp"
#include "compiler/english/slips.hpp"
#include "compiler/english/spelling.hpp"
#include "compiler/stages/model/build.hpp"
#include "tests/fixtures/tries.hpp"

#include <doctest/doctest.h>
#include <hunspell/hunspell.hxx>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <functional>
#include <map>
#include <random>
#include <sstream>
#include <string>
#include <thread>
#include <vector>

namespace quoin::advice::spelling_checks_test {

namespace {

const english::Language& language() {
    static const english::Language one{std::filesystem::path(QUOIN_DATA_FOLDER)};
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
    const auto resume =
        model::build_resume(sources, *file, QUOIN_DATA_FOLDER "/themes/words", diagnostics);
    REQUIRE(resume);
    const auto texts = read_texts(*resume, language());
    const auto bullets = read_bullets(*resume, texts, language());
    const ProofContext context{sources,    *resume, nullptr, model::Date{2026, 11, {}, {}},
                               language(), texts,   bullets};
    std::vector<Finding> findings;
    for (const Check& check : spelling_checks())
        check.run(context, findings);
    return findings;
}

Hunspell& hunspell() {
    static Hunspell one("/usr/share/hunspell/en_US.aff", "/usr/share/hunspell/en_US.dic");
    return one;
}

const english::WordList& word_list() {
    static const english::WordList one{std::filesystem::path(QUOIN_DATA_FOLDER) /
                                       "dictionaries/en_US.words"};
    return one;
}

bool of_dictionary(const std::string& word) {
    const char rank = word_list().class_of(word);
    return rank != english::WordList::is_none && rank != english::WordList::is_beside;
}

std::vector<std::string> lines_of(const std::string& name) {
    std::ifstream in(std::filesystem::path(QUOIN_SOURCE_FOLDER) / "tests/advice" / name);
    REQUIRE(in.good());
    std::vector<std::string> lines;
    for (std::string line; std::getline(in, line);)
        if (!line.starts_with('#')) lines.push_back(line);
    return lines;
}

}

TEST_CASE("misspellings: nearly all are found, with what was meant first") {
    const auto pairs = lines_of("misspellings.tsv");
    REQUIRE(pairs.size() >= 80);
    std::size_t found = 0, first = 0;
    std::string missed;
    for (const std::string& pair : pairs) {
        const std::size_t tab = pair.find('\t');
        const std::string typed = pair.substr(0, tab), meant = pair.substr(tab + 1);
        const auto findings = misspelt("- Counted " + typed + " 14 times\n");
        const bool told =
            findings.size() == 1 && findings.front().text == "'" + typed +
                                                                 "' is not in the dictionary "
                                                                 "of US English";
        if (!told) missed += typed + " ";
        if (!told) continue;
        ++found;
        if (findings.front().suggestion.starts_with("'" + meant + "'")) ++first;
    }
    CAPTURE(missed);
    CHECK(found * 100 >= pairs.size() * 95);
    CHECK(first * 100 >= pairs.size() * 90);
}

TEST_CASE("misspellings open bullets and stand in compounds, prose and beside accents") {
    for (const std::string lines :
         {"- Recieved 14 deliveries", "- Coached a self-managment course for 14",
          "- Won awards, recieved at café", "- Wrote 4 résumé guidlines",
          "- Recieved 14 letters from São Paulo", "- Built 3 tools in Pyhton",
          "- Built 3 sites in JavaScirpt"}) {
        CAPTURE(lines);
        CHECK(misspelt(lines + "\n").size() == 1);
    }
    CHECK(misspelt("- Baked pão de quiejo for 14\n").size() <= 1);
}

TEST_CASE("specialist words are right, or cannot be told") {
    const auto words = lines_of("specialist_words.txt");
    REQUIRE(words.size() >= 150);
    for (const std::string& word : words)
        for (const std::string& bullet : {"- Kept 14 " + word + " today\n", "- " + word + " 14\n"})
            for (const Finding& finding : misspelt(bullet))
                CHECK(word + ": " + finding.text + finding.suggestion == "nothing");
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
    CHECK(misspelt("- Sorted servise wrack\n").size() == 1);
    CHECK(misspelt("- Sorted servise wrack\n", "words: servise, ulva\n").empty());
    CHECK(misspelt("- Sorted servise wrack\n", "foreign: servise wrack (fr)\n").empty());
}

TEST_CASE("a word is told once") {
    CHECK(misspelt("- Counted recieved mail\n- Logged recieved mail\n").size() == 1);
}

TEST_CASE("British spelling is no misspelling") {
    for (const std::string word : {"Organised", "Catalogued", "Travelled", "Theatre", "Colour",
                                   "Analysed", "Acknowledgement", "Programme"}) {
        CAPTURE(word);
        CHECK(misspelt("- " + word + " 14 dives\n").empty());
    }
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
                                                       {"calander", "calendar"},
                                                       {"accomodate", "accommodate"},
                                                       {"Pyhton", "Python"},
                                                       {"definately", "definitely"}}) {
        CAPTURE(one.word);
        const auto near = language().spellings_near(one.word);
        REQUIRE(!near.empty());
        CHECK(near.front() == one.best);
        CHECK(near.size() <= 5);
    }
}

TEST_CASE("the list has each word of Hunspell's dictionary, and no other as one of it") {
    std::size_t count = 0;
    word_list().visit("", [&](std::string_view word, char rank) {
        if (rank == english::WordList::is_beside) return;
        if (++count % part_tried != 0) return; // all are counted
        if (!hunspell().spell(std::string(word))) CHECK(std::string(word) == "of the dictionary");
    });
    CHECK(count > 150000);
    // whatever Hunspell makes of a word and an ending, the list has
    std::ifstream stems("/usr/share/hunspell/en_US.dic");
    std::string line;
    for (std::size_t i = 0; std::getline(stems, line); ++i) {
        constexpr std::size_t one_in = 11 * part_tried;
        const std::string stem = line.substr(0, line.find('/'));
        if (i % one_in != 0 || stem.empty() || (stem[0] >= '0' && stem[0] <= '9')) continue;
        for (const std::string ending : {"", "s", "es", "'s", "d", "ed", "ing", "ings", "ly", "r",
                                         "er", "ers", "st", "est", "ness", "able", "ment", "ive"})
            for (const std::string prefix : {"", "re", "un", "in", "de", "dis", "con", "pro"}) {
                const std::string word = prefix + stem + ending;
                if (of_dictionary(word) == hunspell().spell(word)) continue;
                CHECK(hunspell().spell(word) == language().spelled_right(word)); // by its capital
            }
    }
}

TEST_CASE("words made at random are right where Hunspell has them right") {
    std::mt19937 random(20261120);
    const std::vector<std::string> seeds = lines_of("specialist_words.txt");
    for (int i = 0; i < 20000; ++i) {
        std::string word = seeds[random() % seeds.size()].substr(0, 1 + random() % 8);
        word[random() % word.size()] = static_cast<char>('a' + random() % 26);
        if (random() % 3 == 0) word.insert(random() % word.size(), 1, word[0]);
        if (word.find('-') != std::string::npos) continue;
        CAPTURE(word);
        if (hunspell().spell(word)) CHECK(language().spelled_right(word));
        const bool small = std::ranges::all_of(word, [](char c) { return c >= 'a' && c <= 'z'; });
        if (small) CHECK(of_dictionary(word) == hunspell().spell(word));
    }
}

TEST_CASE("capitals and hyphens are taken as Hunspell takes them") {
    for (const std::string word :
         {"received", "Received", "RECEIVED", "ReceiVed",   "teh",           "harbour",
          "I'm",      "don't",    "Don't",    "Port",       "astoria",       "Boston",
          "boston",   "BOSTON",   "co-op",    "well-known", "red-hot-poker", "red-hto-poker",
          "Red-Hot",  "NASA",     "nasa",     "O'Brien"}) {
        CAPTURE(word);
        CHECK(language().spelled_right(word) == hunspell().spell(word));
    }
}

TEST_CASE("no suggestion is wrong, and none would make one blush") {
    for (const std::string word :
         {"recieved", "asess", "publc", "shif", "mockups", "pytest", "sternal", "assit", "analist",
          "estuarry", "cokpit", "sectio", "highhandidly", "titel", "brests", "secks"}) {
        CAPTURE(word);
        for (const std::string& near : language().spellings_near(word)) {
            CAPTURE(near);
            CHECK(language().spelled_right(near));
            for (const std::string bad : {"asses", "pubic", "shit", "testes", "cockups", "tit",
                                          "sex", "anal", "highhandedly"})
                CHECK(near != bad);
        }
    }
}

namespace {

// By every way to turn the one into the other, with the costs that slips.cpp has.
int cost_by_trying(const std::string& typed, const std::string& meant) {
    std::map<std::pair<std::size_t, std::size_t>, int> known;
    const auto vowel = [](char c) { return std::string("aeiouy").find(c) != std::string::npos; };
    const auto near_keys = [](char a, char b) {
        return std::string("er re ol lo").find(std::string{a, b}) != std::string::npos;
    };
    const auto doubled = [](const std::string& word, std::size_t i) {
        return (i > 0 && word[i] == word[i - 1]) || (i + 1 < word.size() && word[i] == word[i + 1]);
    };
    const std::function<int(std::size_t, std::size_t)> least = [&](std::size_t i, std::size_t j) {
        if (i == typed.size() && j == meant.size()) return 0;
        if (const auto found = known.find({i, j}); found != known.end()) return found->second;
        int best = 1000;
        if (i < typed.size() && j < meant.size()) {
            const bool both = vowel(typed[i]) && vowel(meant[j]);
            const int wrong = typed[i] == meant[j]            ? 0
                              : both                          ? 3
                              : near_keys(typed[i], meant[j]) ? 6
                                                              : 9;
            best = std::min(best, wrong + least(i + 1, j + 1));
        }
        if (i < typed.size())
            best = std::min(best, (doubled(typed, i) ? 3
                                   : vowel(typed[i]) ? 5
                                                     : 6) +
                                      least(i + 1, j));
        if (j < meant.size())
            best = std::min(best, (doubled(meant, j) ? 3
                                   : vowel(meant[j]) ? 4
                                                     : 6) +
                                      least(i, j + 1));
        if (i + 1 < typed.size() && j + 1 < meant.size() && typed[i] == meant[j + 1] &&
            typed[i + 1] == meant[j])
            best = std::min(best, 3 + least(i + 2, j + 2));
        return known[{i, j}] = best;
    };
    return least(0, 0);
}

}

TEST_CASE("the cost of a slip: against every way to make it") {
    std::mt19937 random(7);
    const std::string letters = "aeolr"; // no two of its consonants are alike, or near on the keys
    for (int i = 0; i < 20000; ++i) {
        std::string typed, meant;
        for (std::size_t k = 1 + random() % 7; k > 0; --k)
            typed += letters[random() % letters.size()];
        for (std::size_t k = 1 + random() % 7; k > 0; --k)
            meant += letters[random() % letters.size()];
        CAPTURE(typed);
        CAPTURE(meant);
        const int most = static_cast<int>(random() % 12);
        CHECK(english::slip_cost(typed, meant, most) ==
              std::min(most + 1, cost_by_trying(typed, meant)));
    }
}

namespace {

struct SlipRow {
    bool slip = false;
    std::string typed, meant, text;
};

std::vector<SlipRow> slip_rows() {
    std::ifstream file(std::string(QUOIN_SOURCE_FOLDER) + "/tests/advice/word_slips.tsv");
    std::vector<SlipRow> rows;
    for (std::string line; std::getline(file, line);) {
        if (line.starts_with('#')) continue;
        std::istringstream columns(line);
        SlipRow row;
        std::string kind;
        std::getline(columns, kind, '\t');
        std::getline(columns, row.typed, '\t');
        std::getline(columns, row.meant, '\t');
        std::getline(columns, row.text, '\t');
        row.slip = kind == "slip";
        rows.push_back(row);
    }
    return rows;
}

}

// One cause, one finding: what is a slip for another word is not misspelt besides.
TEST_CASE("word slips: each is told once, and clean lines are silent") {
    int right = 0, wrong = 0, all = 0;
    for (const SlipRow& row : slip_rows()) {
        CAPTURE(row.text);
        const auto findings = misspelt("- " + row.text + "\n");
        const std::string told = "'" + row.typed + "' is a slip here for '" + row.meant + "'";
        const bool found = findings.size() == 1 && findings.front().text == told;
        all += row.slip;
        right += row.slip && found;
        wrong += row.slip ? !findings.empty() && !found : !findings.empty();
        if (!row.slip) CHECK(findings.empty());
    }
    REQUIRE(all >= 150);
    MESSAGE("word slips: " << right << " of " << all << " told, " << wrong << " false");
    CHECK(wrong == 0);
    CHECK(right >= all * 0.95);
}

TEST_CASE("word slips: a certain one is mended, with its capital") {
    const auto mended = [](const std::string& lines) {
        const auto findings = misspelt(lines);
        REQUIRE(findings.size() == 1);
        const auto& mend = findings.front().safe_mend;
        return mend.empty() ? std::string("-") : mend.front().replacement;
    };
    CHECK(mended("- Assistant Manger of a shop\n") == "Manager");
    CHECK(mended("- Improved it's reach among teens\n") == "its");
    CHECK(mended("- Finished 2 weeks earlier then planned\n") == "than");
    CHECK(mended("- Helped a *manger* plan shifts\n") == "manager");
    CHECK(mended("- Prepared food an water for 40 riders\n") == "-"); // `and` may be meant
    CHECK(misspelt("- Assistant manger of a shop\n", "words: manger\n").empty());
    CHECK(misspelt("- Wrote /The Pubic Library/ and \"Their is Hope\"\n").empty());
}

// The Chicago Manual of Style, 7.33 (17th edition): `a` and `an` go by the sound, also of letters.
TEST_CASE("word slips: a and an go by the sound") {
    for (const std::string good :
         {"an hour",     "a European",   "a one-time",   "an MRI",        "a URL",     "an 8-hour",
          "an 11-week",  "a 110-page",   "a 1,100-page", "an 1,100-page", "a NASA",    "an x-ray",
          "an M",        "a U-turn",     "an iOS",       "an RFP",        "an unused", "a unit",
          "a utility",   "an uninsured", "a UNICEF",     "an LED",        "an honest", "a historic",
          "an historic", "an SQL",       "a SQL",        "a used",        "an urn",    "a $500",
          "an $800",     "a Ubuntu",     "an Ubuntu",    "a mRNA",        "an mRNA",   "a PhD",
          "an EMT"}) {
        CAPTURE(good);
        CHECK(misspelt("- Had " + good + " post\n").empty());
    }
    for (const std::string bad :
         {"a hour",    "an European", "an one-time", "a MRI",     "an URL",  "a 8-hour",
          "a 18-week", "an 110-page", "a x-ray",     "an U-turn", "a iOS",   "a RFP",
          "a unused",  "an unit",     "an utility",  "a honest",  "an used", "a urn",
          "an $500",   "a $800",      "an PhD",      "a EMT",     "a apple", "an pear"}) {
        CAPTURE(bad);
        CHECK(misspelt("- Had " + bad + " post\n").size() == 1);
    }
}

TEST_CASE("spelling may be asked from several threads, and without a dictionary") {
    const english::Language fresh{std::filesystem::path(QUOIN_DATA_FOLDER)};
    std::vector<std::thread> threads;
    std::vector<int> right(4);
    for (std::size_t i = 0; i < right.size(); ++i)
        threads.emplace_back([&, i] { right[i] = fresh.spelled_right("estuary"); });
    for (std::thread& thread : threads)
        thread.join();
    CHECK(std::ranges::count(right, 1) == 4);
    const english::Language none{"/nowhere"};
    CHECK(none.spelled_right("recieved"));
    CHECK(none.spellings_near("recieved").empty());
}

namespace {

// Another for each number, and near no word.
std::string unheard_word(std::size_t number) {
    std::string word = "qx";
    for (number += 1000; number > 0; number /= 7) {
        word += "zvkqxjw"[number % 7];
        word += "zkvxqwj"[number % 5];
    }
    return word;
}

// Different ones, from the list.
std::vector<std::string> right_words(std::size_t count) {
    std::vector<std::string> words;
    for (char first = 'a'; first <= 'z'; ++first)
        word_list().visit(std::string(1, first), [&](std::string_view word, char) {
            const bool small = std::ranges::all_of(word, [](char c) { return is_small_letter(c); });
            if (small && word.size() > 6 && words.size() < count) words.emplace_back(word);
        });
    return words;
}

std::string bulleted(const std::vector<std::string>& words) {
    std::string text = "- Counted";
    for (const std::string& word : words)
        text += ' ' + word;
    return text + '\n';
}

}

TEST_CASE("all words are spelled, however many there are that are right") {
    std::vector<std::string> words = right_words(9000);
    REQUIRE(words.size() == 9000);
    words.emplace_back("recieved");
    const auto findings = misspelt(bulleted(words));
    CHECK(std::ranges::any_of(findings, [](const Finding& finding) {
        return finding.text == "'recieved' is not in the dictionary of US English";
    }));
}

TEST_CASE("where no more words are looked at, that is said") {
    std::vector<std::string> words;
    for (std::size_t i = 0; i < 1000; ++i)
        words.push_back(unheard_word(i));
    words.emplace_back("recieved");
    auto findings = misspelt(bulleted(words));
    REQUIRE(findings.size() == 1);
    CHECK(findings.front().text == "no word from 'recieved' on is looked at: 1000 different ones "
                                   "before it are in no dictionary");
    words.erase(words.begin());
    findings = misspelt(bulleted(words));
    REQUIRE(findings.size() == 1);
    CHECK(findings.front().text == "'recieved' is not in the dictionary of US English");
}

TEST_CASE("endless words end") {
    CHECK(misspelt("- Counted " + std::string(100000, 'q') + "\n").empty());
}

}
