// The words of dates in the résumé's language, for the grammar to read beside the English ones.
#pragma once

#include "compiler/stages/page_words/words.hpp"
#include "compiler/trade/months.hpp"
#include "grammar/dates.hpp"

#include <array>
#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
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

    // `from 11/2024 - present` of `seit 11/2024 bis heute`: the words of this language in English.
    std::string in_english(std::string_view text) const;

    // Those of the languages that the résumé is not in, for dates that cannot be read in its own.
    using Others = std::function<const std::vector<LocalDates>&()>;
    void know_others(Others others) { others_ = std::move(others); }
    std::span<const LocalDates> others() const;

private:
    std::optional<std::pair<std::size_t, std::string>> english_at(std::string_view text,
                                                                  bool opens) const;

    std::array<std::string, trade::months_of_year> months_, short_months_;    // folded
    std::array<std::vector<std::string>, grammar::dates::local_count> words_; // folded
    std::vector<std::string> names_;
    Others others_;
};

}
