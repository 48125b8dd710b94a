// From syntax trees to the model: labels become fields, values are read, includes are taken in.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"
#include "compiler/stages/model/resume.hpp"

#include <cstdint>
#include <filesystem>
#include <optional>

namespace quoin::model {

// Reads the file and all that it includes, and the words of its language, which are in a file of
// `words`. None if there was an error; every error is reported.
std::optional<Resume> build_resume(Sources& sources, std::uint32_t file,
                                   const std::filesystem::path& words, Diagnostics& diagnostics);

}
