// Nearness of words by edits: optimal string alignment.
#include "compiler/base/suggest.hpp"

#include "compiler/base/ascii.hpp"

#include <algorithm>
#include <cstddef>
#include <vector>

namespace quoin {

namespace {

// Optimal string alignment: insertions, deletions, substitutions, and swaps of two neighbours, no
// piece of the word edited twice. Only the last three rows of the table are kept.
std::size_t distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> before(b.size() + 1), above(b.size() + 1), row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j)
        row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        before.swap(above);
        above.swap(row);
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const bool same = small_letter(a[i - 1]) == small_letter(b[j - 1]);
            row[j] = std::min({above[j] + 1, row[j - 1] + 1, above[j - 1] + (same ? 0 : 1)});
            const bool swapped = i > 1 && j > 1 &&
                                 small_letter(a[i - 1]) == small_letter(b[j - 2]) &&
                                 small_letter(a[i - 2]) == small_letter(b[j - 1]);
            if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
        }
    }
    return row[b.size()];
}

std::size_t difference(std::size_t a, std::size_t b) {
    return a > b ? a - b : b - a;
}

}

std::optional<std::string_view> nearest(std::string_view word,
                                        std::span<const std::string_view> candidates) {
    std::optional<std::string_view> best;
    std::size_t limit = std::max<std::size_t>(1, word.size() / 3);
    for (const std::string_view candidate : candidates) {
        // The lengths alone rule most candidates out, and a word of any length with them.
        if (difference(word.size(), candidate.size()) > limit) continue;
        const std::size_t edits = distance(word, candidate);
        if (edits > limit) continue;
        best = candidate;
        if (edits == 0) break;
        limit = edits - 1;
    }
    return best;
}

std::optional<std::string_view> slip_of(std::string_view word,
                                        std::span<const std::string_view> candidates) {
    constexpr std::size_t least = 5;
    const auto meant = nearest(word, candidates);
    const bool sure = meant && word.size() >= least &&
                      small_letter(word.front()) == small_letter(meant->front()) &&
                      difference(word.size(), meant->size()) <= 1;
    return sure ? meant : std::nullopt;
}

}
