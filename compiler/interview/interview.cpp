#include "compiler/interview/interview.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/encoding.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/interview/choices.hpp"
#include "compiler/interview/draft_source.hpp"
#include "compiler/interview/messages.hpp"
#include "compiler/interview/questions.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

namespace quoin::interview {

namespace {

std::string line_of(std::string_view text) {
    return text.empty() ? std::string{} : fmt::format("  {}\n", text);
}

bool is_control(char c) {
    return static_cast<unsigned char>(c) < ' ' || c == '\x7f';
}

}

Interview::Interview(Draft draft, const Spot& next, const Judge& judge)
    : draft_(std::move(draft)), plan_(plan_for(draft_)), judge_(&judge) {
    go_to(next);
}

Spot Interview::spot() const {
    return is_done() ? Spot{plan_.size(), 0, 0, 0} : spots_[at_];
}

Reply Interview::take(std::string_view typed) {
    const std::string text = tidy(typed);
    if (text.empty()) return enter();
    if (text == "?") return explain();
    if (text == "<") return go_back();
    if (text == "=") return list();
    if (text == ".") return {{}, Then::leave, false};
    if (text == ">" || text == ">>") return skip(text == ">>");
    if (text == "-") return take_out();
    if (text == "!") return keep_as_it_is();
    return is_choice() ? choose(text) : answer(text);
}

// Without what people type out of habit: blanks around it, a dash before a bullet, its label.
std::string Interview::tidy(std::string_view typed) const {
    std::string all(typed);
    std::ranges::replace(all, '\t', ' ');
    std::string_view text = trimmed(all, " \r\n");
    for (const std::string_view dash : {"- ", "• ", "* "})
        if (label() == bullet_label && text.starts_with(dash))
            text = trimmed(text.substr(dash.size()));
    const std::string own = fmt::format("{}:", label());
    if (text.starts_with(own)) text = trimmed(text.substr(own.size()));
    return std::string(text);
}

Reply Interview::enter() {
    refused_.clear();
    const Spot spot = spots_[at_];
    const bool ends = stands().empty() && spot.step == 0 && section().has_entries();
    return go_to(ends ? Spot{spot.section + 1, 0, 0, 0}
                      : Spot{spot.section, spot.entry, spot.step, spot.line + 1});
}

Reply Interview::go_to(Spot least) {
    refused_.clear();
    spots_ = all_spots(plan_, draft_);
    at_ = static_cast<std::size_t>(std::ranges::lower_bound(spots_, least) - spots_.begin());
    return {{}, is_done() ? Then::finish : Then::go_on, true};
}

Reply Interview::go_back() {
    if (at_ == 0) return {line_of(fill<messages::first_question>())};
    return go_to(spots_[at_ - 1]);
}

Reply Interview::skip(bool all) {
    return go_to({all ? plan_.size() : spots_[at_].section + 1, 0, 0, 0});
}

Reply Interview::take_out() {
    if (stands().empty()) return enter();
    if (is_choice()) return {line_of(fill<messages::nothing_to_keep>())};
    const Spot spot = spots_[at_];
    put_answer(plan_, draft_, spot, {});
    const bool gone = asks_for_lines(label()) || (spot.step == 0 && section().has_entries());
    Reply reply = go_to({spot.section, spot.entry, spot.step, spot.line + (gone ? 0 : 1)});
    reply.says = line_of(fill<messages::taken_out>());
    return reply;
}

Reply Interview::keep_as_it_is() {
    if (refused_.empty()) return {line_of(fill<messages::nothing_to_keep>())};
    return accept(std::exchange(refused_, {}));
}

Reply Interview::accept(std::string text) {
    const Spot spot = spots_[at_];
    put_answer(plan_, draft_, spot, std::move(text));
    return go_to({spot.section, spot.entry, spot.step, spot.line + 1});
}

Reply Interview::choose(std::string_view text) {
    const Spot spot = spots_[at_];
    const Choices known = choices_for(label());
    const auto chosen = known.chosen(text);
    if (!chosen) return {line_of(known.refusal(text))};
    put_answer(plan_, draft_, spot, std::string(*chosen));
    plan_ = plan_for(draft_);
    return go_to({spot.section, spot.entry, spot.step, spot.line + 1});
}

// What no answer can be; it is not to be kept either.
std::optional<std::string> Interview::fault_of_form(std::string_view text) const {
    if (std::ranges::any_of(text, is_control)) return fill<messages::unprinted_signs>();
    if (!decode(text).faults.empty()) return fill<messages::not_utf_8>();
    if (characters_in(text) > most_characters) return fill<messages::too_long>(most_characters);
    if (label() != more_groups) return std::nullopt;
    const std::size_t colon = text.find(':');
    if (colon == text.npos)
        return fill<messages::group_needs_colon>(in_quotes(text),
                                                 question_at(section(), label(), field()).example);
    const trade::Word* known = trade::find_word(lower_case(trimmed(text.substr(0, colon))));
    if (known && (known->heading || std::holds_alternative<trade::Directive>(known->means)))
        return fill<messages::is_set>();
    return std::nullopt;
}

Reply Interview::answer(std::string text) {
    refused_.clear();
    if (const auto fault = fault_of_form(text)) return {line_of(*fault)};
    Draft tried = draft_;
    put_answer(plan_, tried, spots_[at_], text);
    const Judgement judgement = judge_->judge(plan_, tried, spots_[at_]);
    if (judgement.said.empty() && judgement.readable) return accept(std::move(text));
    return refuse(judgement, std::move(text));
}

Reply Interview::refuse(const Judgement& judgement, std::string text) {
    refused_ = std::move(text);
    std::string says;
    for (const std::string& one : judgement.said)
        says += line_of(capitalised(one));
    says += line_of(judgement.readable ? fill<messages::type_again>()
                                       : fill<messages::type_again_or_comment>());
    return {says};
}

}
