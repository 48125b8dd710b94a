// The words of dates in the résumé's language, for the grammar to read beside the English ones.
#pragma once

#include "compiler/stages/page_words/words.hpp"
#include "grammar/dates.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::model {

class LocalDates {
public:
    LocalDates() = default; // English alone
    explicit LocalDates(const page_words::DateWords& words);

    // Bytes of such a word at the front of a text; 0 if there is none. Capitals and accents may
    // be missing; of a month any three letters that it alone begins with are enough.
    std::size_t length_at(std::string_view text, grammar::dates::Local what) const;

    // A month's name, or a shortening of one; none if it is not one.
    std::optional<trade::NamedMonth> month(std::string_view word) const;

    bool is_never_shortened(int month) const; // from 1; its short name is its whole one

    const std::vector<std::string>& names() const { return names_; } // to suggest

private:
    std::array<std::string, trade::months_of_year> months_, short_months_;    // folded
    std::array<std::vector<std::string>, grammar::dates::local_count> words_; // folded
    std::vector<std::string> names_;
};

}
