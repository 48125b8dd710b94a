#include "compiler/server/line_savings.hpp"

#include "compiler/stages/fit/shorten.hpp"

namespace quoin::server {

namespace {

Place end_of(const composition::Paragraph& paragraph) {
    for (auto origin = paragraph.origins.rbegin(); origin != paragraph.origins.rend(); ++origin)
        if (origin->place.line != 0) return origin->place;
    return paragraph.place;
}

}

std::vector<LineSaving> line_savings(const session::State& state) {
    constexpr std::size_t few = 12;       // characters
    constexpr std::size_t most_lines = 8; // beyond that, taking out a word is no help
    std::vector<LineSaving> savings;
    if (!state.read.typeset) return savings;
    const stages::Typeset& typeset = *state.read.typeset;
    const fit::Fit fit = fit_or_draft(typeset);
    const auto& paragraphs = typeset.composition.paragraphs;
    std::size_t bytes_left = fit::most_measured;
    for (std::size_t p = 0; p < paragraphs.size() && p < fit.lines.size(); ++p) {
        if (fit.lines[p].size() < 2 || fit.lines[p].size() > most_lines) continue;
        const auto shorter =
            fit::shortenings(paragraphs[p], full_measure(fit.setting), 1, bytes_left);
        if (!shorter.empty() && shorter.front().characters <= few)
            savings.push_back({end_of(paragraphs[p]), shorter.front().characters});
    }
    return savings;
}

}
