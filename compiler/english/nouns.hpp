// What kind of thing a noun names, by WordNet and by its ending.
#pragma once

#include <string_view>

namespace quoin::english {

// All take small letters.
bool is_person_noun(std::string_view word);     // guitarist, assistant, student: one person
bool is_agent_noun(std::string_view word);      // the same, but nobody who is served or taught
bool is_plural_noun(std::string_view word);     // clerks, people
bool is_deed_noun(std::string_view word);       // collection, testing, design: what is done
bool is_plural_modifier(std::string_view word); // sports, records: stand before other nouns
bool is_stuff_noun(std::string_view word);      // food, equipment, paperwork: what is handled
bool is_time_noun(std::string_view word);       // hours, weeks, times

// Documents, groups, places and amounts that are mostly named by what they are for: call sheets,
// paint crew, answer rate.
bool is_named_by_purpose(std::string_view word);
// Verbs that stand as nouns before others all the same: Exhibit binders, Call volume, Pay stubs.
bool is_often_first_part(std::string_view word);

bool is_never_gerund(std::string_view word); // evening, wedding, outstanding: nouns, adjectives

// A noun of two words whose first may be a verb: peer review, book sales, dining room.
bool is_noun_compound(std::string_view first, std::string_view second);

}
