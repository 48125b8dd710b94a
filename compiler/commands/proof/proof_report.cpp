// Proofreading one input, and what all printed forms share.
#include "compiler/commands/proof/proof_report.hpp"

#include "compiler/advice/other_languages.hpp"
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

void proofread(Proofread& one, const stages::Choices& choices, const ProofTools& tools) {
    if (one.file)
        one.resume = selected_resume(one.sources, *one.file, choices, tools.data, one.diagnostics);
    if (one.resume) {
        one.typeset = typeset_selected(*one.resume, one.sources, *one.file, choices, tools.data,
                                       tools.fonts, one.diagnostics);
        one.bullets = advice::read_bullets(*one.resume, tools.language);
        const advice::ProofContext context{
            .sources = one.sources,
            .resume = *one.resume,
            .typeset = one.typeset ? &*one.typeset : nullptr,
            .today = one.resume->settings.updated->value_or(tools.read_on),
            .language = tools.language,
            .bullets = one.bullets,
            .read_on = tools.read_on,
            .everything = choices.tags.empty(),
            .office = one.office};
        one.proof = run_proof(context);
        for (std::string& said : advice::passed_over(*one.resume))
            one.diagnostics.note(one.resume->settings.language.place, std::move(said));
    }
    one.diagnostics.sort();
}

CharacterColumns Columns::of(const Place& place) {
    return maps_.try_emplace(place.file, sources_.file(place.file)).first->second.columns_of(place);
}

std::string sentence_of(const advice::Finding& finding) {
    std::string text = finding.text;
    if (!finding.suggestion.empty()) text += "; " + finding.suggestion;
    if (!finding.office.empty()) text += " (" + finding.office + ')';
    return text;
}

}
