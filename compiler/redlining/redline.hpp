// A redline: what changed between two drafts, in the terms of a résumé.
#pragma once

#include "compiler/redlining/alignment.hpp"
#include "compiler/redlining/word_changes.hpp"
#include "compiler/stages/model/resume.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace quoin::redlining {

enum class Kind { added, removed, moved, changed };
enum class What { setting, contact, section, entry, field, item, bullet };
enum class Nature { // of what was changed
    wording,
    figures, // and nothing else of its words
    dates,
    marks, // bold, italics, underlines
    link,  // where it leads
    order, // of a list's items
    level, // of a bullet
    tags,  // the builds it is kept for
    label, // a group's or a section's name
    value  // of a setting
};

std::string_view name_of(Kind kind);
std::string_view name_of(What what);
std::string_view name_of(Nature nature);

struct Piece { // of a wording
    Fate fate{};
    std::string text;
};

struct Change {
    Kind kind{};
    What what{};
    Nature nature{};            // of Kind::changed
    std::string section, entry; // that it stands in, by name; of what was removed, stood in
    std::string label;          // of a field, a setting
    // The whole wording, empty where there is none; of what was moved, where it stood, and itself
    // or, of an entry, where it stands.
    std::string before, after;
    std::vector<Piece> pieces;  // of Nature::wording and figures: both, word by word
    Place old_place, new_place; // line 0 where there is none
};

// In the order of the new draft; what was removed after what it stood among.
std::vector<Change> redline(const Alignment& alignment);

// "Field Survey Intern, Salish Tidal Trust"
std::string name_of_entry(const FlatEntry& entry);

// Wordings that read the same, whatever their marks, links and kinds of white.
bool same_words(std::string_view a, std::string_view b);

}
