// Who goes with whom: the pairs of two lists that are most alike, all together.
#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <utility>
#include <vector>

namespace quoin::redlining {

using IndexPair = std::pair<std::size_t, std::size_t>; // of the first list, of the second

// The pairs, each index at most once, whose likeness is largest in sum; none that is alike by less
// than `least`. By the first index. In time the cube of the shorter by the longer: for short lists.
std::vector<IndexPair> best_pairs(std::size_t first, std::size_t second,
                                  const std::function<double(std::size_t, std::size_t)>& likeness,
                                  double least);

struct Item {
    std::string key;                // of what it says; equal keys: the same
    std::vector<std::string> words; // in order of the alphabet, as often as they are said
};

// The same of lists of any length: where both are long, only those that share a rarer word are
// compared, and the most alike go together first. About linear in all that is said.
std::vector<IndexPair> pairs_of(const std::vector<Item>& first, const std::vector<Item>& second,
                                const std::function<double(std::size_t, std::size_t)>& likeness,
                                double least);

// Of distinct numbers, the indices of those that a longest rising subsequence leaves out.
std::vector<std::size_t> out_of_order(const std::vector<std::size_t>& numbers);

}
