// Which résumé takes a file in: looked for on the disk, beside it and above.
#pragma once

#include <filesystem>
#include <optional>
#include <vector>

namespace quoin::session {

// Within the folders that the editor works in; where there are none, beside the file and one folder
// above. None if none is found among the first that are looked at.
std::optional<std::filesystem::path> taker_of(const std::filesystem::path& file,
                                              const std::vector<std::filesystem::path>& folders);

}
