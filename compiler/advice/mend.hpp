// Safe mends, made in the bytes of the source file: all else stays byte for byte.
#pragma once

#include "compiler/advice/check.hpp"
#include "compiler/base/source.hpp"

#include <cstddef>
#include <functional>
#include <span>
#include <string>
#include <vector>

namespace quoin::advice {

struct Mended {
    std::string bytes;
    std::size_t made = 0; // edits; one that overlaps another, or that has no place of its own in
                          // the bytes, is left for the next time
};

// Edits have their places in SourceFile::text, the bytes may have CRLF ends, a byte-order mark and
// letters that are not in NFC.
Mended mend(const SourceFile& file, std::vector<Edit> edits);

// Those edits that are good together: all of them, or else what is left after the bad ones were
// looked for by halves. Each question costs a reading, so that there are at most `most_questions`;
// what nothing is known of by then is bad.
std::vector<Edit> good_edits(std::span<const Edit> edits, std::size_t most_questions,
                             const std::function<bool(const std::vector<Edit>&)>& are_good);

}
