// Names in a posting that are no terms: of its people, its places and its employer.
#pragma once

#include "compiler/english/word_list.hpp"
#include "compiler/postings/parts.hpp"
#include "compiler/postings/phrases.hpp"

#include <cstddef>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::postings {

bool is_name(const Phrase& phrase, const Statement& statement, const english::WordList& words);

// The names that do something (`Polder Heating fixes furnaces`), word by word in small letters.
std::set<std::string> names_that_act(std::span<const Statement> statements);

// `Tolliver & Daughter of Harlan Bay is looking for`: what stands before is the employer, and its
// place. The bytes before that verb; 0 if there is none.
std::size_t end_of_employer(std::string_view sentence);

// Words with a capital in what is left out, in small letters: the employer's name, its place, its
// people.
std::set<std::string> names_left_out(std::span<const Statement> statements);

// What addresses are of, in small letters: `walledacre` of hello@walledacre.example.
std::vector<std::string> hosts_of(std::span<const Statement> statements);

}
