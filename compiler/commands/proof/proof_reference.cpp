// What `--list`, `--explain` and the reference page say, all from the table of checks.
#include "compiler/commands/proof/proof_report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace quoin::commands {

namespace {

constexpr const char* introduction =
    "# What proof checks\n"
    "\n"
    "`quoin proof draft.resume` reads a résumé as a career adviser would and says what it finds, "
    "each\nat its place. This page is printed by `quoin proof --reference`; `quoin proof --explain "
    "NAME`\nprints what it says of one check.\n"
    "\n"
    "A finding weighs **must** (a reader or a portal will stumble), **should** (advisers will ask "
    "for\nit) or **consider** (a matter of judgement). Where a check cannot be sure it says "
    "nothing. A\nrésumé sets a check aside with its name and a reason, and the report says so:\n"
    "\n"
    "```\naccept: high-school (first term at college)\n```\n"
    "\n"
    "`quoin proof --mend` makes the mends that change form alone: "
    "spaces, doubled words, dashes, full\nstops, forms of dates, names of degrees.\n";

std::string in_capitals(std::string_view group) {
    std::string title(group);
    if (title[0] >= 'a' && title[0] <= 'z') title[0] = static_cast<char>(title[0] - 32);
    return title;
}

std::string reference_section(const advice::Check& check) {
    std::string text = fmt::format("\n### {}\n\n**{}** · {} {}\n\n", check.name,
                                   name_of(check.weight), check.looks_at, check.why);
    if (!check.caution.empty()) text += fmt::format("{}\n\n", check.caution);
    return text + fmt::format("- not so: `{}`\n- but so: `{}`\n- source: {}\n", check.bad,
                              check.good, check.source);
}

}

std::string list_of_checks() {
    std::string text;
    std::string_view group;
    for (const advice::Check* check : advice::all_checks()) {
        if (check->group != group)
            text += fmt::format("{}{}\n", text.empty() ? "" : "\n", check->group);
        group = check->group;
        text += fmt::format("  {:<20} {:<9} {}\n", check->name, name_of(check->weight),
                            check->looks_at);
    }
    return text;
}

std::string explanation_of(const advice::Check& check) {
    std::string text = fmt::format("{} ({}, {})\n\n  {}\n  {}\n\n  not so:  {}\n  but so:  {}\n"
                                   "  source:  {}\n",
                                   check.name, name_of(check.weight), check.group, check.looks_at,
                                   check.why, check.bad, check.good, check.source);
    if (!check.caution.empty()) text += fmt::format("  caution: {}\n", check.caution);
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

}
