// The same content as clean text for a portal's form.
#pragma once

#include "compiler/stages/composition/composition.hpp"

#include <string>

namespace quoin::plain {

// UTF-8, LF line ends, one line a paragraph, `- ` for bullets, a blank line between sections and
// entries.
std::string plain_text(const composition::Composition& composition);

}
