// ToUnicode maps (ISO 32000-1, section 9.10.3): the text that each code of a font stands for.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <string_view>

namespace quoin::pdf {

// A CMap, from two-byte codes to UTF-8 texts.
std::string to_unicode_cmap(const std::map<std::uint32_t, std::string_view>& texts);

}
