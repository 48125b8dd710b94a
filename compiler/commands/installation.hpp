// Where quoin's own data is, the same in a build tree and an installed one.
#pragma once

#include <filesystem>

namespace quoin {

// Holds `themes/` and `fonts/`: the folder that the environment's QUOIN_DATA names, else
// `../share/quoin` beside the folder of the running program.
std::filesystem::path data_folder();

}
