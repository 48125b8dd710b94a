// What a section of a given title usually holds.
#pragma once

#include "compiler/trade/kinds.hpp"

#include <optional>
#include <string_view>

namespace quoin::trade {

// None if no word of the title tells.
std::optional<Holds> usual_holds(std::string_view title);

// The word that tells of which a title of one word is a slip: `hobbies`, of `Hobbys`.
std::optional<std::string_view> slip_of_title(std::string_view title);

// The title that such a section mostly has; empty for `other`.
std::string_view usual_title(Holds holds);

// Whether it is nothing but a title: "Education", "WORK EXPERIENCE", "Honors & Awards".
bool is_section_title(std::string_view line);

}
