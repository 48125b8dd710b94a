// From syntax trees to the model: labels become fields, values are read, includes are taken in.
#pragma once

#include "compiler/model/resume.hpp"
#include "compiler/source/diagnostics.hpp"
#include "compiler/source/source.hpp"

#include <cstdint>
#include <optional>

namespace quoin {

// Reads the file and all that it includes. None if there was an error; every error is reported.
std::optional<Resume> build_resume(Sources& sources, std::uint32_t file, Diagnostics& diagnostics);

}
