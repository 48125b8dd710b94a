// Which lines of an old document are titles of sections, and what stands below each.
#pragma once

#include "compiler/portal/languages.hpp"
#include "compiler/trade/kinds.hpp"
#include "compiler/transcription/old_text.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::transcription {

enum class Below { entries, courses, references, contact }; // of what no kind of section holds

struct FoundTitle {
    std::size_t line = 0;
    std::size_t words = 0; // of the line; what follows them belongs to the section
    std::string text;
    std::optional<trade::Holds> holds; // none: nothing is known of such a title
    Below below = Below::entries;
    bool by_form = false; // its last word tells, and no list has it
};

// Nothing but a title that is known.
bool is_known_title(std::string_view text, const portal::PageLanguages& languages);

std::vector<FoundTitle> find_titles(const std::vector<OldLine>& lines,
                                    const portal::PageLanguages& languages);

}
