#include "compiler/advice/proofread.hpp"

#include "compiler/advice/other_languages.hpp"

#include <utility>

namespace quoin::advice {

void proofread(Proofread& one, const stages::Choices& choices, const ProofTools& tools) {
    if (one.file)
        one.resume = selected_resume(one.sources, *one.file, choices, tools.data, one.diagnostics);
    if (one.resume) {
        one.typeset = typeset_selected(*one.resume, one.sources, *one.file, choices, tools.data,
                                       tools.fonts, one.diagnostics);
        one.texts = read_texts(*one.resume, tools.language);
        one.bullets = read_bullets(*one.resume, one.texts, tools.language);
        const ProofContext context{.sources = one.sources,
                                   .resume = *one.resume,
                                   .typeset = one.typeset ? &*one.typeset : nullptr,
                                   .today = one.resume->settings.updated->value_or(tools.read_on),
                                   .language = tools.language,
                                   .texts = one.texts,
                                   .bullets = one.bullets,
                                   .read_on = tools.read_on,
                                   .everything = choices.tags.empty(),
                                   .office = one.office};
        one.proof = run_proof(context);
        for (std::string& said : passed_over(*one.resume))
            one.diagnostics.note(one.resume->settings.language.place, std::move(said));
    }
    one.diagnostics.sort();
}

std::string sentence_of(const Finding& finding) {
    std::string text = finding.text;
    if (!finding.suggestion.empty()) text += "; " + finding.suggestion;
    if (!finding.office.empty()) text += " (" + finding.office + ')';
    return text;
}

}
