// Levels of spoken languages, as résumés write them.
#pragma once

#include <string_view>
#include <vector>

namespace quoin::advice {

// Of CEFR, of ILR and of scales like it, or in the usual words; lower case.
bool has_language_level(std::string_view lower);

// Levels to choose from, in alphabetical order.
std::vector<std::string_view> usual_levels();

}
