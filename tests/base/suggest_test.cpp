// The nearest known word to a mistyped one.
#include "compiler/base/suggest.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace {

// The definition of optimal string alignment, recursion and all.
std::size_t slow_distance(std::string_view a, std::string_view b) {
    if (a.empty() || b.empty()) return a.size() + b.size();
    const std::string_view a1 = a.substr(1), b1 = b.substr(1);
    std::size_t best = std::min(slow_distance(a1, b), slow_distance(a, b1)) + 1;
    best = std::min(best, slow_distance(a1, b1) + (a[0] == b[0] ? 0 : 1));
    if (a.size() > 1 && b.size() > 1 && a[0] == b[1] && a[1] == b[0])
        best = std::min(best, slow_distance(a.substr(2), b.substr(2)) + 1);
    return best;
}

}

TEST_SUITE("suggest") {

    TEST_CASE("the nearest word is the first of least distance, by brute force") {
        std::vector<std::string> words{""};
        for (std::size_t at = 0; words[at].size() < 4; ++at)
            for (const char c : {'a', 'b', 'c'})
                words.push_back(words[at] + c);
        const std::vector<std::string_view> two{"abcabc", "cbacba"};
        std::size_t wrong = 0;
        for (const std::string& word : words) {
            if (word.empty()) continue;
            const std::string longer = word + "abca";
            const std::size_t limit = std::max<std::size_t>(1, longer.size() / 3);
            const std::size_t first = slow_distance(longer, two[0]);
            const std::size_t second = slow_distance(longer, two[1]);
            std::optional<std::string_view> expected;
            if (std::min(first, second) <= limit) expected = first <= second ? two[0] : two[1];
            if (quoin::nearest(longer, two) != expected) ++wrong;
        }
        CHECK(wrong == 0);
    }

    TEST_CASE("labels mistyped") {
        const std::vector<std::string_view> labels{"name", "employer", "graduation", "gpa",
                                                   "dates"};
        struct Row {
            const char* word;
            std::string_view nearest;
        };
        const Row rows[]{{"nmae", "name"},
                         {"emploier", "employer"},
                         {"gradation", "graduation"},
                         {"GPA", "gpa"},
                         {"date", "dates"},
                         {"gap", "gpa"},
                         {"hobbies", ""},
                         {"x", ""},
                         {"graduaiton", "graduation"},
                         {"emplyoers", "employer"}};
        for (const Row& row : rows)
            CHECK(quoin::nearest(row.word, labels).value_or("") == row.nearest);
        CHECK_FALSE(quoin::nearest("name", {}));
        CHECK_FALSE(quoin::nearest(std::string(1 << 20, 'a'), labels));
    }
}
