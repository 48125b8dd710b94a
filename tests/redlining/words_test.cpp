// The word-by-word comparison and the assignment, against slow and obvious ones.
#include "compiler/redlining/assignment.hpp"
#include "compiler/redlining/word_changes.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <numeric>
#include <random>
#include <string>
#include <vector>

namespace {

using namespace quoin::redlining;

// "a [-b] {+c}", as the pieces stand.
std::string shown(std::string_view was, std::string_view is) {
    const auto before = words_of(was), after = words_of(is);
    std::string text;
    for (const Stretch& stretch : word_changes(before, after)) {
        const bool old_one = stretch.fate == Fate::deleted;
        text += text.empty() ? "" : " ";
        if (stretch.fate != Fate::kept) text += old_one ? "[-" : "{+";
        for (std::size_t word = stretch.begin; word < stretch.end; ++word) {
            if (word > stretch.begin) text += ' ';
            text += (old_one ? before : after)[word].text;
        }
        if (stretch.fate != Fate::kept) text += old_one ? "]" : "}";
    }
    return text;
}

// Words kept at most, by the table of all beginnings.
std::size_t longest_common(const std::vector<Word>& a, const std::vector<Word>& b) {
    std::vector<std::vector<std::size_t>> best(a.size() + 1,
                                               std::vector<std::size_t>(b.size() + 1));
    for (std::size_t i = 1; i <= a.size(); ++i)
        for (std::size_t j = 1; j <= b.size(); ++j)
            best[i][j] = a[i - 1].text == b[j - 1].text ? best[i - 1][j - 1] + 1
                                                        : std::max(best[i - 1][j], best[i][j - 1]);
    return best[a.size()][b.size()];
}

std::string random_words(std::mt19937& random, std::size_t most) {
    std::string text;
    for (std::size_t count = random() % (most + 1); count > 0; --count)
        text += std::string(1, static_cast<char>('a' + random() % 4)) + (count > 1 ? " " : "");
    return text;
}

// Both wordings come out of the stretches, in order; gives how many words were kept.
std::size_t put_together(const std::vector<Word>& before, const std::vector<Word>& after) {
    std::size_t old_at = 0, new_at = 0, kept = 0;
    for (const Stretch& stretch : word_changes(before, after)) {
        std::size_t& at = stretch.fate == Fate::deleted ? old_at : new_at;
        REQUIRE(stretch.begin == at);
        at = stretch.end;
        if (stretch.fate != Fate::kept) continue;
        for (std::size_t word = stretch.begin; word < stretch.end; ++word, ++old_at, ++kept)
            REQUIRE(before[old_at].text == after[word].text);
    }
    REQUIRE(old_at == before.size());
    REQUIRE(new_at == after.size());
    return kept;
}

double best_sum(std::vector<std::vector<double>> by, std::size_t row, std::vector<bool>& taken) {
    if (row == by.size()) return 0;
    double best = best_sum(by, row + 1, taken);
    for (std::size_t column = 0; column < taken.size(); ++column) {
        if (taken[column]) continue;
        taken[column] = true;
        best = std::max(best, by[row][column] + best_sum(by, row + 1, taken));
        taken[column] = false;
    }
    return best;
}

std::size_t longest_rising(const std::vector<std::size_t>& numbers) {
    std::size_t best = 0;
    for (unsigned set = 0; set < (1U << numbers.size()); ++set) {
        std::vector<std::size_t> chosen;
        for (std::size_t i = 0; i < numbers.size(); ++i)
            if ((set >> i & 1U) != 0) chosen.push_back(numbers[i]);
        if (std::is_sorted(chosen.begin(), chosen.end())) best = std::max(best, chosen.size());
    }
    return best;
}

}

TEST_CASE("redlining: word by word, a case a line") {
    struct Case {
        const char* was;
        const char* is;
        const char* shown;
    };
    const Case cases[] = {
        {"", "", ""},
        {"Counted quadrats", "Counted quadrats", "Counted quadrats"},
        {"Counted quadrats", "Counted\u00A0quadrats", "Counted quadrats"},
        {"", "New", "{+New}"},
        {"Old", "", "[-Old]"},
        {"Counted 212 quadrats", "Counted 240 quadrats", "Counted [-212] {+240} quadrats"},
        {"Helped with the survey", "Led the survey", "[-Helped with] {+Led} the survey"},
        {"titration, balance", "titration; balance", "titration [-,] {+;} balance"},
        {"cut time 18%.", "cut time 21%.", "cut time [-18%] {+21%} ."},
        {"a b c d", "b c d a", "[-a] b c d {+a}"},
    };
    for (const Case& each : cases)
        CHECK(shown(each.was, each.is) == each.shown);
}

TEST_CASE("redlining: no edit script is shorter") {
    std::mt19937 random(20261129);
    for (int trial = 0; trial < 2000; ++trial) {
        const std::string was = random_words(random, 12), is = random_words(random, 12);
        CAPTURE(was);
        CAPTURE(is);
        const auto before = words_of(was), after = words_of(is);
        REQUIRE(put_together(before, after) == longest_common(before, after));
    }
}

TEST_CASE("redlining: long wordings that share nothing take no long time") {
    std::string was, is;
    for (int word = 0; word < 60'000; ++word) {
        was += "a" + std::to_string(word) + ' ';
        is += "b" + std::to_string(word) + ' ';
    }
    const auto before = words_of(was), after = words_of(is);
    CHECK(put_together(before, after) == 0);
}

TEST_CASE("redlining: the pairs most alike in sum, as all assignments have it") {
    std::mt19937 random(1955);
    for (int trial = 0; trial < 300; ++trial) {
        const std::size_t rows = random() % 6, columns = random() % 6;
        std::vector<std::vector<double>> by(rows, std::vector<double>(columns));
        for (auto& row : by)
            for (double& value : row)
                if (const double drawn = static_cast<double>(random() % 100) / 100; drawn >= 0.3)
                    value = drawn;
        const auto pairs = best_pairs(
            rows, columns, [&](std::size_t i, std::size_t j) { return by[i][j]; }, 0.3);
        double sum = 0;
        std::vector<bool> row_taken(rows), column_taken(columns);
        for (const auto& pair : pairs) {
            REQUIRE_FALSE(row_taken[pair.first]);
            REQUIRE_FALSE(column_taken[pair.second]);
            row_taken[pair.first] = column_taken[pair.second] = true;
            REQUIRE(by[pair.first][pair.second] >= 0.3);
            sum += by[pair.first][pair.second];
        }
        std::vector<bool> taken(columns);
        REQUIRE(sum == doctest::Approx(best_sum(by, 0, taken)));
    }
}

TEST_CASE("redlining: what a longest rising run leaves out is least") {
    std::mt19937 random(7);
    for (int trial = 0; trial < 300; ++trial) {
        std::vector<std::size_t> numbers(random() % 9);
        std::iota(numbers.begin(), numbers.end(), 0U);
        std::shuffle(numbers.begin(), numbers.end(), random);
        REQUIRE(out_of_order(numbers).size() == numbers.size() - longest_rising(numbers));
    }
}
