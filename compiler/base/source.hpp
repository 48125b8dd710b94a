// Source files: read whole, checked as UTF-8, brought to NFC, kept for as long as places point
// into them.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/place.hpp"

#include <cstdint>
#include <deque>
#include <filesystem>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin {

struct SourceFile {
    std::filesystem::path path; // empty for standard input
    std::string name;           // as messages show it
    std::string bytes;          // as read, for mends that keep all else byte for byte
    std::string text; // NFC (Unicode Standard Annex #15), LF line ends, no byte-order mark
    std::vector<std::size_t> line_starts; // offsets into text, one a line

    std::string_view line(std::uint32_t number) const; // from 1, without its line end
};

constexpr std::string_view standard_input = "standard input"; // as messages name it

enum class TextOf {
    markup,    // written for quoin: a web page is none, and invisible signs are told
    elsewhere, // a posting, say: whatever text it is
};

enum class NamedBy {
    user, // with the own hand: a pipe or a device is read as well
    file, // that was read: only a regular file is
};

class Sources {
public:
    // A résumé is a few kilobytes; a file of more than this is something else given by mistake.
    static constexpr std::size_t most_bytes = std::size_t{1} << 20;

    // Each returns the new file's index, or reports why there is none: no such file, a folder,
    // not readable, over most_bytes, bad UTF-8 (at its byte), a NUL byte.
    std::optional<std::uint32_t> read(const std::filesystem::path& path, Diagnostics& diagnostics,
                                      TextOf text = TextOf::markup,
                                      NamedBy named_by = NamedBy::file);
    std::optional<std::uint32_t> read_input(const std::string& named, // `-`: standard input
                                            Diagnostics& diagnostics, TextOf text = TextOf::markup);
    std::optional<std::uint32_t> add(std::string name, std::string bytes, Diagnostics& diagnostics,
                                     TextOf text = TextOf::markup);

    // From now on read() finds these bytes at `path`, whatever is on the disk.
    void hold(const std::filesystem::path& path, std::string bytes);
    // And where `keeper` has bytes for a path, those; messages name it with `aside` after it.
    using Keeper = std::function<std::optional<std::string>(const std::filesystem::path&)>;
    void read_by(Keeper keeper, std::string aside);
    bool holds(const std::filesystem::path& path) const; // by either

    const SourceFile& file(std::uint32_t index) const { return files_.at(index); }
    std::size_t size() const { return files_.size(); }

    // Column as GNU messages count it: from 1, in terminal columns, tabs to every eighth.
    std::uint32_t display_column(const Place& place) const;

private:
    std::optional<std::uint32_t> read_standard_input(Diagnostics& diagnostics, TextOf text);
    void refuse(std::string name, std::string fault, Diagnostics& diagnostics);

    struct Counted { // how far display_column() came; the next place is mostly behind it
        std::uint32_t file = 0, line = 0, columns = 0;
        std::size_t bytes = 0;
    };

    std::optional<std::string> held(const std::filesystem::path& path) const;

    std::map<std::filesystem::path, std::string> held_;
    Keeper keeper_;
    std::string aside_;
    mutable Counted counted_;
    std::deque<SourceFile> files_; // a deque: references stay good while files are added
};

}
