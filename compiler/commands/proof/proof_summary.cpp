// What an adviser would say in half a minute: ready or not, what matters most, what is good.
#include "compiler/commands/proof/proof_report.hpp"

#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/printable.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <functional>
#include <map>
#include <tuple>

namespace quoin::commands {

namespace {

constexpr std::size_t most_named_places = 3;

struct Tally {
    const advice::Check* check = nullptr;
    const advice::Finding* first = nullptr;
    std::size_t count = 0;
};

// What it does to the reading: whether a portal takes the page in, whether the first glance is
// lost, what the content says, how it is written.
std::size_t effect_of(const advice::Check& check) {
    constexpr std::array<std::string_view, 16> groups{
        "contact",     "dates",    "sections", "education", // a portal
        "privacy",     "page",     "spelling", "claims",    // the first glance
        "wording",     "entries",  "skills",   "office",    // content
        "consistency", "settings", "",         ""};         // form
    constexpr std::size_t of_one_effect = 4;
    const auto found = std::ranges::find(groups, check.group);
    return static_cast<std::size_t>(found - groups.begin()) / of_one_effect;
}

// Never three of a kind among those that are named: the third waits behind one of another kind.
void mix_kinds(std::vector<Tally>& order) {
    if (order.size() <= most_named_places) return;
    const auto kind = [](const Tally& tally) { return tally.check->group; };
    const auto third = order.begin() + 2;
    if (kind(order[0]) != kind(order[1]) || kind(order[1]) != kind(*third)) return;
    const auto other = std::find_if(
        third, order.end(), [&](const Tally& tally) { return kind(tally) != kind(order[0]); });
    if (other != order.end()) std::rotate(third, other, other + 1);
}

// The heaviest first, of equals those of the most effect, then those that are found most often.
std::vector<Tally> by_importance(const advice::Proof& proof) {
    std::map<std::string_view, Tally> tallies;
    for (const advice::Finding& finding : proof.findings) {
        Tally& tally = tallies[finding.check];
        if (tally.count++ == 0) tally = {advice::find_check(finding.check), &finding, 1};
    }
    std::vector<Tally> order;
    for (const auto& [name, tally] : tallies)
        if (tally.check) order.push_back(tally);
    std::ranges::stable_sort(order, [](const Tally& a, const Tally& b) {
        return std::tuple(weight_of(*a.first), effect_of(*a.check), b.count) <
               std::tuple(weight_of(*b.first), effect_of(*b.check), a.count);
    });
    mix_kinds(order);
    return order;
}

Counts counts_of(const auto& findings, const auto& as_finding) {
    Counts counts{};
    for (const auto& one : findings)
        ++counts.at(static_cast<std::size_t>(weight_of(as_finding(one))));
    return counts;
}

const Diagnostic* first_error(const Proofread& one) {
    const auto& all = one.diagnostics.all();
    const auto found = std::ranges::find(all, Severity::error, &Diagnostic::severity);
    return found == all.end() ? nullptr : &*found;
}

struct Readiness {
    std::string_view word;
    std::string text;
};

// What must be mended is no less so for being accepted.
Readiness unready(std::size_t musts, std::size_t accepted) {
    if (musts == 0)
        return {"not ready", fmt::format("not ready: 'accept' sets aside {} that must be mended",
                                         advice::counted(accepted, "thing", "things"))};
    std::string text = fmt::format("not ready: {} to mend before anyone sees it",
                                   advice::counted(musts, "thing", "things"));
    if (accepted > 0)
        text += fmt::format(", and {} that 'accept' sets aside",
                            advice::counted(accepted, "more", "more"));
    return {"not ready", text};
}

Readiness readiness(const Proofread& one, const Counts& found, const Counts& accepted) {
    constexpr std::size_t few = 3;
    const std::size_t shoulds = found[1];
    if (first_error(one)) return {"not ready", "not ready: no page can be made of it yet"};
    if (found[0] + accepted[0] > 0) return unready(found[0], accepted[0]);
    if (shoulds > few)
        return {"nearly ready", fmt::format("nearly ready: {} an adviser would ask about",
                                            advice::counted(shoulds, "thing", "things"))};
    if (shoulds > 0)
        return {"ready", fmt::format("ready to send, better after {}",
                                     advice::counted(shoulds, "more change", "more changes"))};
    return {"ready", "ready to send"};
}

// "  set aside by 'accept': one finding of [email-form], two of [high-school]; --ignore-accept …"
std::string set_aside_line(const advice::Proof& proof) {
    if (proof.set_aside.empty()) return {};
    std::map<std::string_view, std::size_t> counts;
    for (const advice::SetAside& one : proof.set_aside)
        ++counts[one.finding.check];
    std::vector<std::string> parts;
    for (const auto& [check, count] : counts)
        parts.push_back(
            fmt::format("{} of [{}]", advice::counted(count, "finding", "findings"), check));
    return fmt::format("  set aside by 'accept': {}; --ignore-accept lists {}\n",
                       joined(parts, " and "), proof.set_aside.size() == 1 ? "it" : "them");
}

// "  left out by the office: Marrow Bay career office leaves out …"
std::string left_out_lines(const advice::Proof& proof) {
    std::string text;
    for (const advice::LeftOut& one : proof.left_out)
        text += fmt::format("  not counted: {}\n", one.office);
    return text;
}

std::string most_important(const Proofread& one, const std::vector<Tally>& tallies) {
    std::string out;
    std::size_t number = 1;
    const auto add = [&](const Place& place, const std::string& text) {
        out += fmt::format("  {}. ", number++);
        if (place.line != 0) out += fmt::format("line {}: ", place.line);
        out += text;
    };
    if (const Diagnostic* error = first_error(one)) add(error->place, error->text + '\n');
    for (const Tally& tally : tallies) {
        if (number > most_named_places) break;
        add(tally.first->place, sentence_of(*tally.first));
        if (tally.count > 1) out += fmt::format(" ({} more like it)", tally.count - 1);
        out += '\n';
    }
    return out;
}

// --- what is good: only what is there, with nothing found or set aside

bool is_found(const advice::Proof& proof, const std::function<bool(const advice::Check&)>& which) {
    const auto is_such = [&](const advice::Finding& finding) {
        const advice::Check* check = advice::find_check(finding.check);
        return check && which(*check);
    };
    return std::ranges::any_of(proof.findings, is_such) ||
           std::ranges::any_of(proof.set_aside, is_such, &advice::SetAside::finding);
}

bool clean(const advice::Proof& proof, std::string_view group) {
    return !is_found(proof, [&](const advice::Check& check) {
        return check.group == group && check.weight != advice::Weight::consider;
    });
}

// Not a thing is written in two ways, be it only to consider.
bool written_in_one_hand(const advice::Proof& proof) {
    return !is_found(proof,
                     [](const advice::Check& check) { return check.group == "consistency"; });
}

struct Material { // of what there is enough to be praised
    bool contact = false, dates = false, degree = false;
    std::size_t bullets = 0, with_figures = 0;
};

void look_at_entry(const model::Entry& entry, Material& material) {
    const bool graduates = entry.find(trade::FieldName::graduation) != nullptr;
    if (graduates || entry.find(trade::FieldName::dates)) material.dates = true;
    if (graduates && entry.find(trade::FieldName::degree)) material.degree = true;
    for (const model::Entry& further : entry.further)
        look_at_entry(further, material);
}

Material material_of(const model::Resume& resume,
                     const std::vector<advice::WordedBullet>& bullets) {
    Material material;
    const auto stands = [&](trade::FieldName name) {
        return std::ranges::find(resume.heading, name, &model::Field::name) != resume.heading.end();
    };
    material.contact = stands(trade::FieldName::email) && stands(trade::FieldName::phone);
    for (const model::Section& section : resume.sections)
        for (const model::Entry& entry : section.entries)
            look_at_entry(entry, material);
    material.bullets = bullets.size();
    for (const advice::WordedBullet& bullet : bullets)
        if (bullet.reading.has_figure) ++material.with_figures;
    return material;
}

// One page that is well filled.
bool holds_together(const Proofread& one) {
    return one.typeset && std::holds_alternative<fit::Fit>(one.typeset->fit) &&
           clean(one.proof, "page") && !is_found(one.proof, [](const advice::Check& check) {
               return check.name == "page-fill";
           });
}

std::string what_is_good(const Proofread& one) {
    if (!one.resume) return {};
    const Material there = material_of(*one.resume, one.bullets);
    const auto good_in = [&](bool is_there, std::string_view group) {
        return is_there && clean(one.proof, group);
    };
    struct Praise {
        bool deserved;
        std::string words;
    };
    const Praise praises[] = {
        {holds_together(one), "a page that holds together"},
        {there.bullets > 1 && there.with_figures * 2 >= there.bullets,
         fmt::format("{} of {} bullets carry a figure", there.with_figures, there.bullets)},
        {good_in(there.contact, "contact"), "contact details that work"},
        {good_in(there.dates, "dates"), "every date in place and in order"},
        {good_in(there.degree, "education"), "a degree and its date as portals look for them"},
        {there.bullets > 1 && written_in_one_hand(one.proof), "one hand from top to bottom"},
        {good_in(there.bullets > 0, "spelling"), "no slip of spelling"}};
    constexpr std::size_t most_praised = 4;
    std::string text;
    for (std::size_t count = 0; const Praise& praise : praises)
        if (praise.deserved && count++ < most_praised)
            text += (text.empty() ? "" : "; ") + praise.words;
    return text;
}

}

Verdict verdict_of(const Proofread& one) {
    const std::vector<Tally> tallies = by_importance(one.proof);
    Verdict verdict;
    verdict.found = counts_of(one.proof.findings, std::identity{});
    verdict.set_aside = counts_of(
        one.proof.set_aside,
        [](const advice::SetAside& aside) -> const auto& { return aside.finding; });
    Readiness said = readiness(one, verdict.found, verdict.set_aside);
    verdict.word = said.word;
    verdict.readiness = std::move(said.text);
    verdict.good = what_is_good(one);
    for (const Tally& tally : tallies)
        if (verdict.first.size() < most_named_places) verdict.first.push_back(tally.first);
    if (one.typeset) {
        const fit::Fit fit = fit_or_draft(*one.typeset);
        verdict.page = {make_pages(*one.typeset, fit).pages.size(),
                        static_cast<std::size_t>(*one.typeset->resume.settings.pages),
                        fit.setting.size};
    }
    return verdict;
}

std::string proof_summary(const Proofread& one) {
    const Verdict verdict = verdict_of(one);
    std::string text = fmt::format("{}: {}\n", printable_name(one.input), verdict.readiness) +
                       most_important(one, by_importance(one.proof)) + set_aside_line(one.proof) +
                       left_out_lines(one.proof);
    if (!verdict.good.empty()) text += fmt::format("  good already: {}\n", verdict.good);
    return text;
}

}
