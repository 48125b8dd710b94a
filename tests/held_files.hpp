// The files of a folder, read once and held in memory, for fuzz targets: what the disk has is asked
// for a million times over otherwise.
#pragma once

#include "compiler/base/source.hpp"

#include <algorithm>
#include <cstddef>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <optional>
#include <string>
#include <utility>

namespace quoin::test {

using HeldFiles = std::map<std::filesystem::path, std::string>;

inline HeldFiles files_in(const std::filesystem::path& folder) {
    HeldFiles files;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        if (!entry.is_regular_file()) continue;
        std::ifstream file(entry.path(), std::ios::binary);
        files[entry.path()] = std::string(std::istreambuf_iterator<char>(file), {});
    }
    return files;
}

// Without its comments, which would be read again for each input.
inline std::string lines_that_say(const std::string& text) {
    std::string kept;
    for (std::size_t begin = 0; begin < text.size();) {
        const std::size_t end = std::min(text.find('\n', begin), text.size() - 1) + 1;
        if (text[begin] != '#' && text[begin] != '\n') kept.append(text, begin, end - begin);
        begin = end;
    }
    return kept;
}

inline HeldFiles words_of_pages() {
    HeldFiles words = files_in(QUOIN_DATA_FOLDER "/themes/words");
    for (auto& [path, text] : words)
        text = lines_that_say(text);
    return words;
}

// The words of pages are found, and at `part.resume` what stands behind a form feed in the input,
// for it to be taken in. What stands before it is given back.
inline std::string hold_words_and_part(Sources& sources, std::string input) {
    static const HeldFiles words = words_of_pages();
    const std::size_t end = std::min(input.find('\f'), input.size());
    std::optional<std::string> part;
    if (end < input.size()) part = input.substr(end + 1);
    sources.read_by(
        [part = std::move(part)](const std::filesystem::path& path) -> std::optional<std::string> {
            if (path == "part.resume") return part;
            const auto found = words.find(path);
            return found == words.end() ? std::nullopt : std::optional(found->second);
        },
        {});
    input.resize(end);
    return input;
}

}
