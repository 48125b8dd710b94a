// The Flate filter's encoding: ISO 32000-1, section 7.4.4.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace quoin::pdf {

std::string deflate(std::string_view bytes); // the zlib format, RFC 1950

// PNG's Up on rows of `row` bytes, of which `bytes` has a whole number: each byte less the one
// above it, after a byte that says so. To be read with /Predictor 12 and /Columns `row` (7.4.4.4).
std::string less_the_row_above(std::string_view bytes, std::size_t row);

}
