// The checks of consistency, each over the whole résumé. Their table is in consistency_checks.cpp.
#pragma once

#include "compiler/proof/check.hpp"
#include "compiler/proof/walk.hpp"

namespace quoin {

// consistency_checks.cpp and consistency_forms.cpp: signs, spaces, capitals, places
void bullet_ends(const ProofContext& context, std::vector<Finding>& findings);
void spacing(const ProofContext& context, std::vector<Finding>& findings);
void doubled_words(const ProofContext& context, std::vector<Finding>& findings);
void dashes(const ProofContext& context, std::vector<Finding>& findings);
void capitals(const ProofContext& context, std::vector<Finding>& findings);
void place_forms(const ProofContext& context, std::vector<Finding>& findings);

// consistency_words.cpp: figures, commas, spellings
void number_forms(const ProofContext& context, std::vector<Finding>& findings);
void serial_comma(const ProofContext& context, std::vector<Finding>& findings);
void spelling_region(const ProofContext& context, std::vector<Finding>& findings);
void term_forms(const ProofContext& context, std::vector<Finding>& findings);

// Sentences rather than names: bullets, prose, notes, the headline.
bool is_wording(const TextInResume& part);

}
