// What is said at each question: the rows of words/questions.txt, with the examples of the field,
// and what advice says of it.
#pragma once

#include "compiler/interview/plan.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace quoin::interview {

struct Question {
    std::string_view goes_in;                // opens with a small letter, without a full stop
    std::string example;                     // of the one invented scenario
    std::string_view told;                   // the name of a check, or a sentence
    std::vector<std::string_view> looked_at; // the names of checks

    std::string why() const; // what to leave out or to see to, and why
};

Question question_at(const PlannedSection& section, std::string_view label, std::string_view field);

// All that the checks of a question say, for who asks for help.
std::string help_on(const Question& question);

}
