// Both drafts in one: the new one with what is gone from the old put back in its place, each word
// told apart by its marks.
#pragma once

#include "compiler/redlining/alignment.hpp"
#include "compiler/stages/model/resume.hpp"

#include <cstdint>

namespace quoin::redlining {

// A stretch's place is that in its own draft; in the old one the files are counted from
// `old_files` on, so that a place tells which draft it is of.
model::Resume marked_resume(const Alignment& alignment, std::uint32_t old_files);

}
