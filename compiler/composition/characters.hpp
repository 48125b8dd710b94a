// Text by user-perceived characters, and in capitals.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace quoin {

// Bytes of the first grapheme cluster (Unicode Standard Annex #29) of a text that is not empty.
std::size_t first_cluster_length(std::string_view text);

std::string upper_case(std::string_view text, const std::string& language); // BCP 47

}
