// A posting as it is given: text, HTML or a PDF.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"
#include "compiler/postings/posting.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace quoin::commands {

// `named` is a file, or `-` for standard input, which is no PDF. None if it cannot be read, holds
// no words, is no posting at all (a résumé's source) or is in another language than English, which
// is reported.
std::optional<postings::Posting> read_posting_at(const std::string& named, Sources& sources,
                                                 Diagnostics& diagnostics);

// A résumé's source, by its labels.
bool holds_resume(const std::string& named);

// A posting where the résumé should be, by mistake.
bool has_name_of_posting(std::string_view named);

}
