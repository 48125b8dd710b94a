// What is asked of the table of labels, and the names of the values that are words.
#pragma once

#include "compiler/trade/labels.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::trade {

std::span<const Word> vocabulary();
const Word* find_word(std::string_view label); // as folded by the syntax tree; null if not known

// A group's label is the writer's own: any label stands for it.
bool has_groups(Holds kind);
bool has_bullets(Holds kind);
bool has(FieldName name, Trait trait);
// A label that names what an entry is, such as `role` or `project`.
bool names_entry(const Word& word);

std::vector<std::string_view> heading_labels();      // contact fields and settings
std::vector<std::string_view> labels_of(Holds kind); // in the order of the table
std::string kinds_with(const Word& word);            // "experience or activities"

std::string_view label_of(FieldName name); // "group" for groups

// What stands where a name is still to come; a name must stand there, and this is none.
inline constexpr std::string_view name_to_come = "Your Name";

// What the markup calls a Holds, Stage, Paper or DateForm; the one of a name; all names. A form of
// dates is called as it looks: `Jun 2026`.
template<typename Value>
std::string_view name_of(Value value);
template<typename Value>
std::optional<Value> named(std::string_view name);
template<typename Value>
std::vector<std::string_view> names_of();

// "an education section", "a skills section"
std::string section_of(Holds kind);

}
