// Verbs that do not agree in number with a subject right beside them.
#pragma once

#include "compiler/english/sentence.hpp"

#include <vector>

namespace quoin::english {

std::vector<Disagreement> find_disagreements(const Sentence& sentence);

}
