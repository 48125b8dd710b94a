// Short forms with their long ones, as Schwartz and Hearst find them: "A simple algorithm for
// identifying abbreviation definitions in biomedical text", Pacific Symposium on Biocomputing 2003.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace quoin::postings {

struct Acronym {
    std::string short_form, long_form; // as typed

    bool operator==(const Acronym&) const = default;
};

// `long form (SF)` and `SF (long form)` in a sentence.
std::vector<Acronym> acronyms_in(std::string_view sentence);

// The shortest long form of `candidate` for a short form, from its end; empty if there is none.
std::string_view best_long_form(std::string_view short_form, std::string_view candidate);

}
