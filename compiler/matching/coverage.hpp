// Where a résumé shows what a posting asks for.
//
// A term is shown where its words stand close together, in any order: within as many words as it
// has and two more, as stems. Of both forms of an acronym either will do; the résumé's own long
// forms count. What a search for the posting's spelling would miss (another spelling, a slip, a
// near form, another name) is told as such and counts for less.
#pragma once

#include "compiler/matching/texts.hpp"
#include "compiler/postings/posting.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::matching {

enum class Nearness {
    exact,       // the very words
    form,        // other forms of them, or in another order: grafted for grafting
    acronym,     // the other form of an acronym
    implied,     // a high school diploma by a degree
    spelling,    // color for colour, data base for database, a slip
    near,        // another word of its family: analyzed for analysis, statistical for statistics
    other_words, // what else it is called: a till for a cash drawer
    of_kind,     // one of its kind: Excel for spreadsheets, a barista for food service
};
std::string_view name_of(Nearness nearness);

// What a search for the posting's words finds, or would not look for.
constexpr bool is_found(Nearness nearness) {
    return nearness <= Nearness::implied;
}

// The thing itself, by whatever name.
constexpr bool is_shown_so(Nearness nearness) {
    return is_found(nearness) || nearness >= Nearness::other_words;
}

struct Showing {
    Spot spot;
    Where where{};
    Nearness how{};
    Place place;       // of the words
    std::string words; // as the résumé has them
};

// spared: another that will do as well is shown.
enum class Verdict { shown, list_only, not_found, missing, spared };
std::string_view name_of(Verdict verdict);

struct TermCoverage {
    const postings::Term* term = nullptr; // of the posting that was given
    std::vector<Showing> showings;        // the nearest first, then in the order of the source
    Verdict verdict{};
    std::vector<const postings::Term*> others; // of a choice that is missing, told with its first
    bool told_with_first = false;              // such a one
};

// Of the weight asked for, how much is shown: of each term its weight times its credit, over the
// weights. `credit` is 1 where work shows it, less where only a list or other words do. What is a
// choice counts once: of its sides the best shown, of any that will do the best shown. A soft skill
// counts only where it is shown.
struct Share {
    double weight = 0, shown = 0;
    int terms = 0, missing = 0; // a choice is one

    double of_one() const { return weight > 0 ? shown / weight : 1; }
};

struct Coverage {
    std::vector<TermCoverage> terms; // in the posting's order
    Share required, preferred, rest;
};

constexpr double credit(Verdict verdict) {
    switch (verdict) {
    case Verdict::shown:
        return 1;
    case Verdict::list_only:
        return 0.6;
    case Verdict::not_found:
        return 0.5;
    case Verdict::missing:
    case Verdict::spared:
        break;
    }
    return 0;
}

// What the posting only says beside is left out of it.
constexpr std::size_t most_terms = 80;

// The posting must outlive what is returned. `words` is where a slip is told from a word.
Coverage cover(const model::Resume& resume, const postings::Posting& posting,
               const english::WordList& words);

}
