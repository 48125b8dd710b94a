// A whole PDF of given objects: header, body, cross-reference stream and end, ISO 32000-1, section
// 7.5, as PDF/A-2 (ISO 19005-2, 6.1) narrows it.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>

namespace quoin::pdf {

struct FileObject {
    std::string text;                  // its value; of a stream the dictionary, /Length and all
    std::optional<std::string> stream; // as it is to stand in the file
    std::uint16_t generation = 0;
};

// The objects are 1, 2, 3, …; `root` and `info` are numbers of theirs. All that may be in an object
// stream is in one. There is no encryption. The identifier is a digest of the file's bytes.
std::string write_file(std::span<const FileObject> objects, std::uint32_t root, std::uint32_t info);

}
