// A file of word data, mapped into memory: a question costs a few pages of it and no load.
#pragma once

#include <filesystem>
#include <memory>
#include <string_view>

namespace quoin::english {

class MappedFile {
public:
    explicit MappedFile(const std::filesystem::path& file); // empty if there is none

    std::string_view bytes() const { return bytes_; }

private:
    std::shared_ptr<const void> mapping_;
    std::string_view bytes_;
};

}
