// `quoin caseload`: who of all her students an adviser should see first.
#pragma once

#include "compiler/advice/offices.hpp"
#include "compiler/commands/command_line.hpp"

#include <string>
#include <vector>

namespace quoin::commands {

struct CaseloadRequest {
    std::vector<std::string> places; // folders and files; `-` is a list of them, one a line
    std::string format = "text";     // or `csv`, `json`
    std::string report;              // a page of HTML; `-`: standard output, alone
    std::string stage, needs, check, since, until, first; // as they were given
    bool due = false;
    bool cohort = false, terms = false; // the view
    bool anonymous = false;
    bool no_cache = false;
    advice::OfficeChoice office;
};

// Whatever résumés say, ExitCode::done; ExitCode::errors if there are none, or if one of the places
// cannot be read.
ExitCode run_caseload(const CaseloadRequest& request);

}
