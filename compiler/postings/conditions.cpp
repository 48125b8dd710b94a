#include "compiler/postings/conditions.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/english/sentence.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/phrase_roles.hpp"
#include "compiler/postings/said_phrases.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace quoin::postings {

namespace {

constexpr std::string_view surely = "surely ";

// What is given or only told is none: paid holidays, equal opportunity.
bool may_make_any(const Statement& statement) {
    return statement.left_out != LeftOut::pay && statement.left_out != LeftOut::equality &&
           statement.left_out != LeftOut::not_asked;
}

class ConditionReader {
public:
    explicit ConditionReader(const Statement& statement)
        : lower_(comparable(statement.text)), firm_(says_any(lower_, List::said_as_condition)),
          work_(statement.headed && statement.standing == Standing::duties),
          asks_(firm_ || (!work_ && (statement.item || statement.standing <= Standing::preferred))),
          any_((firm_ || (statement.item && !statement.left_out)) &&
               !says_any(lower_, List::said_of_knowing)),
          read_(may_make_any(statement) && !lower_.starts_with("no ")) {} // no nights

    std::vector<std::string_view> abouts() const {
        return read_ ? abouts_of(lower_) : std::vector<std::string_view>{};
    }

    // Not only tells: gives personal care on the evening shift.
    bool asks() const { return asks_; }

    // Among the duties checks are run and journeys planned for others too.
    std::vector<std::string_view> abouts_of(std::string_view clause) const {
        const bool sure = !says_any(clause, List::said_of_knowing);
        std::vector<std::string_view> abouts;
        each_listed(lines_of(List::conditions), [&](std::string_view phrase, std::string_view as) {
            const bool surely_one = as.starts_with(surely);
            if (surely_one) as.remove_prefix(surely.size());
            const bool counts =
                work_ && !firm_ ? surely_one && is_of_shifts(as) : (surely_one && sure) || any_;
            if (counts && !is_one_of(as, abouts) && has_phrase(clause, phrase))
                abouts.push_back(as);
        });
        return abouts;
    }

private:
    static bool is_of_shifts(std::string_view about) {
        return about == "hours" || about == "the body";
    }

    std::string lower_;
    bool firm_, work_, asks_, any_, read_;
};

// Where a clause begins that may say another thing: and to splice, and a license, climb ladders.
bool begins_clause(const english::Sentence& sentence, const std::vector<Role>& roles,
                   std::size_t i) {
    namespace wc = english::word_class;
    using Kind = english::TokenKind;
    const Kind before = sentence.token(i - 1).kind;
    if (before == Kind::stop) return true;
    if (before == Kind::comma)
        return !sentence.is(i, wc::preposition) || sentence.is_word(i, {"to"});
    return sentence.is_word(i - 1, {"and", "or", "&"}) &&
           (roles[i] == Role::verb || sentence.is(i, wc::determiner | wc::be | wc::have) ||
            sentence.is_word(
                i, {"to", "able", "ability", "must", "can", "know", "knowledge", "experience"}));
}

}

std::vector<Condition> conditions_in(std::span<const Statement> statements) {
    std::vector<Condition> conditions;
    for (const Statement& statement : statements) {
        const auto abouts = ConditionReader(statement).abouts();
        if (!abouts.empty())
            conditions.push_back({joined(abouts, ", "), statement.text, statement.line});
    }
    return conditions;
}

std::vector<english::Extent> clauses_of_conditions(const Statement& statement) {
    const ConditionReader reader(statement);
    std::vector<english::Extent> clauses;
    if (!reader.asks() || reader.abouts().empty()) return clauses;
    const english::Sentence sentence(statement.text, {}, english::Lexicon{});
    const std::vector<Role> roles = roles_in(sentence, Opens::with_thing);
    for (std::size_t first = 0, i = 1; first < sentence.size(); first = i++) {
        while (i < sentence.size() && !begins_clause(sentence, roles, i))
            ++i;
        const english::Extent clause = sentence.extent(first, i - 1);
        const std::string_view text = statement.text;
        if (!reader.abouts_of(comparable(text.substr(clause.offset, clause.length))).empty())
            clauses.push_back(clause);
    }
    return clauses;
}

}
