// What a line of a résumé tells of the person, by its words alone: numbers of identity, personal
// details, salaries, references, numbers of licences.
#pragma once

#include "compiler/english/reading.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::advice {

// A piece of a line between commas, semicolons and the ends of sentences.
struct Clause {
    english::Extent extent;
    std::string_view text; // without blanks around it
    std::string_view rest; // from there to the end of the line
    bool first = false;    // of its sentence
};
std::vector<Clause> clauses_in(std::string_view text);

// Where the line is from decides how far it can be believed to tell of its writer.
enum class WhereFrom {
    heading, // what the page says of the person in a line
    text,    // a summary
    group,   // "Label: items" of skills
    field,   // of an entry: a note, a detail
    pair,    // "title: detail" of an entry
    bullet,  // of work
};

// All lines are lower case.
std::optional<english::Extent> identity_number_in(std::string_view lower);
std::optional<std::string_view> personal_detail_in(std::string_view lower,
                                                   WhereFrom from); // "your age"
std::optional<english::Extent> salary_in(std::string_view lower, WhereFrom from);
std::optional<english::Extent> references_in(std::string_view lower, WhereFrom from);
// "Available upon request" under the title of References.
bool says_on_request(std::string_view lower);
std::optional<english::Extent> licence_number_in(std::string_view lower, WhereFrom from);

}
