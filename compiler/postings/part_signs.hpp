// What is seen of a stretch of a posting that may tell which part it is: what its heading says, and
// the forms of its sentences. Each sign is a number: 1 where a heading or one sentence has it; of
// several sentences, how many by the root of how many there are.
#pragma once

#include "compiler/postings/stretches.hpp"

#include <array>
#include <cstddef>
#include <span>

namespace quoin::postings {

// Each with its row in part_odds.cpp, in the same order.
namespace PartSign {
enum : std::size_t {
    always,
    headed,
    // what the heading says
    whole_out, // nothing but this
    whole_required,
    whole_preferred,
    whole_duties,
    says_first_asked,
    says_out,
    says_preferred,
    says_surely_required,
    says_duties,
    says_required,
    says_you,
    says_we,
    asks, // a question
    // how its sentences open
    with_base, // Prepare samples
    with_third,
    with_gerund,
    with_applying, // Send
    with_you_will,
    with_you,
    with_if,
    with_we,
    with_the,
    with_a_thing,
    // what they say
    lead_in,
    qualification,
    preference,
    need,
    sure_need,
    duty,
    pay,
    some_pay,
    equality,
    some_equality,
    applying,
    some_applying,
    employer,
    some_employer,
    nothing_asked,
    given,
    spoken_language,
    credential,
    of_you,
    of_us,
    sum_or_address,
    supposing, // would, could, if
    denying,
    past,
    person_does, // the aide prepares
    you_do,      // most mornings you splice
    exclaiming,
    long_one,
    short_one,
    item,
    years,
    modal,
    // where it stands
    early,
    late,
    in_all
};
}
using PartSigns = std::array<double, PartSign::in_all>;

PartSigns part_signs(const Stretch& stretch, std::span<const Line> lines);

}
