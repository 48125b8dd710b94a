// Languages that people speak, and levels of them, as résumés write them; all lower case.
#pragma once

#include <string_view>

namespace quoin::advice {

bool is_spoken_language(std::string_view lower);
bool are_spoken_languages(std::string_view lower); // one, or "spanish and hindi"

// Of CEFR, of ILR and of scales like it, or in the usual words.
bool has_language_level(std::string_view lower);

}
