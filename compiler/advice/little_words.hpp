// Which articles a bullet cannot do without.
#pragma once

#include "compiler/advice/walk.hpp"

#include <cstddef>
#include <vector>

namespace quoin::advice {

// Whether words[i], an article, says something: a day, a third, 5 pages an issue.
bool is_needed_article(const std::vector<WordAt>& words, std::size_t i);

}
