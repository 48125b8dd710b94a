// How full the page is, in a few words.
#pragma once

#include "compiler/stages/typeset.hpp"

#include <string>

namespace quoin::stages {

// "1 page, 10.7 pt, 4 lines free", or "3 lines too long for 1 page".
std::string page_state(const Typeset& typeset);

}
