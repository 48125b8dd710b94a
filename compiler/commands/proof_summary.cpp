// What an adviser would say in half a minute: ready or not, what matters most, what is good.
#include "compiler/commands/proof_report.hpp"

#include "compiler/proof/walk.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <map>

namespace quoin {

namespace {

constexpr std::size_t most_named_places = 3;

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

const Diagnostic* first_error(const Proofread& one) {
    const auto& all = one.diagnostics.all();
    const auto found = std::ranges::find(all, Severity::error, &Diagnostic::severity);
    return found == all.end() ? nullptr : &*found;
}

std::string readiness(const Proofread& one, const std::vector<Tally>& tallies) {
    const std::size_t musts = count_of(tallies, Weight::must);
    const std::size_t shoulds = count_of(tallies, Weight::should);
    constexpr std::size_t few = 3;
    if (first_error(one)) return "not ready: no page can be made of it yet";
    if (musts > 0)
        return fmt::format("not ready: {} to mend before anyone sees it",
                           counted(musts, "thing", "things"));
    if (shoulds > few)
        return fmt::format("nearly ready: {} an adviser would ask about",
                           counted(shoulds, "thing", "things"));
    if (shoulds > 0)
        return fmt::format("ready to send, better after {}",
                           counted(shoulds, "more change", "more changes"));
    return "ready to send";
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

bool is_found(const Proof& proof, const std::function<bool(const Check&)>& which) {
    const auto is_such = [&](const Finding& finding) {
        const Check* check = find_check(finding.check);
        return check && which(*check);
    };
    return std::ranges::any_of(proof.findings, is_such) ||
           std::ranges::any_of(proof.set_aside, is_such, &SetAside::finding);
}

bool clean(const Proof& proof, std::string_view group) {
    return !is_found(proof, [&](const Check& check) {
        return check.group == group && check.weight != Weight::consider;
    });
}

struct Material { // of what there is enough to be praised
    bool contact = false, dates = false, degree = false;
    std::size_t bullets = 0, with_figures = 0;
};

void look_at_entry(const Entry& entry, Material& material) {
    const bool graduates = entry.find(FieldName::graduation) != nullptr;
    if (graduates || entry.find(FieldName::dates)) material.dates = true;
    if (graduates && entry.find(FieldName::degree)) material.degree = true;
    for (const Entry& further : entry.further)
        look_at_entry(further, material);
}

Material material_of(const Resume& resume, const Language& language) {
    Material material;
    const auto stands = [&](FieldName name) {
        return std::ranges::find(resume.heading, name, &Field::name) != resume.heading.end();
    };
    material.contact = stands(FieldName::email) && stands(FieldName::phone);
    for (const Section& section : resume.sections)
        for (const Entry& entry : section.entries)
            look_at_entry(entry, material);
    visit_bullets(resume, [&](const Position&, const Bullet& bullet) {
        ++material.bullets;
        if (language.read_bullet(bullet.text.plain()).has_figure) ++material.with_figures;
    });
    return material;
}

// One page that is well filled.
bool holds_together(const Proofread& one) {
    return one.typeset && std::holds_alternative<Fit>(one.typeset->fit) &&
           clean(one.proof, "page") &&
           !is_found(one.proof, [](const Check& check) { return check.name == "page-fill"; });
}

std::string what_is_good(const Proofread& one, const Language& language) {
    if (!one.resume) return {};
    const Material there = material_of(*one.resume, language);
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
        {good_in(there.bullets > 1, "consistency"), "one hand from top to bottom"},
        {good_in(there.bullets > 0, "spelling"), "no slip of spelling"}};
    constexpr std::size_t most_praised = 4;
    std::string text;
    for (std::size_t count = 0; const Praise& praise : praises)
        if (praise.deserved && count++ < most_praised)
            text += (text.empty() ? "" : "; ") + praise.words;
    return text;
}

}

Verdict verdict_of(const Proofread& one, const Language& language) {
    const std::vector<Tally> tallies = by_importance(one.proof);
    return {readiness(one, tallies), what_is_good(one, language)};
}

std::string proof_summary(const Proofread& one, const Language& language) {
    const Verdict verdict = verdict_of(one, language);
    std::string text = fmt::format("{}: {}\n", one.input, verdict.readiness) +
                       most_important(one, by_importance(one.proof));
    if (!verdict.good.empty()) text += fmt::format("  good already: {}\n", verdict.good);
    return text;
}

}
