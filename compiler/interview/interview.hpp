// The conversation: which question stands, what is said at it, and what an answer leads to. It
// reads and writes nothing itself: lines go in, words come out.
#pragma once

#include "compiler/interview/judge.hpp"
#include "compiler/interview/plan.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace quoin::interview {

constexpr std::size_t most_characters = 1000; // of an answer

enum class Then { go_on, leave, finish };

struct Reply {
    std::string says; // lines, or nothing
    Then then = Then::go_on;
    bool moved = false; // to another question, or back to this one with something to be kept
};

class Interview {
public:
    // Begins, or goes on, at the first question that is not before `next`.
    Interview(Draft draft, const Spot& next, const Judge& judge);

    bool is_done() const { return spots_.empty() || at_ >= spots_.size(); }
    std::string asks() const; // all that stands above the line of the answer
    std::string prompt() const;
    Reply take(std::string_view typed);

    const Draft& draft() const { return draft_; }
    const Plan& plan() const { return plan_; }
    Spot spot() const; // of the question that stands; behind all when it is done

private:
    Reply answer(std::string text);
    Reply choose(std::string_view text); // of stages or fields
    Reply keep_as_it_is();
    Reply take_out();
    Reply go_back();
    Reply skip(bool all);
    Reply enter();
    Reply explain() const;
    Reply list() const;
    Reply accept(std::string text);
    Reply refuse(const Judgement& judgement, std::string text);
    Reply go_to(Spot least); // the first question that is not before it
    std::optional<std::string> fault_of_form(std::string_view text) const;
    std::string tidy(std::string_view typed) const;

    const PlannedSection& section() const { return plan_.at(spots_[at_].section); }
    std::string_view label() const { return label_at(plan_, spots_[at_]); }
    std::string_view field() const { return draft_.value(choice_section, "field"); }
    std::string stands() const { return answer_at(plan_, draft_, spots_[at_]); }
    bool is_choice() const { return section().name == choice_section; }
    std::string choices() const;
    std::string opening() const; // of a section or of a further entry
    std::string tense() const;

    Draft draft_;
    Plan plan_;
    std::vector<Spot> spots_;
    std::size_t at_ = 0;
    const Judge* judge_;  // a pointer, so that an interview can be begun again
    std::string refused_; // what '!' keeps
};

}
