// Two drafts read and proofread: of files, or of a file and what git has of it.
#pragma once

#include "compiler/commands/proof/proof_report.hpp"
#include "compiler/commands/redline/redline.hpp"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>

namespace quoin::commands {

struct ComparedDraft {
    std::unique_ptr<Proofread> read;
    std::string commit;  // forty digits, of a draft from git
    bool absent = false; // the null device, as `git difftool` has it for a file that is not there

    const std::string& name() const { return read->input; }
    bool readable() const { return read->resume.has_value(); }
};

struct ComparedDrafts {
    ComparedDraft before, after;
};

// Or what is wrong, for standard error: a fault in a file itself is among its diagnostics.
struct DraftsOrFault {
    std::optional<ComparedDrafts> drafts;
    std::string fault;
};

DraftsOrFault read_drafts(const RedlineRequest& request, const ProofTools& tools);

}
