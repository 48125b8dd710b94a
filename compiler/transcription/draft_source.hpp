// A draft as a source in the markup.
#pragma once

#include "compiler/transcription/draft.hpp"

#include <string>
#include <string_view>

namespace quoin::transcription {

std::string source_of(const Draft& draft);

// Text of a page so that the markup reads it as it stands.
std::string in_markup(std::string_view text);

// With its lines commented out that cannot be read, until all of it can. `words` is the folder of
// the page's words.
std::string source_that_reads(std::string source, const std::string& words);

}
