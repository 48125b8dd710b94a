// What the model of US English says of words beside and near one another, and what follows for
// words that are typed for others.
#include "compiler/english/context_odds.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <string>

namespace quoin::english::word_contexts_test {

namespace {

const WordContexts& contexts() {
    static const WordContexts one(std::filesystem::path(QUOIN_DATA_FOLDER) /
                                  "dictionaries/en_US.contexts");
    return one;
}

WordContexts::Number number(const std::string& word) {
    CAPTURE(word);
    const auto found = contexts().number_of(word);
    REQUIRE(found);
    CHECK(contexts().word(*found) == word);
    return *found;
}

double odds(const std::string& line, std::size_t i, const std::string& meant) {
    const Sentence sentence(line, {}, {});
    constexpr double least = -100;
    const auto nothing = [](std::string_view) { return 0.0; };
    for (const LikelyWord& likely : ContextOdds(sentence, contexts()).above(least, i, nothing))
        if (likely.meant == meant) return likely.odds;
    return least;
}

}

TEST_CASE("word contexts: what stands beside a word is likelier there than what does not") {
    struct Case {
        std::string before, likely, unlikely;
    };
    for (const Case& one : {
             Case{"assistant", "manager", "manger"},
             Case{"city", "council", "counsel"},
             Case{"rather", "than", "then"},
             Case{"brake", "pads", "pan"},
         }) {
        CAPTURE(one.before);
        const auto beside = number(one.before);
        CHECK(contexts().likelihood_behind(beside, number(one.likely)) >
              contexts().likelihood_behind(beside, number(one.unlikely)) + 2);
    }
    CHECK(contexts().nearness(number("mail"), number("letters")) > 1);
    CHECK(contexts().nearness(number("male"), number("letters")) == 0);
    CHECK_FALSE(contexts().number_of("zyzzogeton"));
}

TEST_CASE("word contexts: why a word may be typed for another") {
    const auto meant = contexts().meant_for(number("male"));
    const auto mail = std::ranges::find(meant.words, number("mail"));
    REQUIRE(mail != meant.words.end());
    const auto why = meant.why[static_cast<std::size_t>(mail - meant.words.begin())];
    CHECK((why & WordContexts::sounds_alike) != 0);
    CHECK((why & WordContexts::is_listed) != 0);
}

TEST_CASE("context odds: a slip is surer than the same word where it is right") {
    struct Case {
        std::string typed, meant, slip, right;
        std::size_t in_slip, in_right; // which word it is
    };
    for (const Case& one : {
             Case{"weak", "week", "Tutored math ten hours a weak during term",
                  "Mended a weak link in the chain", 5, 2},
             Case{"male", "mail", "Sorted incoming male for nine departments",
                  "Cared for a male nurse shark", 2, 3},
             Case{"breaks", "brakes", "Replaced breaks and rotors on 20 cars",
                  "Gave lunch breaks to clerks", 1, 2},
         }) {
        CAPTURE(one.slip);
        CHECK(odds(one.slip, one.in_slip, one.meant) >
              odds(one.right, one.in_right, one.meant) + 2);
    }
}

TEST_CASE("word contexts: without the file nothing is known, and half a file is refused") {
    const auto folder = std::filesystem::temp_directory_path();
    const WordContexts none(folder / "no-such.contexts");
    CHECK_FALSE(none.number_of("manager"));
    const auto half = folder / "half.contexts";
    std::ifstream whole(QUOIN_DATA_FOLDER "/dictionaries/en_US.contexts", std::ios::binary);
    std::string bytes(100'000, '\0');
    REQUIRE(whole.read(bytes.data(), static_cast<std::streamsize>(bytes.size())));
    std::ofstream(half, std::ios::binary) << bytes;
    CHECK_THROWS_WITH(WordContexts{half}, "the contexts of words are cut short");
    std::filesystem::remove(half);
}

}
