// How a cohort moved over the terms.
#pragma once

#include "compiler/caseload/caseload.hpp"

namespace quoin::caseload {

// From the term of the first draft to that of the last; each with the draft that every student had
// at its end.
std::vector<TermState> terms_of(const std::vector<Student>& students, Look& look,
                                const Drafts& drafts);

}
