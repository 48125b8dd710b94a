// Lists of words against a search line by line.
#include "compiler/advice/lists.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/english/lists.hpp"
#include "compiler/interview/lists.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/trade/lists.hpp"
#include "compiler/transcription/lists.hpp"

#include <doctest/doctest.h>

#include <functional>
#include <map>
#include <random>
#include <string>

namespace quoin {

namespace {

// Every word of every list of a room, and words near it that may be none.
template<typename List>
std::size_t looked_up(std::size_t lists) {
    std::size_t words = 0;
    for (std::size_t at = 0; at < lists; ++at) {
        const Lines lines = lines_of(static_cast<List>(at));
        std::map<std::string, std::string, std::less<>> all;
        each_listed(lines,
                    [&](std::string_view word, std::string_view said) { all.emplace(word, said); });
        words += all.size();
        for (const auto& [word, said] : all)
            for (const std::string& near : {word, word + "s", word.substr(0, word.size() - 1)}) {
                const auto found = said_of(near, lines);
                const auto expected = all.find(near);
                CAPTURE(near);
                REQUIRE(found.has_value() == (expected != all.end()));
                if (found) REQUIRE(*found == expected->second);
            }
    }
    return words;
}

}

TEST_CASE("every word of every list is found, and none else") {
    CHECK(looked_up<advice::List>(advice::list_count) > 1000);
    CHECK(looked_up<english::List>(english::list_count) > 1000);
    CHECK(looked_up<interview::List>(interview::list_count) > 100);
    CHECK(looked_up<postings::List>(postings::list_count) > 1000);
    CHECK(looked_up<trade::List>(trade::list_count) > 300);
    CHECK(looked_up<transcription::List>(transcription::list_count) > 50);
}

TEST_CASE("a phrase is found in a prepared text as in any") {
    std::mt19937 random(3);
    const std::string letters = "ab -é\u2019";
    std::size_t found = 0;
    for (int round = 0; round < 20000; ++round) {
        std::string text, phrase;
        for (std::size_t i = random() % 24; i > 0; --i)
            text += letters[random() % letters.size()];
        for (std::size_t i = 1 + random() % 4; i > 0; --i)
            phrase += letters[random() % letters.size()];
        CAPTURE(text);
        CAPTURE(phrase);
        REQUIRE(Phrased(text).find(phrase) == find_phrase(text, phrase));
        found += has_phrase(text, phrase) ? 1U : 0U;
    }
    CHECK(found > 300);
}

}
