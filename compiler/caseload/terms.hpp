// How a cohort moved over the terms.
#pragma once

#include "compiler/caseload/caseload.hpp"

namespace quoin::caseload {

// The last draft of each term that there was one in, oldest first.
std::vector<Draft> last_of_terms(const std::vector<Draft>& drafts);

// From the term of the first draft to that of the last; each with the draft that every student had
// at its end.
std::vector<TermState> terms_of(const std::vector<Student>& students);

}
