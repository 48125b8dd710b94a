// How English writes one sound in more ways than one, and so how a word is written by its sound:
// `fotograf`, `technition`, `skedule`.
#pragma once

#include <functional>
#include <string>
#include <string_view>

namespace quoin::english {

// Each word that is the typed one but for one such sound, spelled or not.
void each_by_sound(std::string_view typed, const std::function<void(const std::string&)>& each);

}
