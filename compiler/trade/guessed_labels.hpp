// Labels that people type who have not read the reference, and those that they mean.
#pragma once

#include "compiler/trade/kinds.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace quoin::trade {

// Every label that `guess`, as folded by the syntax tree, may stand for; empty if nothing is known
// of it.
std::vector<std::string_view> meant_by(std::string_view guess);

// The one that may stand in the heading, or in an entry of that kind.
std::optional<std::string_view> meant_in_heading(std::string_view guess);
std::optional<std::string_view> meant_in(Holds kind, std::string_view guess);

// Words for what one did, which goes into bullets: `duties`, `responsibilities`.
bool means_bullets(std::string_view guess);

// A label that wants a section of its own, such as `summary` or `skills`.
bool means_section(std::string_view guess);

// What to do with a label that stands for what no résumé has a field for, such as `photo`; empty if
// nothing is known of it.
std::string_view has_no_place(std::string_view guess);

// A line of a form that is but a piece of a field: `first-name` is the first of `name`.
struct LabelPiece {
    std::string_view label;
    char order = 0;

    bool operator==(const LabelPiece&) const = default;
};
std::optional<LabelPiece> piece_of_label(std::string_view guess);

// `N/A`, which stands for nothing.
bool is_empty_value(std::string_view value);

// `same`, `ditto`: what the line above of that label has.
bool is_ditto(std::string_view value);

// The two ends of a range on two lines: `from`, `start`; `to`, `end`.
bool begins_range(std::string_view guess);
bool ends_range(std::string_view guess);

}
