// What an interview says at a question, and when it is asked for help.
#include "compiler/base/ascii.hpp"
#include "compiler/interview/choices.hpp"
#include "compiler/interview/interview.hpp"
#include "compiler/interview/messages.hpp"
#include "compiler/interview/questions.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <fmt/format.h>

namespace quoin::interview {

// A section's title above its first question; what further entries are called, above theirs.
std::string Interview::opening() const {
    const Spot& spot = spots_[at_];
    if (spot.step > 0 || spot.line > 0 || is_choice()) return {};
    return spot.entry == 0 ? fmt::format("\n{}\n", section().title) : std::string{};
}

std::string Interview::tense() const {
    const Spot dates{spots_[at_].section, spots_[at_].entry, 0, 0};
    Spot at = dates;
    for (; at.step < section().labels.size(); ++at.step)
        if (label_at(plan_, at) == "dates") break;
    if (label() != bullet_label || at.step == section().labels.size()) return {};
    const auto goes_on = judge_->goes_on(answer_at(plan_, draft_, at));
    if (!goes_on) return {};
    return fmt::format("  {}\n", *goes_on ? fill<messages::tense_goes_on>()
                                          : fill<messages::tense_has_ended>());
}

std::string Interview::asks() const {
    const Question question = question_at(section(), label(), field());
    const Spot& spot = spots_[at_];
    const std::string now = stands();
    std::string text = opening() + '\n';
    const bool further = spot.line > 0 || (spot.entry > 0 && spot.step == 0);
    if (further && now.empty()) return text + fill<messages::another>(question.goes_in) + '\n';
    text += capitalised(std::string(question.goes_in)) + ".\n";
    if (is_choice())
        text += choices_for(label()).listed();
    else
        text += fmt::format("  {}\n", fill<messages::for_example>(question.example));
    if (spot.entry == 0 && spot.line == 0) text += fmt::format("  {}\n", question.why());
    if (now.empty()) text += tense();
    if (!now.empty()) text += fmt::format("  {}\n", fill<messages::it_is_now>(now));
    return text;
}

std::string Interview::prompt() const {
    return fmt::format("{}: ", label());
}

Reply Interview::explain() const {
    const Question question = question_at(section(), label(), field());
    return {
        fmt::format("  {}\n{}  {}\n", question.why(), help_on(question), fill<messages::signs>())};
}

Reply Interview::list() const {
    const std::string there = answers_alone(draft_source(plan_, draft_));
    return {there.empty() ? fmt::format("  {}\n", fill<messages::nothing_there>()) : there};
}

}
