// URIs of documents (RFC 3986; RFC 8089 for files) and their paths.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace quoin::server {

// Absolute and normal for a file of this machine; the URI itself for another scheme, such as
// `untitled:`. None for what is no URI, or names a file of another machine.
std::optional<std::filesystem::path> path_of_uri(std::string_view uri);
std::string uri_of_path(const std::filesystem::path& path);

}
