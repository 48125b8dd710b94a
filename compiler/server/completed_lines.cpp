#include "compiler/base/lists.hpp"
#include "compiler/interview/plan.hpp"
#include "compiler/interview/questions.hpp"
#include "compiler/server/completing.hpp"
#include "compiler/server/markup_advice.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace quoin::server {

namespace {

constexpr std::string_view snippet_signs = "$}\\"; // that are more than themselves

std::string as_snippet(std::string_view text) {
    std::string out;
    for (const char c : text) {
        if (snippet_signs.find(c) != snippet_signs.npos) out += '\\';
        out += c;
    }
    return out;
}

Candidate label_candidate(const Completing& at, std::string_view label) {
    const LabelAdvice advice = advice_on(label, at.spot.holds, at.desk.session.means().data);
    return {std::string(label) + ": ",
            CandidateKind::property,
            advice.goes_in.substr(0, advice.goes_in.find('\n')),
            {},
            advice.why};
}

bool may_stand(std::string_view label, const DocumentSpot& spot) {
    const trade::Word* word = trade::find_word(label);
    return !word || word->repeats || !is_one_of(label, spot.labels);
}

// A whole entry of what the section holds, with an example at each label.
void add_entry(const Completing& at, Candidates& candidates) {
    if (!at.desk.takes_snippets || !at.spot.labels.empty() || !at.spot.holds) return;
    for (const interview::PlannedSection& section : interview::plan_for(at.stage(), "any")) {
        if (section.holds != at.spot.holds || !section.has_entries()) continue;
        std::string body;
        int stop = 0;
        for (const std::string_view label : section.labels) {
            if (label == interview::more_groups) continue;
            const std::string example = as_snippet(question_at(section, label, "any").example);
            const bool bullet = interview::asks_for_lines(label);
            body += fmt::format("{}{} ${{{}:{}}}", body.empty() ? "" : "\n",
                                bullet ? "-" : fmt::format("{}:", label), ++stop, example);
        }
        candidates.all.push_back(
            {fmt::format("{}: … (a whole entry)", section.labels.front()), CandidateKind::snippet,
             fmt::format("all lines of {}", trade::section_of(*section.holds)), body});
        return;
    }
}

}

Candidates line_candidates(const Completing& at) {
    Candidates candidates;
    candidates.typed = at.spot.before.size();
    std::vector<std::string_view> labels = at.spot.in_heading ? trade::heading_labels()
                                           : at.spot.holds    ? trade::labels_of(*at.spot.holds)
                                                              : std::vector<std::string_view>{};
    if (at.spot.begins_section) labels.insert(labels.end(), {"holds", "column"});
    if (!at.spot.in_heading) labels.push_back("for");
    labels.push_back("section");
    for (const std::string_view label : labels)
        if (may_stand(label, at.spot)) candidates.all.push_back(label_candidate(at, label));
    add_entry(at, candidates);
    return candidates;
}

}
