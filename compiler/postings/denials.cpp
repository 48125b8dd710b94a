#include "compiler/postings/denials.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/said_phrases.hpp"

#include <algorithm>
#include <string>

namespace quoin::postings {

namespace {

// No degree needed; no prior knowledge of boats is expected.
bool waives(std::string_view clause) {
    constexpr std::string_view waived[] = {"needed", "required", "necessary", "expected"};
    return trimmed(clause).starts_with("no ") &&
           std::ranges::any_of(waived, [&](std::string_view w) { return has_phrase(clause, w); });
}

std::size_t first_of(std::string_view lower, List list) {
    std::size_t first = lower.npos;
    for (const std::string_view phrase : listed(lines_of(list)))
        first = std::min(first, find_phrase(lower, phrase));
    return first;
}

// What stands in parentheses denies nothing of what is around them.
std::string without_asides(std::string_view said) {
    std::string text;
    for (std::size_t at = 0; at < said.size();) {
        const std::size_t open = std::min(said.find('(', at), said.size());
        text += said.substr(at, open - at);
        const std::size_t close = said.find(')', open);
        at = close == said.npos ? said.size() : close + 1;
    }
    return text;
}

// Nor is a degree needed; CDL not required; not: two years of work, where doesn't matter, which
// asks before, and a degree preferred but not required.
bool denies(std::string_view said) {
    const std::string clause = without_asides(said);
    if (waives(clause)) return true;
    std::size_t first = first_of(clause, List::said_not_asked);
    if (!says_preferred(clause)) first = std::min(first, first_of(clause, List::said_not_required));
    return first != clause.npos &&
           !says_any(std::string_view(clause).substr(0, first), List::said_asking);
}

// Where a clause that is turned against the one before begins.
std::vector<std::size_t> turns_of(std::string_view lower) {
    std::vector<std::size_t> turns{0};
    for (const std::string_view turn : {"but", "though", "although", "however"})
        if (const std::size_t at = find_phrase(lower, turn); at != lower.npos && at > 0)
            turns.push_back(at);
    turns.push_back(lower.size());
    std::ranges::sort(turns);
    return turns;
}

bool surely_asks(std::string_view clause) {
    return says_any(clause, List::said_surely_required) && !denies(clause);
}

}

bool asks_for_nothing(std::string_view lower) {
    if (!denies(lower)) return false;
    const std::vector<std::size_t> turns = turns_of(lower);
    for (std::size_t i = 0; i + 1 < turns.size(); ++i)
        if (turns.size() > 2 && surely_asks(lower.substr(turns[i], turns[i + 1] - turns[i])))
            return false;
    return true;
}

Denials::Denials(std::string_view sentence) {
    const std::string lower = lower_case(sentence);
    const std::vector<std::size_t> turns = turns_of(lower);
    for (std::size_t i = 0; turns.size() > 2 && i + 1 < turns.size(); ++i)
        clauses_.push_back({turns[i + 1], denies(lower.substr(turns[i], turns[i + 1] - turns[i]))});
}

bool Denials::at(std::size_t byte) const {
    const auto clause = std::ranges::upper_bound(clauses_, byte, {}, &Clause::end);
    return clause != clauses_.end() && clause->denies;
}

}
