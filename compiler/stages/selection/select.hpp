// Selection by tag: what one build takes of a résumé.
#pragma once

#include "compiler/stages/model/resume.hpp"

#include <span>
#include <string>
#include <vector>

namespace quoin::selection {

// A build that asks for no tag takes everything. Else a piece with `only` tags is taken if the
// build asks for one of them, and a piece is left out if its `except` tags hold one of them.
model::Resume select(const model::Resume& resume, std::span<const std::string> tags);

// Every tag the résumé uses, sorted, once: for "did you mean" when a build asks for none of them.
std::vector<std::string> tags_of(const model::Resume& resume);

}
