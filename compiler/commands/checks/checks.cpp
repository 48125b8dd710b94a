// The list, the explanations and the reference page, all from the table of checks.
#include "compiler/commands/checks/checks.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/data_places.hpp"
#include "compiler/commands/checks/office_effect.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/office_rules.hpp"
#include "compiler/commands/printing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

namespace quoin::commands {

namespace {

constexpr const char* introduction =
    "# What proof checks\n"
    "\n"
    "`quoin proof draft.resume` reads a résumé as a career adviser would and says what it finds, "
    "each\nat its place. This page is printed by `quoin checks --reference`; `quoin checks NAME` "
    "prints what\nit says of one check.\n"
    "\n"
    "A finding weighs **must** (a reader or a portal will stumble), **should** (advisers will ask "
    "for\nit) or **consider** (a matter of judgement). Where a check cannot be sure it says "
    "nothing. A\nrésumé sets a check aside with its name and a reason, and the report says so:\n"
    "\n"
    "```\naccept: high-school (first term at college)\n```\n"
    "\n"
    "`quoin mend draft.resume` makes the mends that change form alone: "
    "spaces, doubled words, dashes, full\nstops, forms of dates, names of degrees.\n";

std::string in_capitals(std::string_view group) {
    std::string title(group);
    title = capitalised(std::move(title));
    return title;
}

std::string reference_section(const advice::Check& check) {
    std::string text = fmt::format("\n### {}\n\n**{}** · {} {}\n\n", check.name,
                                   name_of(check.weight), check.looks_at, check.why);
    if (!check.caution.empty()) text += fmt::format("{}\n\n", check.caution);
    return text + fmt::format("- not so: `{}`\n- but so: `{}`\n- source: {}\n", check.bad,
                              check.good, check.source);
}

ExitCode refuse_name(const std::string& name) {
    std::vector<std::string_view> names;
    for (const advice::Check* known : advice::all_checks())
        names.push_back(known->name);
    return wrong_use("checks",
                     fill<messages::no_check>(in_quotes(name), did_you_mean(name, names)));
}

}

std::string list_of_checks(const office::Office* office) {
    std::string text;
    std::string_view group;
    for (const advice::Check* check : advice::all_checks()) {
        if (check->group != group)
            text += fmt::format("{}{}\n", text.empty() ? "" : "\n", check->group);
        group = check->group;
        text += fmt::format("  {:<20} {:<9} {}\n", check->name, name_of(check->weight),
                            check->looks_at);
        if (office) text += effect_on(*check, *office);
    }
    return office ? text + numbers_of(*office) + asked_by(*office) : text;
}

std::string explanation_of(const advice::Check& check, const office::Office* office) {
    std::string text = fmt::format("{} ({}, {})\n\n  {}\n  {}\n\n  not so:  {}\n  but so:  {}\n"
                                   "  source:  {}\n",
                                   check.name, name_of(check.weight), check.group, check.looks_at,
                                   check.why, check.bad, check.good, check.source);
    if (!check.caution.empty()) text += fmt::format("  caution: {}\n", check.caution);
    if (office) text += effect_on(check, *office);
    return text + fmt::format("\nTo set it aside, write in the heading: accept: {} (your reason)\n",
                              check.name);
}

std::string reference_page() {
    std::string text = introduction;
    std::string_view group;
    for (const advice::Check* check : advice::all_checks()) {
        if (check->group != group) text += fmt::format("\n## {}\n", in_capitals(check->group));
        group = check->group;
        text += reference_section(*check);
    }
    return text;
}

ExitCode run_checks(const ChecksRequest& request) {
    advice::Offices offices(themes_in(data_folder()), request.office);
    if (!request.reference && !read_offices(offices, {"-"}, "checks")) return ExitCode::wrong_use;
    const office::Office* office = request.reference ? nullptr : offices.of({});
    std::string text = request.reference       ? reference_page()
                       : request.names.empty() ? list_of_checks(office)
                                               : std::string{};
    for (const std::string& name : request.names) {
        const advice::Check* check = advice::find_check(name);
        if (!check) return refuse_name(name);
        text += (text.empty() ? "" : "\n") + explanation_of(*check, office);
    }
    return print_output("checks", text) ? ExitCode::done : ExitCode::errors;
}

}
