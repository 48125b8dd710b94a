// Where the references that are installed tell of a check or of the markup.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace quoin::server {

// A URI with the line of the check's heading; `data` is data_folder().
std::string check_reference(const std::filesystem::path& data, std::string_view check);
std::string markup_reference(const std::filesystem::path& data);

}
