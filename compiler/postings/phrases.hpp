// Candidate terms: the noun groups of a sentence, and what a verb does to a thing too plain to name
// by itself (`transfer residents`).
#pragma once

#include "compiler/english/sentence.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace quoin::postings {

struct Phrase {
    std::string words;              // as typed
    std::vector<std::string> lower; // word by word
    english::Extent extent;         // in the sentence
    bool capitals = false;          // begins with a capital that no sentence's start gave it
    bool deed = false;              // begins with a verb
    bool after_field = false;       // stands after `degree in` and the like
};

// Where duties are told a sentence may open with a verb that is a noun too (Fall asleep); where
// things are asked for, it is the noun (Fall prevention).
enum class Opens { with_deed, with_thing };
std::vector<Phrase> phrases_in(std::string_view sentence, Opens opens = Opens::with_deed);

// The score of each phrase by Rose, Engel, Cramer and Cowley, "Automatic keyword extraction from
// individual documents" (Text Mining: Applications and Theory, 2010, chapter 1): the sum over its
// words of degree by frequency.
std::vector<double> rake_scores(const std::vector<std::vector<std::string>>& phrases);

}
