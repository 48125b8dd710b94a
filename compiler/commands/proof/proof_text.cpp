// Findings as text, in the form of the GNU Coding Standards, section 4.4.
#include "compiler/commands/proof/proof_report.hpp"

#include "compiler/advice/walk.hpp"
#include "compiler/base/printable.hpp"
#include "compiler/commands/messages.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <span>

namespace quoin::commands {

namespace {

std::string finding_text(const advice::Finding& finding, const Sources& sources) {
    return fmt::format("{} {} [{}]: {}\n", location(finding.place, sources),
                       name_of(weight_of(finding)), finding.check, sentence_of(finding));
}

// Once, below the findings: what is to be thought of beside the page.
std::string reminders_text(const Proofread& one) {
    std::string out;
    for (const advice::Finding& reminder : one.proof.reminders)
        out += fmt::format("{} reminder [{}]: {}\n", location(reminder.place, one.sources),
                           reminder.check, sentence_of(reminder));
    return out;
}

std::string set_aside_text(const Proofread& one) {
    std::map<const model::Acceptance*, std::size_t> counts;
    std::vector<const model::Acceptance*> order;
    for (const advice::SetAside& each : one.proof.set_aside)
        if (++counts[each.acceptance] == 1) order.push_back(each.acceptance);
    std::string out;
    for (const model::Acceptance* acceptance : order)
        out += fmt::format("{} note: {} of [{}] set aside: {}\n",
                           location(acceptance->place, one.sources),
                           advice::counted(counts[acceptance], "finding", "findings"),
                           acceptance->check, acceptance->reason);
    return out;
}

// What an office has off is said, for its page is not that of another.
std::string left_out_text(const Proofread& one) {
    std::string out;
    for (const advice::LeftOut& each : one.proof.left_out)
        out += fmt::format("{}: note: {}\n", printable_name(one.input), each.office);
    return out;
}

std::string total_text(const advice::Proof& proof) {
    if (proof.findings.empty()) return "nothing found\n";
    std::array<std::size_t, 3> counts{};
    for (const advice::Finding& finding : proof.findings)
        ++counts.at(static_cast<std::size_t>(weight_of(finding)));
    return fmt::format("{} must, {} should, {} to consider\n", counts[0], counts[1], counts[2]);
}

}

std::string proof_text(const Proofread& one, bool excerpts) {
    const std::string shown = printable_name(one.input);
    constexpr std::size_t most = 200; // a page that has more is wrong all through
    const auto& all = one.proof.findings;
    std::string out;
    std::set<std::string_view> explained;
    for (const advice::Finding& finding : std::span(all).first(std::min(most, all.size()))) {
        out += finding_text(finding, one.sources);
        const advice::Check* check = advice::find_check(finding.check);
        const bool first = check && explained.insert(check->name).second;
        if (excerpts && finding.place.line != 0)
            out += excerpt(finding.place, one.sources).substr(1) + '\n';
        if (first) out += fmt::format("  why: {}\n", check->why);
        if (first && !check->caution.empty()) out += fmt::format("  caution: {}\n", check->caution);
    }
    if (all.size() > most)
        out +=
            fmt::format("{}: note: {}\n", shown, fill<messages::more_findings>(all.size() - most));
    out += reminders_text(one);
    out += set_aside_text(one);
    out += left_out_text(one);
    if (excerpts) out += fmt::format("{}: {}", shown, total_text(one.proof));
    return out;
}

}
