// A proof as the caseload keeps it.
#pragma once

#include "compiler/caseload/appraisal.hpp"
#include "compiler/commands/proof/proof_report.hpp"

#include <filesystem>
#include <optional>
#include <string>

namespace quoin::commands {

caseload::Appraisal appraise(const std::filesystem::path& path,
                             const std::optional<std::string>& text, const ProofTools& tools);

}
