// What the checks of spelling share. Their table is in spelling_checks.cpp.
#pragma once

#include "compiler/advice/check.hpp"
#include "compiler/advice/walk.hpp"

#include <string>
#include <string_view>
#include <unordered_set>

namespace quoin::advice {

// Words that are right here, whatever a dictionary has: those of `words:`, of abbreviations, of
// other languages, of names, and of those that an office knows.
class KnownWords {
public:
    explicit KnownWords(const ProofContext& context);
    bool holds(std::string_view word) const;

private:
    void add(std::string_view phrase);

    std::unordered_set<std::string> words_;
};

// What a word of a name is a plain slip for, of those that schools and firms are named by: Collage,
// Hosptial; empty: none.
std::string institution_meant(std::string_view word);

bool is_spelled(const TextInResume& part); // worded by the writer, no name or contact

void word_slips(const ProofContext& context, std::vector<Finding>& findings); // word_slips.cpp

}
