// Entries of an old page to fields of the markup, by the kind of section they stand in.
#pragma once

#include "compiler/transcription/draft.hpp"
#include "compiler/transcription/entry_rows.hpp"
#include "compiler/transcription/title_and_org.hpp"

namespace quoin::transcription {

struct PageFacts { // what is known of the whole page
    const KnownTowns& towns;
    const portal::PageLanguages& languages;
    HeadHabits habits;
};

DraftEntry entry_of(const RowsOfEntry& rows, trade::Holds holds, const PageFacts& facts);
DraftEntry education_entry(const RowsOfEntry& rows, const PageFacts& facts);

// Nothing but facts that stand below a school: an average, honors, courses, a thesis.
bool states_facts(const std::string& text);
bool opens_with_fact(const std::string& text);

// What any kind of entry has: its bullets, and its words whole.
DraftEntry begin_entry(const RowsOfEntry& rows);

// Dates to the label that they belong under; those left over stay in `left`.
void add_dates(const HeadPieces& pieces, std::string_view label, DraftEntry& entry);

// A publication as lists of references have it: who, when, its title, where it came out. Only where
// the line is of that build.
bool add_citation(DraftEntry& entry);
std::string venue_of(std::string_view text);

// Of a form: a caption before each value.
std::vector<DraftEntry> entries_by_captions(const std::vector<OldRow>& rows, trade::Holds holds,
                                            const PageFacts& facts);
// None where values have no captions before them.
std::vector<DraftEntry> captioned_entries(const std::vector<OldRow>& rows, trade::Holds holds,
                                          const PageFacts& facts);

// Skills and languages: groups with a label, or items by themselves.
std::vector<DraftEntry> skill_entries(const std::vector<OldRow>& rows, const std::string& title);

}
