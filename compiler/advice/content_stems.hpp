// The words of a text that say what it is about, as stems, for what is told in two places.
#pragma once

#include "compiler/english/stems.hpp"

#include <cstddef>
#include <set>
#include <string>
#include <string_view>

namespace quoin::advice {

using Stems = std::set<std::string>;

// A figure, or a word that says nothing by itself; in small letters.
bool is_little(std::string_view word);

Stems stems_of(std::string_view text, const english::Stemmer& stemmer);
std::size_t shared(const Stems& a, const Stems& b);

}
