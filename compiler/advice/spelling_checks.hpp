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

bool is_address(std::string_view text, const WordAt& word); // of mail, a page or a file
bool has_inner_capital(std::string_view word);

// known_slips.cpp: slips that need no dictionary.
// `onthe`, `inChemistry`: the two words; empty where it is no such slip.
std::string parted_words(const std::string& word, const english::Language& language);
// HIPPA, SafeServ, mise in place: in names too, which dictionaries pass over.
void known_slips(const ProofContext& context, std::vector<Finding>& findings);
bool is_known_slip(std::string_view word);
// Saftey Star: of names, what no dictionary was asked about and is not told yet.
void slips_in_names(const ProofContext& context, std::vector<Finding>& findings);

void word_slips(const ProofContext& context, std::vector<Finding>& findings); // word_slips.cpp

}
