// Ways through the model that checks share: positions, texts, words, and words for messages.
#pragma once

#include "compiler/advice/check.hpp"
#include "compiler/advice/messages.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <cstddef>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace quoin::advice {

std::vector<Position> positions(const model::Resume& resume,
                                std::initializer_list<trade::Holds> kinds);

const model::Text* text_in(const model::Field* field); // null if it is no text
const std::vector<model::Text>* items_in(const model::Field* field);
const model::DateRange* dates_in(const model::Field* field);
std::string plain_in(const model::Field* field); // empty if it is no text

// What an entry is called: its role, project, activity, degree, …; the field, or null.
const model::Field* naming_field(const model::Entry& entry);
std::string called(const model::Entry& entry); // "'Field Survey Intern'", or "this entry"
Place place_of(const model::Entry& entry);     // of what it is called by

std::optional<int> number_named(std::string_view word); // `zero` to `ninety-nine`, in small letters

std::string in_words(std::size_t count); // "no", "one", "14"
// "one bullet", "three bullets", "14 bullets"
std::string counted(std::size_t count, std::string_view one, std::string_view several);
// "'a', 'b' and 2 more"
std::string some_of(const std::vector<std::string>& words, std::size_t most);
// "9 and 12", "9, 12 and 30", "1, 2, 3, 4, 5, 6 and 74 more"
std::string lines_listed(const std::vector<Place>& places);

// A school before college, by its name or by what it awards.
bool is_before_college(const model::Entry& entry);
bool is_student(trade::Stage stage); // still at college, or just out of it

// The pieces of source lines that a text was read from, in order.
std::vector<Place> source_lines(const model::Text& text);
std::string_view source_at(const Sources& sources, const Place& place);

// Reports what a row of `messages` says, with what was found in its places. What else belongs to
// the finding is set on what is returned, before the next.
template<const auto& row, typename... Found>
Finding& report(std::vector<Finding>& findings, Place place, Found&&... found) {
    static_assert(places_in(row.mend) == 0, "a mend with places is a message of its own");
    return findings.emplace_back(
        Finding{{}, place, fill<row>(std::forward<Found>(found)...), std::string(row.mend), {}});
}

// Of what was judged by a number: says whose it is, if an office has set it.
Finding& judged_by(const ProofContext& context, office::LimitOf limit, Finding& finding);
// Adds to whose rule a finding stands by.
void add_office(Finding& finding, std::string said);

}
