// What a résumé takes in by name, and which résumé takes a file in: looked for on the disk, beside
// it and above.
#pragma once

#include "compiler/stages/syntax/tree.hpp"

#include <filesystem>
#include <optional>
#include <vector>

namespace quoin::session {

// What the `include:` lines of a file name, whether it is there or not.
std::vector<std::filesystem::path> named_includes(const syntax::Tree& tree,
                                                  const std::filesystem::path& file);

// Within the folders that the editor works in; where there are none, beside the file and one folder
// above. None if none is found among the first that are looked at.
std::optional<std::filesystem::path> taker_of(const std::filesystem::path& file,
                                              const std::vector<std::filesystem::path>& folders);

}
