// Lists of words: whether a word is one of them, how to add one that is not, and a list in a
// sentence. Those of a room's words/ are compiled in by make_lists.py as lines in the order of
// their bytes, each a word or a phrase and, after a tab, what is said of it, with a table of where
// each begins; they are searched where they lie.
#pragma once

#include <algorithm>
#include <concepts>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <iterator>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

namespace quoin {

struct Lines {
    std::string_view text;
    std::span<const std::uint32_t> slots; // by the words' hash, from 1; 0 where there is none

    operator std::string_view() const { return text; }
};

// What is said of a word, which may be nothing; none if it is not in the list.
std::optional<std::string_view> said_of(std::string_view word, const Lines& lines);
std::optional<std::string_view> said_of(std::string_view word, std::string_view lines);
void each_listed(std::string_view lines,
                 const std::function<void(std::string_view word, std::string_view said)>& visit);

bool has_word(std::string_view words, std::string_view word); // of words parted by blanks

bool is_one_of(std::string_view word, const auto& list) {
    return std::ranges::find(list, word) != std::ranges::end(list);
}

// Of values that are no words.
template<typename Value>
requires(!std::convertible_to<const Value&, std::string_view>) bool is_one_of(const Value& value,
                                                                              const auto& list) {
    return std::ranges::find(list, value) != std::ranges::end(list);
}

template<typename List>
concept ListName = std::is_enum_v<List>; // List of a room, for which it has lines_of()

bool is_one_of(std::string_view word, const ListName auto& list) {
    return said_of(word, lines_of(list)).has_value();
}

// All of a list, in the order of their bytes.
std::vector<std::string_view> listed(std::string_view lines);
const std::vector<std::string_view>&
listed_once(std::string_view lines); // that stay where they are
const std::vector<std::string_view>& listed(const ListName auto& list) {
    return listed_once(lines_of(list));
}

// Pieces of a text that `sign` parts, and those that any of `signs` part, but for empty ones.
std::vector<std::string_view> pieces_of(std::string_view text, std::string_view sign);
std::vector<std::string> parted(std::string_view text, std::string_view signs);

inline void add_once(std::vector<std::string>& list, std::string_view word, std::size_t most) {
    if (list.size() < most && !is_one_of(word, list)) list.emplace_back(word);
}

constexpr std::size_t all_of_them = static_cast<std::size_t>(-1);

// "a", "a and b", "a, b and c"; of those beyond `most`, how many there are: "a, b and 3 more". Each
// as `shown_as` has it.
template<typename Words, typename ShownAs = std::identity>
std::string joined(const Words& words, std::string_view last, std::size_t most = all_of_them,
                   const ShownAs& shown_as = {}) {
    const std::size_t all = std::ranges::size(words), shown = std::min(most, all);
    std::string text;
    for (std::size_t i = 0; i < shown; ++i) {
        if (i > 0) text += i + 1 == all ? last : ", ";
        text += shown_as(std::ranges::begin(words)[static_cast<std::ptrdiff_t>(i)]);
    }
    return shown == all ? text : text + " and " + std::to_string(all - shown) + " more";
}

}
