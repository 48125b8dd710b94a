// Participles that open a bullet: an adjective, a recognition, or what others did to the writer.
#pragma once

#include "compiler/english/sentence.hpp"

#include <cstddef>

namespace quoin::english {

// Selected, Promoted: an accepted opening (common practice).
bool is_recognition(const Sentence& sentence, std::size_t i);
// Skilled in, Dedicated to, Certified nurse.
bool is_adjective_participle(const Sentence& sentence, std::size_t i);
// Supervised by, Trained in, Given charge of.
bool is_acted_on(const Sentence& sentence, std::size_t i);

}
