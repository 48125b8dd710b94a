#include "compiler/postings/conditions.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/said_phrases.hpp"

#include <algorithm>
#include <string_view>

namespace quoin::postings {

namespace {

constexpr std::string_view surely = "surely ";

// What is given or only told is none: paid holidays, equal opportunity.
bool may_make_any(const Statement& statement) {
    return statement.left_out != LeftOut::pay && statement.left_out != LeftOut::equality &&
           statement.left_out != LeftOut::not_asked;
}

std::vector<std::string_view> abouts_of(std::string_view lower, bool any) {
    std::vector<std::string_view> abouts;
    each_listed(lines_of(List::conditions), [&](std::string_view phrase, std::string_view about) {
        const bool sure = about.starts_with(surely);
        if (sure) about.remove_prefix(surely.size());
        if ((sure || any) && !is_one_of(about, abouts) && has_phrase(lower, phrase))
            abouts.push_back(about);
    });
    return abouts;
}

}

std::vector<Condition> conditions_in(std::span<const Statement> statements) {
    std::vector<Condition> conditions;
    for (const Statement& statement : statements) {
        if (!may_make_any(statement)) continue;
        const std::string lower = comparable(statement.text);
        if (lower.starts_with("no ")) continue; // no nights, no weekends
        const bool any =
            says_any(lower, List::said_as_condition) || (statement.item && !statement.left_out);
        const auto abouts = abouts_of(lower, any);
        if (!abouts.empty())
            conditions.push_back({joined(abouts, ", "), statement.text, statement.line});
    }
    return conditions;
}

}
