// The languages that a page may be in, as themes/words has them: how each writes dates, and that a
// section goes on.
#pragma once

#include "compiler/stages/model/local_dates.hpp"

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::portal {

struct PageLanguages {
    std::vector<model::LocalDates> dates; // beside English
    std::vector<std::string> continued;   // folded, without signs

    // What stands after a section's title where the section goes on: `(continued)`, `, suite`.
    bool says_continued(std::string_view text) const;
};

// Those of a folder of page words; none of a file that cannot be read.
PageLanguages page_languages(const std::filesystem::path& folder);

}
