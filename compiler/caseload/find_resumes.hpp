// The résumés of an adviser's folders.
#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <vector>

namespace quoin::caseload {

struct Found {
    std::filesystem::path path{}; // as it was named, or below the folder that was
    bool named = false;           // by itself, not by its folder
};

struct Search {
    std::vector<Found> resumes{};      // in the order of their paths, each once
    std::vector<std::string> faults{}; // what cannot be read
    std::vector<std::string> notes{};  // what was left out on purpose
    std::size_t looked_at = 0;         // files
};

// Folders are gone through whole, links followed, each real folder once; what begins with a dot is
// none of theirs, nor is a repository that another one holds as a submodule.
Search find_resumes(const std::vector<std::string>& places);

}
