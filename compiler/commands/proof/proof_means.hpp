// What proofreading the résumés of a run takes, opened once.
#pragma once

#include "compiler/advice/offices.hpp"
#include "compiler/advice/proofread.hpp"
#include "compiler/commands/command_line.hpp"
#include "compiler/english/language.hpp"
#include "compiler/stages/fonts/fonts.hpp"

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::commands {

class ProofMeans {
public:
    explicit ProofMeans(const advice::OfficeChoice& office);

    // Not done: the fonts or a rule of an office that one of the inputs is under is at fault, which
    // is said for the verb.
    ExitCode open(const std::vector<std::string>& inputs, std::string_view verb);

    // Once opened, which they point into. `epoch` is read_epoch().
    advice::ProofTools tools(const std::optional<std::int64_t>& epoch);

private:
    std::filesystem::path data_;
    english::Language language_;
    advice::Offices offices_;
    std::unique_ptr<fonts::Fonts> fonts_;
};

}
