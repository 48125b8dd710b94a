// Whether what a page draws is of its structure, by the marks in its content alone.
#pragma once

#include <string_view>

namespace quoin::portal {

// Whether every text that the content shows stands in a marked sequence with an MCID (ISO 32000-1,
// section 14.7.4.2), and in no artifact within it. Where that is not sure, it is not: properties
// that have a name, inline images, sequences that begin or end elsewhere.
bool all_text_is_marked(std::string_view content);

}
