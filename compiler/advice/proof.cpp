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

const office::CheckRule* rule_of(const ProofContext& context, std::string_view check) {
    const auto found = context.rules().checks.find(check);
    return found == context.rules().checks.end() ? nullptr : &found->second;
}

// What the office has the check weigh; a finding of another weight is told so.
void weigh_by_office(const Check& check, const office::CheckRule& rule,
                     const office::Office& office, Finding& finding) {
    const Weight before = finding.weight.value_or(check.weight);
    if (*rule.weight == before && rule.asked.reason.empty()) return;
    finding.weight = rule.weight;
    add_office(finding,
               office.says(fill<messages::office_weighs>(name_of(*rule.weight)), rule.asked));
}

LeftOut leave_out(const Check& check, const office::CheckRule& rule, const office::Office& office,
                  std::size_t count) {
    const std::string findings = counted(count, "finding", "findings");
    return {check.name, count,
            office.says(fill<messages::office_leaves_out>(findings, check.name), rule.asked)};
}

// What an office has off is no cause either, so that it hides nothing else.
std::vector<Finding> run_all(const ProofContext& context, std::vector<LeftOut>& left_out) {
    std::vector<Finding> findings;
    const bool english = is_english(context.resume);
    for (const Check* check : all_checks()) {
        if (!english && !reads_any_language(check->name)) continue;
        const std::size_t before = findings.size();
        check->run(context, findings);
        const office::CheckRule* rule = rule_of(context, check->name);
        if (rule && !rule->weight) {
            const std::size_t count = findings.size() - before;
            findings.resize(before);
            if (count > 0) left_out.push_back(leave_out(*check, *rule, *context.office, count));
            continue;
        }
        for (std::size_t i = before; i < findings.size(); ++i) {
            findings[i].check = check->name;
            if (rule) weigh_by_office(*check, *rule, *context.office, findings[i]);
        }
    }
    keep_one_of_a_cause(findings);
    return findings;
}

using Accepted = std::map<std::string_view, const model::Acceptance*>;

// Whether the résumé sets it aside; an office may keep it from that, which is said.
bool is_set_aside(const ProofContext& context, const Accepted& accepted, Finding& finding) {
    const auto found = accepted.find(finding.check);
    if (found == accepted.end()) return false;
    const auto& kept = context.rules().not_acceptable;
    const auto asked = kept.find(finding.check);
    if (asked == kept.end()) return true;
    add_office(finding, context.office->says(fill<messages::office_keeps>(), asked->second));
    return false;
}

// An acceptance of what nothing was looked for in is no idle one.
bool is_not_looked_at(const ProofContext& context, std::string_view name) {
    const office::CheckRule* rule = rule_of(context, name);
    return !context.everything || (rule && !rule->weight) ||
           (!is_english(context.resume) && !reads_any_language(name)) ||
           (!context.typeset && looks_at_page(*find_check(name)));
}

// A reminder that an office weighs is a finding.
bool is_reminder(const ProofContext& context, const Finding& finding) {
    return find_check(finding.check)->reminder && !rule_of(context, finding.check);
}

void sort_by_place(Proof& proof) {
    std::ranges::stable_sort(proof.findings, {}, finding_place);
    std::ranges::stable_sort(proof.reminders, {}, finding_place);
    std::ranges::stable_sort(proof.set_aside, {},
                             [](const SetAside& one) { return finding_place(one.finding); });
}

}

std::span<const Check> acceptance_checks() {
    return acceptance_table;
}

namespace {

std::vector<const Check*> listed_checks() {
    std::vector<const Check*> all;
    for (const auto& group :
         {contact_checks(),  person_checks(),    section_checks(),  education_checks(),
          date_checks(),     entry_checks(),     claim_checks(),    page_claim_checks(),
          role_checks(),     study_checks(),     wording_checks(),  letter_checks(),
          sentence_checks(), skill_checks(),     interest_checks(), consistency_checks(),
          spelling_checks(), page_checks(),      privacy_checks(),  discretion_checks(),
          office_checks(),   acceptance_checks()})
        for (const Check& check : group)
            all.push_back(&check);
    return all;
}

}

const std::vector<const Check*>& all_checks() {
    static const std::vector<const Check*> all = listed_checks();
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
    const auto& all = all_checks();
    const auto found = std::ranges::find(all, name, &Check::name);
    return found == all.end() ? nullptr : *found;
}

const office::Rules& ProofContext::rules() const {
    static const office::Rules none;
    return office ? office->at(*resume.settings.stage) : none;
}

std::size_t check_number(std::string_view name) {
    const auto& all = all_checks();
    return static_cast<std::size_t>(std::ranges::find(all, name, &Check::name) - all.begin());
}

Weight weight_of(const Finding& finding) {
    if (finding.weight) return *finding.weight;
    const Check* check = find_check(finding.check);
    return check ? check->weight : Weight::consider;
}

Proof run_proof(const ProofContext& context) {
    Proof proof;
    Accepted accepted;
    std::map<std::string_view, bool> used;
    const auto& acceptances = context.resume.settings.accept;
    for (const model::Acceptance& acceptance : acceptances)
        if (!find_check(acceptance.check))
            report_unknown(acceptance, proof.findings);
        else if (const auto [first, is_new] = accepted.emplace(acceptance.check, &acceptance);
                 !is_new)
            report_twice(acceptance, *first->second, proof.findings);
    for (Finding& finding : run_all(context, proof.left_out)) {
        used[finding.check] = true;
        if (is_set_aside(context, accepted, finding))
            proof.set_aside.push_back({std::move(finding), accepted.at(finding.check)});
        else
            (is_reminder(context, finding) ? proof.reminders : proof.findings)
                .push_back(std::move(finding));
    }
    for (const auto& [name, acceptance] : accepted)
        if (!used.contains(name) && !is_not_looked_at(context, name) &&
            !is_school_of_first_year(name, context.resume))
            report<messages::idle_acceptance>(proof.findings, acceptance->place, in_quotes(name))
                .check = idle_name;
    sort_by_place(proof);
    return proof;
}

}
