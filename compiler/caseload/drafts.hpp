// The drafts that there have been of a résumé.
#pragma once

#include "compiler/caseload/appraisal.hpp"
#include "compiler/caseload/find_resumes.hpp"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace quoin::caseload {

struct Draft {
    Day day{};
    std::string revision{}; // what its text is asked for by; empty: the file as it is
    std::string path{};     // the file's own then, within its repository

    bool operator==(const Draft&) const = default;
};

class Drafts { // safe to ask from several threads
public:
    virtual ~Drafts() = default;
    // Oldest first, the file as it is the last of them; empty: nothing is known.
    virtual std::vector<Draft> of(const std::filesystem::path& file) const = 0;
    virtual std::optional<std::string> text(const std::filesystem::path& file,
                                            const Draft& draft) const = 0;
};

// As git has them, and the file as it is where it has changed since. Of files that git does not
// keep: the day that each was written on. `notes`: what of the history cannot be had.
std::unique_ptr<const Drafts> drafts_of(const std::vector<Found>& resumes,
                                        std::vector<std::string>& notes);

}
