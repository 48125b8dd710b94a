// What a posting asks for: its terms, weighed, and what of it was left out.
//
// A term's weight is how likely it is something that an adviser would underline, by the evidence of
// evidence.hpp, times how much it counts where it stands (asked for, among the duties, preferred,
// elsewhere).
#pragma once

#include "compiler/base/place.hpp"
#include "compiler/english/word_list.hpp"
#include "compiler/postings/choices.hpp"
#include "compiler/postings/conditions.hpp"
#include "compiler/postings/parts.hpp"
#include "compiler/postings/signs.hpp"

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::postings {

enum class Kind { hard_skill, soft_skill, credential, language, field };
std::string_view name_of(Kind kind); // `hard skill`

struct Term {
    std::string words;              // as the posting has it first
    std::string other_form;         // the long form of an acronym, or the short one; empty: none
    std::vector<std::string> stems; // of its words, by Snowball
    Kind kind{};
    Standing standing{}; // the strongest of where it stands
    double weight = 0;
    int times = 0;
    std::string sentence; // that it comes from, or of a very long one what stands around it
    Place place;          // of that sentence's line
    bool likely = true;   // to be what is asked for, rather than not
    bool listed = true;   // likely enough to be looked for; else it is only said
    Signs signs;          // what its weight is made of
    Choice choice;        // of the sentence where it stands strongest
};

struct Posting {
    std::vector<Term> terms; // the heaviest first
    std::vector<Statement> left_out;
    std::vector<Condition> conditions; // which no term weighs
    bool english = true;               // by its words of grammar
    std::size_t words = 0;
};

// `file` is what places are of.
Posting read_posting(std::span<const Line> lines, std::uint32_t file,
                     const english::WordList& words);

// What else the employer or its trade says (about us, an association's page): new terms stand
// elsewhere and weigh less, known ones are said more often.
void add_context(Posting& posting, const Posting& context);

// Of a word in any letters, as terms have them: the stem of its small letters without a possessive.
// Words that Snowball would merge though they mean different things keep their own.
std::string stem_of(std::string_view word);

}
