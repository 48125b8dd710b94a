// Weights of a logistic regression over the lines of tests/advice: slips that are words against all
// other words there that may be typed for another.
#include "compiler/english/context_odds.hpp"

#include <algorithm>

namespace quoin::english {
namespace {

namespace weight {
constexpr double prior = -4.8;
constexpr double word_before = 1.0, word_behind = 0.86, frequency = 0.37;
constexpr double near_meant = 0.72, near_typed = -0.98;
constexpr double short_word = -2.77, opens = -1.05, ends = -0.89, capital = -1.02, both = -1.57;
constexpr double listed = 1.62, alike = 0.83, swapped = 0.32;
}

// So far each goes, in logarithms.
constexpr double least_beside = -6, most_beside = 8, most_frequent = 6, most_near = 8;

}

ContextOdds::ContextOdds(const Sentence& sentence, const WordContexts& contexts)
    : sentence_(sentence), contexts_(contexts), number_(contexts.number_of("five")),
      end_(contexts.number_of("</s>")) {
    for (std::size_t i = 0; i < sentence.size(); ++i)
        if (const auto word = contexts.number_of(sentence.word(i))) all_.push_back(*word);
    std::ranges::sort(all_);
    all_.erase(std::unique(all_.begin(), all_.end()), all_.end());
}

// Of a word with hyphens the part that stands next: four-week.
std::optional<ContextOdds::Number> ContextOdds::number_at(std::size_t i, bool from_left) const {
    if (sentence_.is_figure(i)) return number_;
    if (sentence_.token(i).kind != TokenKind::word) return contexts_.number_of("and"); // &
    std::string_view word = sentence_.word(i);
    if (const auto whole = contexts_.number_of(word)) return whole;
    const std::size_t hyphen = from_left ? word.rfind('-') : word.find('-');
    if (hyphen == word.npos) return std::nullopt;
    word = from_left ? word.substr(hyphen + 1) : word.substr(0, hyphen);
    return contexts_.number_of(word);
}

namespace {

// Signs that a voice does not stop at.
bool is_passed_over(const Sentence& sentence, std::size_t i) {
    const TokenKind kind = sentence.token(i).kind;
    return i < sentence.size() && sentence.classes(i) == 0 &&
           (kind == TokenKind::comma || kind == TokenKind::quote || kind == TokenKind::sign);
}

bool is_stop(const Sentence& sentence, std::size_t i) {
    const TokenKind kind = sentence.token(i).kind;
    return kind == TokenKind::stop || kind == TokenKind::open || kind == TokenKind::close;
}

}

ContextOdds::Beside ContextOdds::before(std::size_t i) const {
    do
        --i;
    while (is_passed_over(sentence_, i));
    if (is_stop(sentence_, i)) return {std::nullopt, true}; // or past the beginning
    return {number_at(i, true), false};
}

ContextOdds::Beside ContextOdds::behind(std::size_t i) const {
    do
        ++i;
    while (is_passed_over(sentence_, i));
    if (is_stop(sentence_, i)) return {end_, true};
    return {number_at(i, false), false};
}

double ContextOdds::nearness(Number word) const {
    double sum = 0;
    for (const Number other : all_)
        sum += std::max(0.0, contexts_.nearness(word, other) - 1);
    return std::min(sum, most_near);
}

double ContextOdds::of(std::size_t i, Number typed, Number meant, std::uint8_t why) const {
    const double frequency = contexts_.likelihood(meant) - contexts_.likelihood(typed);
    double odds =
        weight::prior + weight::frequency * std::clamp(frequency, least_beside, most_frequent);
    const Beside left = before(i), right = behind(i);
    const auto behind_word = [&](Number word, Number other) {
        return contexts_.likelihood_behind(word, other);
    };
    if (left.word) {
        const double more = behind_word(*left.word, meant) - behind_word(*left.word, typed);
        odds += weight::word_before * std::clamp(more - frequency, least_beside, most_beside);
    }
    if (right.word) {
        const double more = behind_word(meant, *right.word) - behind_word(typed, *right.word);
        odds += weight::word_behind * std::clamp(more, -most_beside, most_beside);
    }
    odds += weight::near_meant * nearness(meant) + weight::near_typed * nearness(typed);
    if (sentence_.word(i).size() < 4) odds += weight::short_word;
    if (left.edge) odds += weight::opens;
    if (right.edge) odds += weight::ends;
    if (!left.edge && is_capital(sentence_.token(i))) odds += weight::capital;
    if (std::ranges::binary_search(all_, meant)) odds += weight::both;
    if ((why & WordContexts::is_listed) != 0) odds += weight::listed;
    if ((why & WordContexts::sounds_alike) != 0) odds += weight::alike;
    if ((why & WordContexts::has_letters_swapped) != 0) odds += weight::swapped;
    return odds;
}

std::vector<LikelyWord> ContextOdds::at(std::size_t i) const {
    std::vector<LikelyWord> likely;
    const auto typed = contexts_.number_of(sentence_.word(i));
    if (!typed) return likely;
    const WordContexts::Meant meant = contexts_.meant_for(*typed);
    for (std::size_t k = 0; k < meant.words.size(); ++k)
        likely.push_back(
            {contexts_.word(meant.words[k]), of(i, *typed, meant.words[k], meant.why[k])});
    return likely;
}

}
