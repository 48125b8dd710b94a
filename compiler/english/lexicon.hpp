// The lists of words/, as the rules of reading look at them.
#pragma once

#include "compiler/base/lists.hpp"
#include "compiler/english/lists.hpp"

#include <optional>
#include <string_view>

namespace quoin::english {

class Lexicon {
public:
    Lexicon() = default;
    explicit Lexicon(List left_out) : left_out_(left_out) {} // to see what a list is for

    // As in base/lists.hpp; nothing is in the list that is left out.
    std::optional<std::string_view> said_of(std::string_view word, List list) const {
        return list == left_out_ ? std::nullopt : quoin::said_of(word, lines_of(list));
    }
    bool has(std::string_view word, List list) const { return said_of(word, list).has_value(); }

private:
    std::optional<List> left_out_;
};

}
