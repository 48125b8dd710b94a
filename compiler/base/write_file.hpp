// Output: a file is written whole, or what stood there before stays.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace quoin {

struct FileOutput {
    std::string target; // `-`: standard output
    std::string_view bytes;
    const std::string* over = nullptr; // what the target must still hold: else it is a fault
};

// Writes each to a part file beside its target and syncs it; when all are written, each is renamed
// to its target. A symbolic link is followed where the system itself would, and an existing file's
// permissions are kept. A device or pipe is written directly, and so is standard output. None if it
// is done; otherwise the fault, for a message, and no target is touched, but what a device or pipe
// has taken stays taken.
std::optional<std::string> write_files(std::span<const FileOutput> outputs);

std::optional<std::string> write_file(const std::string& target, std::string_view bytes);

// Whether it is a file that stands or may come to stand in a folder, and so can be replaced: no
// device, pipe, or name for a stream that the process has.
bool is_replaceable(const std::string& target);

}
