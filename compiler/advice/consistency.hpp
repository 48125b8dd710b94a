// The checks of consistency, each over the whole résumé. Their table is in consistency_checks.cpp.
#pragma once

#include "compiler/advice/check.hpp"
#include "compiler/advice/walk.hpp"

namespace quoin::advice {

// consistency_checks.cpp and consistency_forms.cpp: signs, spaces, capitals
void bullet_ends(const ProofContext& context, std::vector<Finding>& findings);
void spacing(const ProofContext& context, std::vector<Finding>& findings);
void dashes(const ProofContext& context, std::vector<Finding>& findings);
void capitals(const ProofContext& context, std::vector<Finding>& findings);
void place_forms(const ProofContext& context, std::vector<Finding>& findings);

// proper_names.cpp
void proper_names(const ProofContext& context, std::vector<Finding>& findings);

// doubled_words.cpp
void doubled_words(const ProofContext& context, std::vector<Finding>& findings);

// consistency_words.cpp: figures, commas, spellings
void number_forms(const ProofContext& context, std::vector<Finding>& findings);
void unit_forms(const ProofContext& context, std::vector<Finding>& findings);
void ampersands(const ProofContext& context, std::vector<Finding>& findings);
void term_forms(const ProofContext& context, std::vector<Finding>& findings);

void place_forms(const ProofContext& context, std::vector<Finding>& findings);  // place_forms.cpp
void serial_comma(const ProofContext& context, std::vector<Finding>& findings); // serial_comma.cpp

// spelling_region.cpp
void spelling_region(const ProofContext& context, std::vector<Finding>& findings);
// Of a word in small letters that is British and not right in the US; empty if it is neither.
std::string american_spelling(std::string_view british, const english::Language& language);

// Sentences rather than names: bullets, prose, notes, the headline.
bool is_wording(const TextInResume& part);

}
