// Where a line may end: Unicode Standard Annex #14 by ICU, with a résumé's own exceptions: no break
// inside `C++`, `$1.2M`, `24/7`, a date, a phone number, an email address.
#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

namespace quoin::composition {

// Byte offsets into UTF-8 `text`, ascending, 0 and the end excluded. An offset is that of the first
// character of the next line, so spaces stand before it.
std::vector<std::size_t> break_opportunities(std::string_view text);

// Annex #14 alone, with no exceptions: what the published test file is checked against.
std::vector<std::size_t> uax14_opportunities(std::string_view text);

}
