// Proofreading one input, and what all printed forms share.
#include "compiler/commands/proof_report.hpp"

#include "compiler/source/utf8.hpp"

#include <algorithm>

namespace quoin {

namespace {

std::size_t characters_in(std::string_view text) {
    std::size_t count = 0;
    while (!text.empty()) {
        text.remove_prefix(std::min(first_character(text).length, text.size()));
        ++count;
    }
    return count;
}

}

std::unique_ptr<Proofread> proofread(const std::string& input, const Choices& choices,
                                     const ProofTools& tools) {
    auto one = std::make_unique<Proofread>();
    one->input = input;
    one->file = input == "-" ? one->sources.read_standard_input(one->diagnostics)
                             : one->sources.read(input, one->diagnostics);
    if (one->file)
        one->resume = selected_resume(one->sources, *one->file, choices, one->diagnostics);
    if (one->resume) {
        one->typeset = typeset_selected(*one->resume, one->sources, *one->file, choices, tools.data,
                                        tools.fonts, one->diagnostics);
        const ProofContext context{.sources = one->sources,
                                   .resume = *one->resume,
                                   .typeset = one->typeset ? &*one->typeset : nullptr,
                                   .today = one->resume->settings.updated->value_or(tools.read_on),
                                   .language = tools.language,
                                   .read_on = tools.read_on,
                                   .everything = choices.tags.empty()};
        one->proof = run_proof(context);
    }
    one->diagnostics.sort();
    return one;
}

CharacterColumns character_columns(const Place& place, const Sources& sources) {
    if (place.column == 0) return {};
    const std::string_view line = sources.file(place.file).line(place.line);
    const std::size_t begin = std::min<std::size_t>(place.column - 1, line.size());
    const std::size_t column = characters_in(line.substr(0, begin)) + 1;
    return {column, column + characters_in(line.substr(begin, place.length))};
}

std::string sentence_of(const Finding& finding) {
    return finding.suggestion.empty() ? finding.text : finding.text + "; " + finding.suggestion;
}

}
