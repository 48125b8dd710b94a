// Output: a file is written whole, or what stood there before stays.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace quoin {

// Writes to a temporary file beside `target`, syncs it, and renames it to `target`; a symbolic link
// is followed, and an existing file's permissions are kept. A device or pipe is written directly,
// and so is standard output, `-`. None if it is done; otherwise the fault, for a message.
std::optional<std::string> write_file(const std::string& target, std::string_view bytes);

}
