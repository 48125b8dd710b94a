// The words of the markup: one table of every label with what it means, where it may stand, how
// its value is read and whether it may repeat; and the names of the values that are words.
#pragma once

#include "compiler/trade/kinds.hpp"

#include <cstdint>
#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace quoin::trade {

enum class SettingName {
    stage,
    pages,
    theme,
    paper,
    size,
    margins,
    dates_as,
    language,
    updated,
    words,
    accept,
    hyphenate,
    foreign,
    abbreviations
};

// Labels that are neither a field nor a setting.
enum class Directive { section, holds, column, for_tags, include };

enum class ValueKind {
    text,  // inline text
    items, // inline text, parted by `;`
    group, // inline text, parted by `,` or `;`
    dates,
    phone,
    email,
    link,
    setting, // has a reader of its own
    tags     // tag names
};

class HoldsSet { // of kinds of sections
public:
    constexpr HoldsSet() = default;
    constexpr HoldsSet(std::initializer_list<Holds> kinds) {
        for (const Holds kind : kinds)
            bits_ |= bit(kind);
    }
    constexpr bool has(Holds kind) const { return (bits_ & bit(kind)) != 0; }
    constexpr bool empty() const { return bits_ == 0; }

private:
    static constexpr std::uint32_t bit(Holds kind) {
        return std::uint32_t{1} << static_cast<unsigned>(kind);
    }
    std::uint32_t bits_ = 0;
};

struct Word { // a row of the table
    std::string_view label;
    std::variant<FieldName, SettingName, Directive> means;
    ValueKind value{};
    bool heading = false; // may stand in the heading block
    HoldsSet kinds;       // the sections in whose entries it may stand
    bool repeats = false; // may stand more than once

    bool is_setting() const { return std::holds_alternative<SettingName>(means); }
};

std::span<const Word> vocabulary();
const Word* find_word(std::string_view label); // as folded by the syntax tree; null if not known

// A group's label is the writer's own: any label stands for it.
bool has_groups(Holds kind);
bool has_bullets(Holds kind);
// A label that names what an entry is, such as `role` or `project`.
bool names_entry(FieldName name);

std::vector<std::string_view> heading_labels();      // contact fields and settings
std::vector<std::string_view> labels_of(Holds kind); // in the order of the table
std::string kinds_with(const Word& word);            // "experience or activities"

std::string_view label_of(FieldName name); // "group" for groups
std::string_view name_of(Holds kind);
std::string_view name_of(Stage stage);
std::string_view name_of(Paper paper);
std::string_view name_of(DateForm form); // the form itself: `Jun 2026`

std::optional<Holds> holds_named(std::string_view name);
std::optional<Stage> stage_named(std::string_view name);
std::optional<Paper> paper_named(std::string_view name);
std::optional<DateForm> date_form_named(std::string_view name);

std::vector<std::string_view> holds_names();
std::vector<std::string_view> stage_names();
std::vector<std::string_view> paper_names();
std::vector<std::string_view> date_form_names();

// "an education section", "a skills section"
std::string section_of(Holds kind);

}
