// The forms that a caseload is written in.
#pragma once

#include "compiler/caseload/caseload.hpp"
#include "compiler/caseload/cohort.hpp"

#include <string>
#include <vector>

namespace quoin::caseload {

enum class View { students, cohort, terms };

struct Report {
    Caseload caseload{};                 // those that are asked for
    std::vector<CommonFinding> common{}; // of these
    std::size_t of = 0;                  // all there are
    bool anonymous = false;
    std::vector<std::string> cautions{};
};

std::string as_text(const Report& report, View view);
std::string as_csv(const Report& report, View view); // RFC 4180
std::string as_json(const Report& report);           // all views
// One file that needs no other: to be read without its script, sorted and filtered with it; light
// and dark; on paper a sheet for each student, to be handed over, where they have names.
std::string as_html(const Report& report);

// What a check looks at, a sentence.
std::string looked_at(std::string_view check);

}
