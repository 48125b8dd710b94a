#include "compiler/postings/never_terms.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/postings/conditions.hpp"
#include "compiler/postings/kinds.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/said_phrases.hpp"

#include <algorithm>
#include <iterator>
#include <string>

namespace quoin::postings {

namespace {

// A background check, references: of an item that asks, no term; among the duties, work.
bool is_condition(const Phrase& phrase) {
    std::string end;
    for (std::size_t i = phrase.lower.size(); i-- > 0;) {
        end = phrase.lower[i] + (end.empty() ? "" : " ") + end;
        if (said_of(end, lines_of(List::never_terms))) return true;
    }
    return false;
}

// With what stands within them: TB of a TB skin test.
void drop_those_listed(std::vector<Phrase>& phrases) {
    std::vector<Phrase> conditions;
    std::ranges::copy_if(phrases, std::back_inserter(conditions), is_condition);
    std::erase_if(phrases, [&](const Phrase& phrase) {
        return is_condition(phrase) || std::ranges::any_of(conditions, [&](const Phrase& outer) {
                   return is_within(phrase, outer);
               });
    });
}

// A vaccination, a clean driving record: what a page may name all the same.
bool may_be_named(const Phrase& phrase, const Statement& statement) {
    const Kind kind = kind_of(phrase, statement);
    return (kind != Kind::hard_skill && kind != Kind::soft_skill) ||
           says_any(lower_case(phrase.words), List::conditions_to_name);
}

// Buddy of `lift 50 lb boats with a buddy`
void drop_what_they_are_of(std::vector<Phrase>& phrases, const Statement& statement) {
    const std::vector<english::Extent> clauses = clauses_of_conditions(statement);
    std::erase_if(phrases, [&](const Phrase& phrase) {
        const auto after =
            std::ranges::upper_bound(clauses, phrase.extent.offset, {}, &english::Extent::offset);
        if (after == clauses.begin()) return false;
        const english::Extent& clause = *std::prev(after);
        return phrase.extent.offset < clause.offset + clause.length &&
               !may_be_named(phrase, statement);
    });
}

}

bool is_within(const Phrase& inner, const Phrase& outer) {
    const std::size_t begin = outer.extent.offset, end = begin + outer.extent.length;
    return outer.extent.length > inner.extent.length && begin <= inner.extent.offset &&
           inner.extent.offset + inner.extent.length <= end;
}

void drop_conditions(std::vector<Phrase>& phrases, const Statement& statement) {
    const bool work = statement.headed && statement.standing == Standing::duties;
    if (!work) drop_those_listed(phrases);
    drop_what_they_are_of(phrases, statement);
}

}
