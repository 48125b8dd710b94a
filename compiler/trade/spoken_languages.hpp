// Languages that people speak, by their English names.
#pragma once

#include <string_view>

namespace quoin::trade {

// Lower case.
bool is_spoken_language(std::string_view lower);
bool are_spoken_languages(std::string_view lower); // one, or "spanish and hindi"

}
