// The writer's own name in a list of authors.
#pragma once

#include "compiler/stages/model/resume.hpp"

#include <cstddef>
#include <string_view>
#include <utility>
#include <vector>

namespace quoin::model {

// Where `name` stands in a list of authors, in bytes from and to: whole, or
// with initials before or after the family name, which may be of several words.
// Not where the initials are another's.
std::vector<std::pair<std::size_t, std::size_t>> own_names_in(std::string_view authors,
                                                              std::string_view name);

// Makes it strong in every `author` that has no strong words of the writer's.
void mark_own_name(Resume& resume);

}
