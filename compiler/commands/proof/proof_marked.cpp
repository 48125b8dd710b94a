// The marked proof: what an adviser hands back.
#include "compiler/commands/proof/proof_report.hpp"

#include "compiler/advice/marks.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/commands/marked_pages.hpp"

#include <fmt/format.h>

#include <map>
#include <set>
#include <utility>

namespace quoin::commands {

namespace {

// "Line 12", or "Line 3 of shared.resume" in another file than the one that was named; no path, for
// the page may travel.
std::string line_of(const Place& place, const Proofread& one) {
    if (place.line == 0) return "The whole";
    std::string text = fmt::format("Line {}", place.line);
    if (one.file && place.file != *one.file)
        text += " of " + one.sources.file(place.file).path.filename().string();
    return text;
}

composition::Remark remark_of(const advice::Finding& finding, const Proofread& one,
                              std::size_t number, bool first_of_check) {
    composition::Remark remark{std::to_string(number),
                               fmt::format("{}, {}:", line_of(finding.place, one), finding.check),
                               sentence_of(finding) + '.',
                               {}};
    if (const advice::Check* check = advice::find_check(finding.check); check && first_of_check) {
        remark.reason = check->why;
        if (!check->caution.empty()) (remark.reason += ' ') += check->caution;
    }
    return remark;
}

std::vector<composition::RemarkGroup> remarks_by_weight(const Proofread& one) {
    std::vector<composition::RemarkGroup> groups{
        {"Must mend", {}}, {"Should mend", {}}, {"To consider", {}}};
    std::set<std::string_view> explained;
    for (std::size_t number = 1; const advice::Finding& finding : one.proof.findings) {
        const bool first = explained.insert(finding.check).second;
        groups.at(static_cast<std::size_t>(weight_of(finding)))
            .remarks.push_back(remark_of(finding, one, number++, first));
    }
    return groups;
}

composition::RemarkGroup set_aside(const Proofread& one) {
    std::map<const model::Acceptance*, std::size_t> counts;
    for (const advice::SetAside& each : one.proof.set_aside)
        ++counts[each.acceptance];
    composition::RemarkGroup group{"Set aside by the résumé", {}};
    for (const model::Acceptance& acceptance : one.resume->settings.accept)
        if (const auto found = counts.find(&acceptance); found != counts.end())
            group.remarks.push_back({"–",
                                     acceptance.check + ':',
                                     advice::counted(found->second, "finding", "findings") + ": " +
                                         acceptance.reason + '.',
                                     {}});
    return group;
}

// What is found and left out by the office, and what it says last.
void close_by_office(const Proofread& one, composition::Sheet& sheet) {
    composition::RemarkGroup group{"Left out by the office", {}};
    for (const advice::LeftOut& each : one.proof.left_out)
        group.remarks.push_back(
            {"–", std::string(each.check) + ':', capitalised(each.office) + '.', {}});
    sheet.groups.push_back(std::move(group));
    if (one.office && !one.office->closing.empty())
        sheet.closing.push_back({capitalised(one.office->name) + ':', one.office->closing});
}

composition::Sheet sheet_of(const Proofread& one) {
    composition::Sheet sheet{"Proof", {}, remarks_by_weight(one)};
    const Verdict verdict = verdict_of(one);
    sheet.opening.push_back(capitalised(verdict.readiness) + '.');
    if (!verdict.good.empty()) sheet.opening.push_back("Good already: " + verdict.good + '.');
    if (!one.proof.findings.empty())
        sheet.opening.emplace_back(
            "Each number is that of a flag in the margin; lines are those of "
            "the source. What is found is a help to judge by: facts, and "
            "the last word, stay with the writer.");
    sheet.groups.push_back(set_aside(one));
    close_by_office(one, sheet);
    return sheet;
}

}

std::string marked_proof(const Proofread& one, const ProofTools& tools,
                         std::optional<std::int64_t> time) {
    const stages::Typeset& typeset = one.typeset.value();
    const fit::Fit fit = fit_or_draft(typeset);
    pages::Pages pages = make_pages(typeset, fit);
    std::vector<pages::Note> notes = notes_of(one.proof, typeset.composition, pages);
    return marked_pdf({typeset.composition, typeset.theme, typeset.resume.settings,
                       std::move(pages), std::move(notes), fit.setting.side_margin, sheet_of(one),
                       typeset.composition.title + ", marked proof"},
                      tools.fonts, time);
}

}
