// What is asked of the table of labels, and the tables of words that are values.
#include "compiler/trade/vocabulary.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"

#include <algorithm>
#include <array>

namespace quoin::trade {
namespace {

using enum Holds;

template<typename T>
struct Named {
    std::string_view name;
    T value;
};

template<typename Value>
constexpr int rows_of = 0; // a table for each of the four
template<>
constexpr std::array rows_of<Holds>{
    Named<Holds>{"education", education},
    Named<Holds>{"experience", experience},
    Named<Holds>{"projects", projects},
    Named<Holds>{"activities", activities},
    Named<Holds>{"skills", skills},
    Named<Holds>{"honors", Holds::honors},
    Named<Holds>{"credentials", credentials},
    Named<Holds>{"languages", languages},
    Named<Holds>{"publications", publications},
    Named<Holds>{"prose", prose},
    Named<Holds>{"other", other},
};
template<>
constexpr std::array rows_of<Stage>{
    Named<Stage>{"undergraduate", Stage::undergraduate},
    Named<Stage>{"recent graduate", Stage::recent_graduate},
    Named<Stage>{"graduate applicant", Stage::graduate_applicant},
    Named<Stage>{"experienced", Stage::experienced},
    Named<Stage>{"academic", Stage::academic},
};
template<>
constexpr std::array rows_of<Paper>{
    Named<Paper>{"letter", Paper::letter},
    Named<Paper>{"a4", Paper::a4},
};
template<>
constexpr std::array rows_of<DateForm>{
    Named<DateForm>{"Jun 2026", DateForm::short_month},
    Named<DateForm>{"June 2026", DateForm::long_month},
    Named<DateForm>{"06/2026", DateForm::month_slash_year},
    Named<DateForm>{"2026-06", DateForm::year_month},
};

// ASCII lower case, a hyphen as a space, spaces not doubled.
std::string folded(std::string_view text) {
    std::string result;
    for (const char c : text) {
        const char next = c == '-' || c == '\t' ? ' ' : small_letter(c);
        if (next != ' ' || (!result.empty() && result.back() != ' ')) result += next;
    }
    while (!result.empty() && result.back() == ' ')
        result.pop_back();
    return result;
}

// The row of each field, found once.
const Word& word_of(FieldName name) {
    static constexpr auto rows = [] {
        std::array<const Word*, static_cast<std::size_t>(FieldName::group) + 1> found{};
        for (const Word& word : word_rows)
            if (const auto* field = std::get_if<FieldName>(&word.means))
                found.at(static_cast<std::size_t>(*field)) = &word;
        found.back() = &group_row;
        return found;
    }();
    return *rows.at(static_cast<std::size_t>(name));
}

}

std::span<const Word> vocabulary() {
    return word_rows;
}

const Word* find_word(std::string_view label) {
    const auto* found = std::ranges::find(word_rows, label, &Word::label);
    return found == word_rows.end() ? nullptr : found;
}

bool has_groups(Holds kind) {
    return group_row.kinds.has(kind);
}

bool has_bullets(Holds kind) {
    return with_bullets.has(kind);
}

bool has(FieldName name, Trait trait) {
    return word_of(name).traits.has(trait);
}

bool names_entry(const Word& word) { // a `title` is of a kind of its own
    return !word.kinds.has(other) &&
           (word.traits.has(Trait::calls) || word.traits.has(Trait::else_calls));
}

std::vector<std::string_view> heading_labels() {
    std::vector<std::string_view> labels;
    for (const Word& word : word_rows)
        if (word.heading) labels.push_back(word.label);
    return labels;
}

std::vector<std::string_view> labels_of(Holds kind) {
    std::vector<std::string_view> labels;
    for (const Word& word : word_rows)
        if (word.kinds.has(kind)) labels.push_back(word.label);
    return labels;
}

std::string kinds_with(const Word& word) {
    std::vector<std::string_view> names;
    for (const auto& kind : rows_of<Holds>)
        if (word.kinds.has(kind.value)) names.push_back(kind.name);
    return joined(names, " or ");
}

std::string_view label_of(FieldName name) {
    return word_of(name).label;
}

template<typename Value>
std::string_view name_of(Value value) {
    return std::ranges::find(rows_of<Value>, value, &Named<Value>::value)->name;
}

template<typename Value>
std::optional<Value> named(std::string_view name) {
    const std::string wanted = folded(name);
    for (const Named<Value>& row : rows_of<Value>)
        if (row.name.size() == wanted.size() && folded(row.name) == wanted) return row.value;
    return std::nullopt;
}

template<typename Value>
std::vector<std::string_view> names_of() {
    std::vector<std::string_view> names;
    for (const Named<Value>& row : rows_of<Value>)
        names.push_back(row.name);
    return names;
}

template std::string_view name_of(Holds);
template std::string_view name_of(Stage);
template std::string_view name_of(Paper);
template std::string_view name_of(DateForm);
template std::optional<Holds> named(std::string_view);
template std::optional<Stage> named(std::string_view);
template std::optional<Paper> named(std::string_view);
template std::optional<DateForm> named(std::string_view);
template std::vector<std::string_view> names_of<Holds>();
template std::vector<std::string_view> names_of<Stage>();
template std::vector<std::string_view> names_of<Paper>();
template std::vector<std::string_view> names_of<DateForm>();

std::string section_of(Holds kind) {
    const std::string_view name = name_of(kind);
    // Of the kinds, only `honors` begins with an h, a silent one.
    const bool vowel = std::string_view{"aeiouh"}.find(name.front()) != std::string_view::npos;
    std::string text = vowel ? "an '" : "a '";
    return text.append(name).append("' section");
}

}
