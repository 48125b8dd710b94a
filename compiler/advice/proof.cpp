// Running the checks, and setting aside what is accepted.
#include "compiler/advice/proof.hpp"

#include "compiler/advice/one_cause.hpp"
#include "compiler/advice/other_languages.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/message.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <string>
#include <tuple>

namespace quoin::advice {

namespace {

constexpr std::string_view unknown_name = "accept-unknown";
constexpr std::string_view idle_name = "accept-idle";

// Both look at what the others found, and run after them.
void after_the_others(const ProofContext&, std::vector<Finding>&) {}

constexpr std::array acceptance_table{
    Check{unknown_name, Weight::should, "settings", "What 'accept:' names is a check.",
          "A slip in the name leaves the finding where it was.", "grammar/language.md",
          "accept: high-scool (first term)", "accept: high-school (first term)", after_the_others},
    Check{idle_name, Weight::consider, "settings",
          "What 'accept:' sets aside is found, which is not looked at in a build for a tag; each "
          "check is set aside once.",
          "A reason that has gone, or that is not the one given, had better go from the file too.",
          "grammar/language.md", "accept: high-school (first term), and no high school",
          "no such line", after_the_others},
};

auto finding_place(const Finding& finding) {
    const Place& place = finding.place;
    return std::tuple(place.file, place.line, place.column);
}

void report_unknown(const model::Acceptance& acceptance, std::vector<Finding>& findings) {
    std::vector<std::string_view> names;
    for (const Check* check : all_checks())
        names.push_back(check->name);
    const std::string meant = did_you_mean(acceptance.check, names);
    Finding& finding =
        report<messages::unknown_check>(findings, acceptance.place, in_quotes(acceptance.check));
    finding.check = unknown_name;
    finding.suggestion = meant.empty() ? fill<messages::all_are_named>() : meant.substr(2);
}

// The first one's reason is given.
void report_twice(const model::Acceptance& acceptance, const model::Acceptance& first,
                  std::vector<Finding>& findings) {
    report<messages::accepted_twice>(findings, acceptance.place, in_quotes(acceptance.check),
                                     first.place.line)
        .check = idle_name;
}

// In the first year a high school may stand, and who accepts it has a reason to.
bool is_school_of_first_year(std::string_view name, const model::Resume& resume) {
    return name == "high-school" &&
           std::ranges::any_of(positions(resume, {trade::Holds::education}),
                               [](const auto& one) { return is_before_college(*one.entry); });
}

bool looks_at_page(const Check& check) {
    return check.group == "page";
}

std::vector<Finding> run_all(const ProofContext& context) {
    std::vector<Finding> findings;
    const bool english = is_english(context.resume);
    for (const Check* check : all_checks()) {
        if (!english && !reads_any_language(check->name)) continue;
        const std::size_t before = findings.size();
        check->run(context, findings);
        for (std::size_t i = before; i < findings.size(); ++i)
            findings[i].check = check->name;
    }
    keep_one_of_a_cause(findings);
    return findings;
}

}

std::span<const Check> acceptance_checks() {
    return acceptance_table;
}

std::vector<const Check*> all_checks() {
    std::vector<const Check*> all;
    for (const auto& group :
         {contact_checks(), person_checks(), section_checks(), education_checks(), date_checks(),
          entry_checks(), claim_checks(), wording_checks(), letter_checks(), sentence_checks(),
          skill_checks(), interest_checks(), consistency_checks(), spelling_checks(), page_checks(),
          privacy_checks(), discretion_checks(), acceptance_checks()})
        for (const Check& check : group)
            all.push_back(&check);
    return all;
}

void take_back_set_aside(Proof& proof) {
    for (SetAside& one : proof.set_aside) {
        std::string& last =
            one.finding.suggestion.empty() ? one.finding.text : one.finding.suggestion;
        last = fill<messages::accepted_for>(last, one.acceptance->reason);
        proof.findings.push_back(std::move(one.finding));
    }
    proof.set_aside.clear();
    std::ranges::stable_sort(proof.findings, {}, finding_place);
}

const Check* find_check(std::string_view name) {
    const auto all = all_checks();
    const auto found = std::ranges::find(all, name, &Check::name);
    return found == all.end() ? nullptr : *found;
}

std::size_t check_number(std::string_view name) {
    const auto all = all_checks();
    return static_cast<std::size_t>(std::ranges::find(all, name, &Check::name) - all.begin());
}

Weight weight_of(const Finding& finding) {
    const Check* check = find_check(finding.check);
    return check ? check->weight : Weight::consider;
}

Proof run_proof(const ProofContext& context) {
    Proof proof;
    std::map<std::string_view, const model::Acceptance*> accepted;
    std::map<std::string_view, bool> used;
    const auto& acceptances = context.resume.settings.accept;
    for (const model::Acceptance& acceptance : acceptances)
        if (!find_check(acceptance.check))
            report_unknown(acceptance, proof.findings);
        else if (const auto [first, is_new] = accepted.emplace(acceptance.check, &acceptance);
                 !is_new)
            report_twice(acceptance, *first->second, proof.findings);
    for (Finding& finding : run_all(context)) {
        const auto found = accepted.find(finding.check);
        if (found == accepted.end()) {
            auto& kept = find_check(finding.check)->reminder ? proof.reminders : proof.findings;
            kept.push_back(std::move(finding));
            continue;
        }
        used[finding.check] = true;
        proof.set_aside.push_back({std::move(finding), found->second});
    }
    for (const auto& [name, acceptance] : accepted) {
        const bool silent = !context.everything ||
                            (!is_english(context.resume) && !reads_any_language(name)) ||
                            (!context.typeset && looks_at_page(*find_check(name)));
        if (!used.contains(name) && !silent && !is_school_of_first_year(name, context.resume))
            report<messages::idle_acceptance>(proof.findings, acceptance->place, in_quotes(name))
                .check = idle_name;
    }
    std::ranges::stable_sort(proof.findings, {}, finding_place);
    std::ranges::stable_sort(proof.reminders, {}, finding_place);
    std::ranges::stable_sort(proof.set_aside, {},
                             [](const SetAside& one) { return finding_place(one.finding); });
    return proof;
}

}
