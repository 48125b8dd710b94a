// The drafts that there have been of a résumé.
#pragma once

#include "compiler/caseload/appraisal.hpp"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace quoin::caseload {

struct Draft {
    Day day{};
    std::string revision{}; // what its text is asked for by; empty: the file as it is
};

class Drafts { // safe to ask from several threads
public:
    virtual ~Drafts() = default;
    // Oldest first, the file as it is the last of them; empty: nothing is known.
    virtual std::vector<Draft> of(const std::filesystem::path& file) const = 0;
    virtual std::optional<std::string> text(const std::filesystem::path& file,
                                            const Draft& draft) const = 0;
};

// Of files that no history is kept of: the day that each was written on.
std::unique_ptr<const Drafts> file_days();

}
