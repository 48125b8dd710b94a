// The table of labels, the tables of words that are values, and what is asked of them.
#include "compiler/trade/vocabulary.hpp"

#include "compiler/base/ascii.hpp"

#include <algorithm>
#include <array>

namespace quoin::trade {
namespace {

using enum Holds;

constexpr HoldsSet with_bullets{education, experience, projects, activities, honors, other};
constexpr HoldsSet with_dates{education, experience,  projects,     activities,
                              honors,    credentials, publications, other};
constexpr HoldsSet with_place{education, experience, projects, activities, other};

using F = FieldName;
using S = SettingName;
using D = Directive;
using V = ValueKind;

// label, meaning, value, in the heading, in entries of, repeats
constexpr std::array word_rows{
    Word{"name", F::name, V::text, true, {}, false},
    Word{"pronouns", F::pronouns, V::text, true, {}, false},
    Word{"headline", F::headline, V::text, true, {}, false},
    Word{"address", F::address, V::text, true, {}, false},
    Word{"phone", F::phone, V::phone, true, {}, false},
    Word{"email", F::email, V::email, true, {}, false},
    Word{"link", F::link, V::link, true, {projects, publications}, true},

    Word{"stage", S::stage, V::setting, true, {}, false},
    Word{"pages", S::pages, V::setting, true, {}, false},
    Word{"theme", S::theme, V::setting, true, {}, false},
    Word{"paper", S::paper, V::setting, true, {}, false},
    Word{"size", S::size, V::setting, true, {}, false},
    Word{"margins", S::margins, V::setting, true, {}, false},
    Word{"dates-as", S::dates_as, V::setting, true, {}, false},
    Word{"language", S::language, V::setting, true, {}, false},
    Word{"updated", S::updated, V::setting, true, {}, false},
    Word{"words", S::words, V::setting, true, {}, true},
    Word{"accept", S::accept, V::setting, true, {}, true},
    Word{"hyphenate", S::hyphenate, V::setting, true, {}, false},
    Word{"foreign", S::foreign, V::setting, true, {}, true},
    Word{"abbreviations", S::abbreviations, V::setting, true, {}, true},
    Word{"include", D::include, V::setting, true, {}, true},

    Word{"section", D::section, V::text, false, {}, true},
    Word{"holds", D::holds, V::setting, false, {}, false},
    Word{"column", D::column, V::setting, false, {}, false},
    Word{"for", D::for_tags, V::tags, false, {}, false},

    Word{"school", F::school, V::text, false, {education}, false},
    Word{"role", F::role, V::text, false, {experience, activities}, false},
    Word{"employer", F::employer, V::text, false, {experience}, false},
    Word{"project", F::project, V::text, false, {projects}, false},
    Word{"course", F::course, V::text, false, {projects}, false},
    Word{"with", F::with, V::text, false, {projects}, false},
    Word{"activity", F::activity, V::text, false, {activities}, false},
    Word{"award", F::award, V::text, false, {Holds::honors}, false},
    Word{"by", F::by, V::text, false, {Holds::honors}, false},
    Word{"credential", F::credential, V::text, false, {credentials}, false},
    Word{"issuer", F::issuer, V::text, false, {credentials}, false},
    Word{"publication", F::publication, V::text, false, {publications}, false},
    Word{"text", F::text, V::text, false, {prose}, true},
    Word{"title", F::title, V::text, false, {other}, false},
    Word{"detail", F::detail, V::text, false, {other}, false},
    Word{"place", F::place, V::text, false, with_place, false},
    Word{"degree", F::degree, V::text, false, {education}, false},
    Word{"major", F::major, V::text, false, {education}, false},
    Word{"minor", F::minor, V::text, false, {education}, false},
    Word{"graduation", F::graduation, V::dates, false, {education}, false},
    Word{"dates", F::dates, V::dates, false, with_dates, false},
    Word{"expires", F::expires, V::dates, false, {credentials}, false},
    Word{"gpa", F::gpa, V::text, false, {education}, false},
    Word{"honors", F::honors, V::items, false, {education}, false},
    Word{"courses", F::courses, V::items, false, {education}, false},
    Word{"activities", F::activities, V::items, false, {education}, false},
    Word{"thesis", F::thesis, V::text, false, {education}, false},
    Word{"note", F::note, V::text, false, {experience}, false},
};

template<typename T>
struct Named {
    std::string_view name;
    T value;
};

constexpr std::array kind_rows{
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

constexpr std::array stage_rows{
    Named<Stage>{"undergraduate", Stage::undergraduate},
    Named<Stage>{"recent graduate", Stage::recent_graduate},
    Named<Stage>{"graduate applicant", Stage::graduate_applicant},
    Named<Stage>{"experienced", Stage::experienced},
};

constexpr std::array paper_rows{
    Named<Paper>{"letter", Paper::letter},
    Named<Paper>{"a4", Paper::a4},
};

constexpr std::array date_form_rows{
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

template<typename Table>
auto named(const Table& table, std::string_view name) {
    const std::string wanted = folded(name);
    const auto found =
        std::ranges::find_if(table, [&](const auto& row) { return folded(row.name) == wanted; });
    using Value = decltype(found->value);
    return found == table.end() ? std::optional<Value>{} : std::optional<Value>{found->value};
}

template<typename Table, typename T>
std::string_view name_in(const Table& table, T value) {
    return std::ranges::find(table, value, [](const auto& row) { return row.value; })->name;
}

template<typename Table>
std::vector<std::string_view> names_in(const Table& table) {
    std::vector<std::string_view> names;
    for (const auto& row : table)
        names.push_back(row.name);
    return names;
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
    return kind == skills || kind == languages;
}

bool has_bullets(Holds kind) {
    return with_bullets.has(kind);
}

bool names_entry(FieldName name) {
    switch (name) {
    case F::school:
    case F::degree:
    case F::role:
    case F::employer:
    case F::project:
    case F::activity:
    case F::award:
    case F::credential:
    case F::publication:
        return true;
    default:
        return false;
    }
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
    for (const auto& kind : kind_rows)
        if (word.kinds.has(kind.value)) names.push_back(kind.name);
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (i > 0) text += i + 1 == names.size() ? " or " : ", ";
        text += names[i];
    }
    return text;
}

std::string_view label_of(FieldName name) {
    if (name == F::group) return "group";
    const auto* found = std::ranges::find_if(word_rows, [&](const Word& word) {
        const auto* field = std::get_if<FieldName>(&word.means);
        return field && *field == name;
    });
    return found->label;
}

std::string_view name_of(Holds kind) {
    return name_in(kind_rows, kind);
}
std::string_view name_of(Stage stage) {
    return name_in(stage_rows, stage);
}
std::string_view name_of(Paper paper) {
    return name_in(paper_rows, paper);
}
std::string_view name_of(DateForm form) {
    return name_in(date_form_rows, form);
}

std::optional<Holds> holds_named(std::string_view name) {
    return named(kind_rows, name);
}
std::optional<Stage> stage_named(std::string_view name) {
    return named(stage_rows, name);
}
std::optional<Paper> paper_named(std::string_view name) {
    return named(paper_rows, name);
}
std::optional<DateForm> date_form_named(std::string_view name) {
    return named(date_form_rows, name);
}

std::vector<std::string_view> holds_names() {
    return names_in(kind_rows);
}
std::vector<std::string_view> stage_names() {
    return names_in(stage_rows);
}
std::vector<std::string_view> paper_names() {
    return names_in(paper_rows);
}
std::vector<std::string_view> date_form_names() {
    return names_in(date_form_rows);
}

std::string section_of(Holds kind) {
    const std::string_view name = name_of(kind);
    // Of the kinds, only `honors` begins with an h, a silent one.
    const bool vowel = std::string_view{"aeiouh"}.find(name.front()) != std::string_view::npos;
    std::string text = vowel ? "an '" : "a '";
    return text.append(name).append("' section");
}

}
