// What is seen of a phrase, as a set.
#pragma once

#include <bitset>
#include <cstddef>

namespace quoin::postings {

constexpr std::size_t signs_in_all = 46;
using Signs = std::bitset<signs_in_all>;

// Each with its row in evidence.cpp, in the same order.
namespace Sign {
enum : std::size_t {
    always,
    required,
    preferred,
    elsewhere,
    soft_skill,
    language,
    credential,
    degree,
    field,
    item,
    opens,
    before_more, // of its like, after a comma or an `and`
    after_lead_in,
    after_preposition,
    after_the,
    after_a,
    one_word,
    many_words,
    with_signs,
    name, // capitals where none are due
    deed_ending,
    deed_noun,
    person,
    frequent,
    one_frequent,
    one_ordinary,
    one_unlisted,
    of_somebody,
    again, // in another sentence too
    compound,
    begins_with_verb,
    verb_alone,
    says_we,
    tells,
    long_sentence,
    doubtful,
    unheaded,       // in a posting without parts
    outside,        // of the parts of one that has some
    touched,        // its sentence has a word of what is left out
    addressed,      // or an address or a sum
    name_left_out,  // a capital word of it is in what is left out
    in_an_address,  // or in the employer's address
    stranger,       // left out, and in no dictionary
    strange_name,   // in no dictionary, with a capital within a sentence
    unsure,         // its part may be one that is left out
    hangs_together, // by RAKE, half as well as the best
};
}

}
