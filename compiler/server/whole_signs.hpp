// Halves of signs in JSON: an editor that counts in UTF-16 may send one alone (RFC 8259,
// section 8.2), and no text can hold it.
#pragma once

#include <string>

namespace quoin::server {

// With U+FFFD, which is as long in UTF-16, for each `\uD800` to `\uDFFF` that has no other half.
std::string whole_signs(std::string json);

}
