// Addresses of links: checked against their RFCs, and what is shown of them.
#pragma once

#include "compiler/stages/model/text_pieces.hpp"

#include <string>
#include <string_view>

namespace quoin::model {

// The URI in bytes [begin, end) of the value, without the white space of folds (RFC 3986, appendix
// C), its scheme in lower case. With `scheme`, that is put before it. What is wrong is reported.
std::string read_address(const JoinedValue& value, std::size_t begin, std::size_t end,
                         std::string_view scheme, Diagnostics& diagnostics);

// What is shown of the address in bytes [begin, end): not its scheme, nor a slash at its end.
struct Shown {
    std::size_t begin = 0;
    std::size_t end = 0;
};
Shown shown_address(std::string_view text, std::size_t begin, std::size_t end);

}
