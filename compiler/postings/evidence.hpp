// What speaks for and against a phrase being something that an adviser would underline, each sign
// with the logarithm of the odds that it adds. The figures were fitted to the labelled postings of
// tests/postings (logistic regression); their sum is told by --explain.
#pragma once

#include "compiler/english/word_list.hpp"
#include "compiler/postings/phrases.hpp"
#include "compiler/postings/posting.hpp"

#include <cstddef>
#include <span>
#include <string_view>

namespace quoin::postings {

struct SignRow {
    std::string_view name;
    double log_odds = 0;
};
std::span<const SignRow> sign_rows(); // in the order of Sign

// What a statement's words say of all phrases in it, found once.
class StatementSigns {
public:
    explicit StatementSigns(const Statement& statement);

    Signs of(const Phrase& phrase, Kind kind, const english::WordList& words) const;

private:
    Signs of_place(const Phrase& phrase) const; // in its sentence
    const Statement* statement_;
    Signs common_;
    std::size_t lead_in_ = 0; // where a lead-in (`experience with`) ends; past the end: none
};

double odds_of(const Signs& signs);

}
