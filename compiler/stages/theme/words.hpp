// The words that a page says by itself, from a file of `label: value` lines for each language.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"
#include "compiler/stages/model/dates.hpp"

#include <filesystem>
#include <string>

namespace quoin::theme {

struct Words {
    model::DateWords dates;
    std::string email, phone, web_page; // what a link leads to, said to who hears the page
    std::string resume;                 // after the name, in the document's title
};

Words read_words(Sources& sources, const std::filesystem::path& path, Diagnostics& diagnostics);

}
