// Proofreading one input, and what all printed forms share.
#include "compiler/commands/proof/proof_report.hpp"

#include "compiler/commands/office_rules.hpp"

namespace quoin::commands {

std::unique_ptr<Proofread> proofread(const std::string& input, const stages::Choices& choices,
                                     const ProofTools& tools) {
    auto one = std::make_unique<Proofread>();
    one->input = input == "-" ? standard_input : input;
    one->file = one->sources.read_input(input, one->diagnostics);
    one->office = office_of(tools.offices, input);
    proofread(*one, choices, tools);
    return one;
}

CharacterColumns Columns::of(const Place& place) {
    return maps_.try_emplace(place.file, sources_.file(place.file)).first->second.columns_of(place);
}

}
