// Quoin's own data, where it is, the same in a build tree and an installed one, and its fonts.
#pragma once

#include "compiler/stages/fonts/fonts.hpp"

#include <filesystem>
#include <memory>
#include <string>

namespace quoin::commands {

// Holds `themes/` and `fonts/`: the folder that the environment's QUOIN_DATA names, else
// `../share/quoin` beside the folder of the running program.
std::filesystem::path data_folder();

// Which program this is, of which data: one built anew is another, be its version the same.
std::string this_build();

// Of `data`, for programs that read PDFs.
std::filesystem::path font_configuration(const std::filesystem::path& data);

// Those of `data`. Null if their list is at fault, which is said on standard error.
std::unique_ptr<fonts::Fonts> open_fonts(const std::filesystem::path& data);

}
