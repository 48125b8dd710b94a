// What changed in texts and fields that are the same one in both drafts.
#pragma once

#include "compiler/redlining/redline.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace quoin::redlining {

// None if they read and look the same.
std::optional<Change> text_change(const model::Text& was, const model::Text& is);

struct Fields {
    std::span<const model::Field> all;
    const model::Resume& resume; // that they are of
};

using FieldMatch = std::vector<std::optional<std::size_t>>; // by the new field, the old one

// By label; of those with one label the most alike; a group whose label alone was changed, by its
// items.
FieldMatch match_fields(const Fields& before, const Fields& after);

std::vector<Change> field_changes(const Fields& before, const Fields& after, What what);

// Of lists: by the new item, the old one.
FieldMatch match_items(const std::vector<model::Text>& before,
                       const std::vector<model::Text>& after);

std::string words_for(const model::Tags& tags); // "{lab !field}"; empty for none

}
