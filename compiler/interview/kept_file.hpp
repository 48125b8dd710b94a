// The file in which answers are kept, beside the draft to be: read when there is one, written whole
// after each answer, held by one run at a time.
#pragma once

#include "compiler/base/descriptor.hpp"
#include "compiler/interview/kept.hpp"

#include <filesystem>
#include <optional>
#include <string>

namespace quoin::interview {

class KeptFile {
public:
    explicit KeptFile(std::filesystem::path path) : path_(std::move(path)) {}

    bool is_there() const;
    std::optional<std::string> hold(); // that another run has it; none if this one has
    std::optional<std::string> save(const Kept& kept); // what keeps it from being saved
    void remove();

    const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
    Descriptor held_;
};

}
