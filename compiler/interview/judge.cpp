#include "compiler/interview/judge.hpp"

#include "compiler/advice/bullets.hpp"
#include "compiler/advice/date_order.hpp"
#include "compiler/advice/proof.hpp"
#include "compiler/base/source.hpp"
#include "compiler/interview/questions.hpp"
#include "compiler/stages/typeset.hpp"

#include <algorithm>
#include <optional>
#include <utility>
#include <variant>

namespace quoin::interview {

namespace {

struct ReadDraft {
    DraftSource source;
    Sources sources;
    Diagnostics diagnostics;
    std::optional<model::Resume> resume;

    ReadDraft(const Plan& plan, const Draft& draft, const std::set<Spot>& set_aside,
              const std::filesystem::path& data)
        : source(draft_source(plan, draft, set_aside)) {
        if (const auto file = sources.add("draft", source.text, diagnostics))
            resume = stages::selected_resume(sources, *file, {}, data, diagnostics);
    }

    const Spot* spot_of(const Place& place) const {
        const auto found = source.spots.find(place.line);
        return found == source.spots.end() ? nullptr : &found->second;
    }

    bool is_at(const Place& place, const Spot& spot) const {
        const Spot* at = spot_of(place);
        return at && *at == spot;
    }
};

std::vector<std::string> told_of(const ReadDraft& read, const Spot& spot, Severity severity) {
    std::vector<std::string> said;
    for (const Diagnostic& diagnostic : read.diagnostics.all())
        if (diagnostic.severity == severity && read.is_at(diagnostic.place, spot))
            said.push_back(diagnostic.text);
    return said;
}

bool is_off(std::string_view check, const office::Office* office, const model::Resume& resume) {
    if (!office) return false;
    const auto& rules = office->at(*resume.settings.stage).checks;
    const auto rule = rules.find(check);
    return rule != rules.end() && !rule->second.weight;
}

}

std::set<Spot> Judge::unreadable(const Plan& plan, const Draft& draft) const {
    std::set<Spot> found;
    for (bool more = true; more;) {
        more = false;
        const ReadDraft read(plan, draft, found, data_);
        for (const Diagnostic& diagnostic : read.diagnostics.all()) {
            const Spot* spot = read.spot_of(diagnostic.place);
            if (diagnostic.severity == Severity::error && spot)
                more = found.insert(*spot).second || more;
        }
    }
    return found;
}

Judgement Judge::judge(const Plan& plan, const Draft& draft, const Spot& spot) const {
    std::set<Spot> aside = unreadable(plan, draft);
    const bool readable = aside.erase(spot) == 0;
    const ReadDraft read(plan, draft, aside, data_);
    if (!readable || !read.resume) return {told_of(read, spot, Severity::error), readable};

    std::vector<std::string> said = told_of(read, spot, Severity::warning);
    const auto texts = advice::read_texts(*read.resume, language_);
    const auto bullets = advice::read_bullets(*read.resume, texts, language_);
    const advice::ProofContext context{.sources = read.sources,
                                       .resume = *read.resume,
                                       .today = today_,
                                       .language = language_,
                                       .texts = texts,
                                       .bullets = bullets,
                                       .read_on = today_,
                                       .office = office_};
    const PlannedSection& section = plan.at(spot.section);
    for (const std::string_view name :
         question_at(section, label_at(plan, spot), draft.value(choice_section, "field"))
             .looked_at) {
        std::vector<advice::Finding> findings;
        const advice::Check* check = advice::find_check(name);
        if (check && !is_off(name, office_, *read.resume)) check->run(context, findings);
        for (const advice::Finding& finding : findings)
            if (read.is_at(finding.place, spot))
                said.push_back(finding.suggestion.empty()
                                   ? finding.text
                                   : finding.text + "; " + finding.suggestion);
    }
    return {std::move(said), true};
}

std::optional<bool> Judge::goes_on(std::string_view dates) const {
    const auto read = model::read_dates(dates);
    const auto* range = std::get_if<model::DateRange>(&read);
    if (!range) return std::nullopt;
    return advice::goes_on(*range, today_);
}

}
