// Lists of words: whether a word is one of them, and how to add one that is not.
#pragma once

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

namespace quoin {

bool is_one_of(std::string_view word, const auto& list) {
    return std::ranges::find(list, word) != std::ranges::end(list);
}

inline void add_once(std::vector<std::string>& list, std::string_view word, std::size_t most) {
    if (list.size() < most && !is_one_of(word, list)) list.emplace_back(word);
}

}
