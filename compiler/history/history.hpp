// How the program comes to earlier drafts: opens the repository of a file, by the module that knows
// git, and says what is wrong.
#pragma once

#include "compiler/history/repository.hpp"

#include <filesystem>
#include <memory>
#include <string>

namespace quoin::history {

// Of the file or folder. Throws ModuleFault if the module is missing.
Outcome<std::unique_ptr<Repository>> open_repository(const std::filesystem::path& of);

// As the repository's functions take it; empty: the file is outside its work tree.
std::string path_within(const Repository& repository, const std::filesystem::path& file);

// "draft.resume: …", what is wrong and the mend.
std::string said(const Fault& fault);

// For a shallow clone, beside what was found in it.
std::string said_of_cut_off();

}
