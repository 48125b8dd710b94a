// What is a source by its name: a résumé, a theme, an interview, an office's rules.
#pragma once

#include <filesystem>

namespace quoin::session {

// Whether such a file stands there, under that name or, through links, under another.
bool is_source(const std::filesystem::path& file);

}
