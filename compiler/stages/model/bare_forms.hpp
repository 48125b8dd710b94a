// What a line with neither label nor dash is by its form and its words.
#pragma once

#include "compiler/base/ascii.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/stages/model/local_dates.hpp"
#include "compiler/trade/kinds.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::model {

struct LabelledLine {
    std::string_view label; // `-` of a bullet
    std::string text;

    std::string whole() const { return std::string(label) + (label == "-" ? " " : ": ") + text; }
};

// Without the signs of other markup, or the picture, that stand around it or before it.
std::string_view unmarked(std::string_view text);

// What the text of a line of such an entry is by its form.
std::optional<LabelledLine> line_by_form(std::string_view text, trade::Holds holds,
                                         const LocalDates& dates);
// The same by its words too.
std::optional<LabelledLine> line_by_words(std::string_view text, trade::Holds holds,
                                          const LocalDates& dates);

bool reads_as_place(std::string_view text); // `Port Ellery, WA`
bool parts_columns(std::string_view text);  // by a tab, by blanks or by dots

// Phrases in small letters
bool has_any(std::string_view text, const auto& phrases) {
    const std::string small = straight_apostrophes(lower_case(text));
    return std::ranges::any_of(phrases,
                               [&](std::string_view phrase) { return has_phrase(small, phrase); });
}

// Pieces that the sign parts, a town and its state together.
std::vector<std::string_view> split_at(std::string_view text, std::string_view sign);

}
