// Who is named in a posting: what stands around a name tells that it is a person's, and then it is
// one wherever it stands.
#pragma once

#include "compiler/english/word_list.hpp"
#include "compiler/postings/parts.hpp"

#include <set>
#include <span>
#include <string>
#include <string_view>

namespace quoin::postings {

// A capital that small letters follow, as names have it; `McRae`, `O'Dell`, `Marchetti-Boone` too.
bool is_shaped_as_name(std::string_view word);

bool is_given_name(std::string_view word); // `Dana`, however written

// A given name, or one that no dictionary has as a word; not of a language, nor of a tool or a
// method.
bool is_strange(std::string_view word, const english::WordList& words);

// Names, in small letters and without a possessive.
std::set<std::string> people_in(std::span<const Statement> statements,
                                const english::WordList& words);

}
