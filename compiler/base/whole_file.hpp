// Files read whole as they are, whatever is in them.
#pragma once

#include <filesystem>
#include <string>

namespace quoin {

// The bytes of a regular file. 0, or the error number: EINVAL for what is no such file.
int read_whole_file(const std::filesystem::path& file, std::string& bytes);

}
