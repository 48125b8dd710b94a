// The bytes of a file as text: UTF-8 checked, line ends made LF, brought to NFC.
#pragma once

#include "compiler/base/place.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace quoin {

struct EncodingFault {
    Place place; // in Decoded::text
    std::string text;
};

struct Decoded {
    std::string text; // without byte-order mark, line ends LF; U+FFFD where something was wrong
    std::vector<EncodingFault> faults;
};

// Linear in the size. Of each kind of fault the first few are reported, then how many there are.
Decoded decode(std::string_view bytes);

// Normalization Form C (Unicode Standard Annex #15) of well-formed UTF-8 that decode() found no
// fault in.
std::string to_nfc(const std::string& text);

}
