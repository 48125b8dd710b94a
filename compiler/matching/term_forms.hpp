// The ways to say a term, whatever the résumé: by its kind of degree, in other words of its family,
// by other names, without what goes without saying.
#pragma once

#include "compiler/matching/coverage.hpp"

#include <string>
#include <vector>

namespace quoin::matching {

struct TermForm {
    std::vector<std::string> lower, stems;
    Nearness best{};    // how near it can be
    bool named = false; // as a name: with capitals
    bool job = false;   // where roles and employers are named
};

std::vector<std::string> stems_of(const std::vector<std::string>& lower);

TermForm form_of(std::vector<std::string> lower, Nearness best);

// Beside its own words, of which `typed` has the capitals.
std::vector<TermForm> other_forms_of(const std::vector<std::string>& lower, std::string_view typed);

}
