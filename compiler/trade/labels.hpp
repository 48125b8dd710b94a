// The words of the markup: one table of every label with what it means, where it may stand, how its
// value is read, whether it may repeat, and what kind of words its value is. A label is added here,
// in FieldName and in its row, and nowhere else in C++.
#pragma once

#include "compiler/trade/kinds.hpp"

#include <array>
#include <cstdint>
#include <initializer_list>
#include <string_view>
#include <variant>

namespace quoin::trade {

enum class FieldName {
    // heading
    name,
    pronouns,
    headline,
    address,
    phone,
    email,
    link,
    // entries
    school,
    place,
    degree,
    major,
    minor,
    graduation,
    dates,
    gpa,
    honors,
    courses,
    activities,
    thesis,
    role,
    employer,
    note,
    project,
    course,
    with,
    activity,
    award,
    by,
    credential,
    issuer,
    expires,
    author,
    publication,
    venue,
    text,
    title,
    detail,
    group // a group of skills or languages: its label is the writer's own
};

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

// What a label's value is, for whoever reads it.
enum class Trait {
    names,     // of people, places, firms and titles, or figures: its words are in no dictionary
    locates,   // a town with its state
    writes,    // sentences of the writer's own
    may_pad,   // where phrases that tell nothing are looked for, as in bullets
    tells,     // may tell of the writer's person
    shortens,  // running text, which may be cut to make room
    calls,     // an entry is called by it
    else_calls // an entry that nothing else calls is
};

template<typename Enum>
class SetOf { // of enumerators
public:
    constexpr SetOf() = default;
    constexpr SetOf(std::initializer_list<Enum> members) {
        for (const Enum member : members)
            bits_ |= bit(member);
    }
    constexpr bool has(Enum member) const { return (bits_ & bit(member)) != 0; }
    constexpr bool empty() const { return bits_ == 0; }

private:
    static constexpr std::uint32_t bit(Enum member) {
        return std::uint32_t{1} << static_cast<unsigned>(member);
    }
    std::uint32_t bits_ = 0;
};
using HoldsSet = SetOf<Holds>;

struct Word { // a row of the table
    std::string_view label;
    std::variant<FieldName, SettingName, Directive> means;
    ValueKind value{};
    bool heading = false; // may stand in the heading block
    HoldsSet kinds;       // the sections in whose entries it may stand
    bool repeats = false; // may stand more than once
    SetOf<Trait> traits = {};

    bool is_setting() const { return std::holds_alternative<SettingName>(means); }
};

inline constexpr HoldsSet with_bullets{Holds::education,  Holds::experience, Holds::projects,
                                       Holds::activities, Holds::honors,     Holds::other};

// label, meaning, value, in the heading, in entries of, repeats, traits
inline constexpr auto word_rows = [] {
    using enum Holds;
    using enum Trait;
    using F = FieldName;
    using S = SettingName;
    using D = Directive;
    using V = ValueKind;
    constexpr HoldsSet with_dates{education,     experience,  projects,     activities,
                                  Holds::honors, credentials, publications, other};
    constexpr HoldsSet with_place{education, experience, projects, activities, other};
    return std::array{
        Word{"name", F::name, V::text, true, {}, false, {names}},
        Word{"pronouns", F::pronouns, V::text, true, {}, false, {names}},
        Word{"headline", F::headline, V::text, true, {}, false, {writes, may_pad, tells}},
        Word{"address", F::address, V::text, true, {}, false, {names, locates, tells}},
        Word{"phone", F::phone, V::phone, true, {}, false, {names}},
        Word{"email", F::email, V::email, true, {}, false, {names}},
        Word{"link", F::link, V::link, true, {projects, publications}, true, {names}},

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

        Word{"school", F::school, V::text, false, {education}, false, {names, else_calls}},
        Word{"role", F::role, V::text, false, {experience, activities}, false, {calls}},
        Word{"employer", F::employer, V::text, false, {experience}, false, {names, else_calls}},
        Word{"project", F::project, V::text, false, {projects}, false, {calls}},
        Word{"course", F::course, V::text, false, {projects}, false},
        Word{"with", F::with, V::text, false, {projects}, false, {names}},
        Word{"activity", F::activity, V::text, false, {activities}, false, {else_calls}},
        Word{"award", F::award, V::text, false, {Holds::honors}, false, {calls}},
        Word{"by", F::by, V::text, false, {Holds::honors}, false, {names}},
        Word{"credential", F::credential, V::text, false, {credentials}, false, {calls}},
        Word{"issuer", F::issuer, V::text, false, {credentials}, false, {names}},
        Word{"author", F::author, V::text, false, {publications}, false, {names}},
        Word{"publication", F::publication, V::text, false, {publications}, false, {names, calls}},
        Word{"venue", F::venue, V::text, false, {publications}, false, {names}},
        Word{"text", F::text, V::text, false, {prose}, true, {writes, may_pad, tells, shortens}},
        Word{"title", F::title, V::text, false, {other}, false, {tells, calls}},
        Word{"detail", F::detail, V::text, false, {other}, false, {writes, tells}},
        Word{"place", F::place, V::text, false, with_place, false, {names, locates}},
        Word{"degree", F::degree, V::text, false, {education}, false, {calls}},
        Word{"major", F::major, V::text, false, {education}, false},
        Word{"minor", F::minor, V::text, false, {education}, false},
        Word{"graduation", F::graduation, V::dates, false, {education}, false, {names}},
        Word{"dates", F::dates, V::dates, false, with_dates, false, {names}},
        Word{"expires", F::expires, V::dates, false, {credentials}, false, {names}},
        Word{"gpa", F::gpa, V::text, false, {education}, false, {names}},
        Word{"honors", F::honors, V::items, false, {education}, false},
        Word{"courses", F::courses, V::items, false, {education}, false},
        Word{"activities", F::activities, V::items, false, {education}, false},
        Word{"thesis", F::thesis, V::text, false, {education}, false},
        Word{"note", F::note, V::text, false, {experience}, false, {writes, tells, shortens}},
    };
}();

// A group's label is the writer's own.
inline constexpr Word group_row{"group",
                                FieldName::group,
                                ValueKind::group,
                                false,
                                {Holds::skills, Holds::languages},
                                true,
                                {Trait::may_pad, Trait::tells}};

}
