// Text as it stands in HTML.
#pragma once

#include <string>
#include <string_view>

namespace quoin {

// In an element or in an attribute's double quotes.
std::string in_html(std::string_view text);

}
