// The languages that a page may be in, as themes/words has them: how each writes dates, what
// sections are headed by in it, and that one goes on.
#pragma once

#include "compiler/stages/model/dates.hpp"
#include "compiler/stages/model/local_dates.hpp"
#include "compiler/stages/page_words/words.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::portal {

struct PageLanguages {
    std::vector<model::LocalDates> dates;         // beside English
    std::vector<page_words::SectionTitle> titles; // folded; beside the English ones
    std::vector<std::string> continued;           // folded, without signs

    std::optional<trade::Holds> title(std::string_view text) const;

    // What stands after a section's title where the section goes on: `(continued)`, `, suite`.
    bool says_continued(std::string_view text) const;
};

// In English or, if that is none, in the first language in which it is.
std::optional<model::DateRange> dates_in_any(std::string_view text, const PageLanguages& languages);

// Those of a folder of page words; none of a file that cannot be read.
PageLanguages page_languages(const std::filesystem::path& folder);

}
