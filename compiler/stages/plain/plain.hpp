// The same content as clean text for a portal's form.
#pragma once

#include "compiler/stages/composition/composition.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace quoin::plain {

// UTF-8, LF line ends, one line a paragraph, `- ` for bullets, a blank line between sections and
// entries.
std::string plain_text(const composition::Composition& composition);

// Of one entry: by its number on the page, from 1, or the first that has these words. None if there
// is no such entry.
std::optional<std::string> entry_text(const composition::Composition& composition,
                                      const std::string& which);

// Letters without their marks, signs as ASCII has them, and `?` for what it has nothing for.
std::string in_ascii(std::string_view text);

}
