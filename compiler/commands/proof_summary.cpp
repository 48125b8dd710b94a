// What an adviser would say in half a minute: ready or not, what matters most, what is good.
#include "compiler/commands/proof_report.hpp"

#include "compiler/proof/walk.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

namespace quoin {

namespace {

constexpr std::size_t most_named = 3;

struct Tally {
    const Check* check = nullptr;
    const Finding* first = nullptr;
    std::size_t count = 0;
};

// The heaviest first; of equals those that are found most often.
std::vector<Tally> by_importance(const Proof& proof) {
    std::map<std::string_view, Tally> tallies;
    for (const Finding& finding : proof.findings) {
        Tally& tally = tallies[finding.check];
        if (tally.count++ == 0) tally = {find_check(finding.check), &finding, 1};
    }
    std::vector<Tally> order;
    for (const auto& [name, tally] : tallies)
        if (tally.check) order.push_back(tally);
    std::ranges::stable_sort(order, [](const Tally& a, const Tally& b) {
        if (a.check->weight != b.check->weight) return a.check->weight < b.check->weight;
        return a.count > b.count;
    });
    return order;
}

std::size_t count_of(const std::vector<Tally>& tallies, Weight weight) {
    std::size_t count = 0;
    for (const Tally& tally : tallies)
        if (tally.check->weight == weight) count += tally.count;
    return count;
}

std::string readiness(const std::vector<Tally>& tallies) {
    const std::size_t musts = count_of(tallies, Weight::must);
    const std::size_t shoulds = count_of(tallies, Weight::should);
    constexpr std::size_t few = 3;
    if (musts > 0)
        return fmt::format("not ready: {} to mend before anyone sees it",
                           counted(musts, "thing", "things"));
    if (shoulds > few)
        return fmt::format("nearly ready: {} an adviser would ask about",
                           counted(shoulds, "thing", "things"));
    if (shoulds > 0)
        return fmt::format("ready to send, better after {} more",
                           counted(shoulds, "change", "changes"));
    return "ready to send";
}

std::string most_important(const std::vector<Tally>& tallies) {
    std::string out;
    for (std::size_t i = 0; i < std::min(tallies.size(), most_named); ++i) {
        const Tally& tally = tallies[i];
        out += fmt::format("  {}. ", i + 1);
        if (tally.first->place.line != 0) out += fmt::format("line {}: ", tally.first->place.line);
        out += sentence_of(*tally.first);
        if (tally.count > 1) out += fmt::format(" ({} more like it)", tally.count - 1);
        out += '\n';
    }
    return out;
}

bool clean(const std::vector<Tally>& tallies, std::string_view group) {
    return std::ranges::none_of(tallies, [&](const Tally& tally) {
        return tally.check->group == group && tally.check->weight != Weight::consider;
    });
}

std::string figures_told(const Proofread& one, const Language& language) {
    std::size_t bullets = 0, with_figures = 0;
    visit_bullets(*one.resume, [&](const Position&, const Bullet& bullet) {
        ++bullets;
        if (language.read_bullet(bullet.text.plain()).has_figure) ++with_figures;
    });
    if (bullets == 0 || with_figures * 2 < bullets) return {};
    return fmt::format("{} of {} bullets carry a figure", with_figures, bullets);
}

std::string what_is_good(const Proofread& one, const std::vector<Tally>& tallies,
                         const Language& language) {
    struct Praise {
        std::string_view group, words;
    };
    constexpr std::array praises{
        Praise{"contact", "contact details that work"},
        Praise{"dates", "every date in place and in order"},
        Praise{"education", "a degree and its date as portals look for them"},
        Praise{"consistency", "one hand from top to bottom"},
        Praise{"spelling", "no slip of spelling"}};
    std::vector<std::string> good;
    if (one.typeset && std::holds_alternative<Fit>(one.typeset->fit) && clean(tallies, "page"))
        good.emplace_back("a page that holds together");
    if (std::string figures = figures_told(one, language); !figures.empty())
        good.push_back(std::move(figures));
    for (const Praise& praise : praises)
        if (clean(tallies, praise.group)) good.emplace_back(praise.words);
    constexpr std::size_t most_praised = 4;
    if (good.size() > most_praised) good.resize(most_praised);
    std::string text;
    for (const std::string& each : good)
        text += (text.empty() ? "" : "; ") + each;
    return text;
}

}

Verdict verdict_of(const Proofread& one, const Language& language) {
    const std::vector<Tally> tallies = by_importance(one.proof);
    return {readiness(tallies), what_is_good(one, tallies, language)};
}

std::string proof_summary(const Proofread& one, const Language& language) {
    const Verdict verdict = verdict_of(one, language);
    std::string text = fmt::format("{}: {}\n", one.input, verdict.readiness) +
                       most_important(by_importance(one.proof));
    if (!verdict.good.empty()) text += fmt::format("  good already: {}\n", verdict.good);
    return text;
}

}
