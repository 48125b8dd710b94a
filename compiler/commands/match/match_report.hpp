// A résumé held against a posting, as text, for programs, and as a page.
#pragma once

#include "compiler/matching/coverage.hpp"
#include "compiler/matching/grouping.hpp"
#include "compiler/matching/rank.hpp"

#include <algorithm>
#include <span>
#include <string>
#include <vector>

namespace quoin::commands {

struct Match {
    std::string resume_name, posting_name;
    model::Resume resume;
    postings::Posting posting;
    matching::Coverage coverage;              // points into the posting
    std::vector<matching::RankedEntry> order; // likewise
    std::vector<matching::Grouping> groupings;
};

struct MatchStyle {
    bool bars = false; // of block elements
    bool explain = false;
};

std::string match_text(const Match& match, const MatchStyle& style);
std::string match_json(const Match& match);
// Self-contained: no script, no other file; light and dark, and for paper.
std::string match_html(const Match& match);

// What goes with every report.
inline constexpr std::string_view match_caution =
    "Name a term only where it is true of you. Words that are hidden or said over and over are "
    "found out.";

// Above soft skills that nothing shows.
inline constexpr std::string_view soft_skills_title =
    "Asked of you as a person, and not counted: let a bullet show it";

// The heaviest, for a reader; JSON has all, and a report says how many are left.
constexpr std::size_t most_told = 40;
inline std::span<const matching::TermCoverage> told_terms(const Match& match, std::size_t most) {
    return std::span(match.coverage.terms).first(std::min(most, match.coverage.terms.size()));
}

// "GED (General Educational Development)"; of a choice that is missing all of it: "diploma or GED".
std::string name_of_term(const matching::TermCoverage& covered);

// The posting's sentence, of a long one the words around the term.
std::string sentence_around(const postings::Term& term);

// "31 (bullet), 44 (list)"; lines of the source.
std::string lines_of_showings(const matching::TermCoverage& covered);

// "14, 12, 13": the lines of its bullets in the order that serves the posting.
std::string lines_in_order(const Match& match, const matching::RankedEntry& entry);

// What an entry is called: its role or whatever comes first.
std::string name_of_entry(const model::Resume& resume, const matching::Spot& spot);

// The entries of one part of a section, by name and line: "Aide (line 12), Cook (line 31)".
std::string entries_of_group(const Match& match, const matching::Grouping& grouping, bool relevant);

const model::Entry& entry_at(const model::Resume& resume, const matching::Spot& spot);

}
