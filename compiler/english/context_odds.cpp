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
    : sentence_(sentence), contexts_(contexts) {
    numbers_.reserve(sentence.size());
    for (std::size_t i = 0; i < sentence.size(); ++i) {
        numbers_.push_back(contexts.number_of(sentence.word(i)));
        if (numbers_[i]) all_.push_back(*numbers_[i]);
    }
    std::ranges::sort(all_);
    all_.erase(std::unique(all_.begin(), all_.end()), all_.end());
}

// Of a word with hyphens the part that stands next: four-week.
std::optional<ContextOdds::Number> ContextOdds::number_at(std::size_t i, bool from_left) const {
    if (sentence_.is_figure(i)) return contexts_.figure();
    if (sentence_.token(i).kind != TokenKind::word) return contexts_.joint(); // &
    if (numbers_[i]) return numbers_[i];
    const std::string_view word = sentence_.word(i);
    const std::size_t hyphen = from_left ? word.rfind('-') : word.find('-');
    if (hyphen == word.npos) return std::nullopt;
    return contexts_.number_of(from_left ? word.substr(hyphen + 1) : word.substr(0, hyphen));
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
    if (is_stop(sentence_, i)) return {contexts_.end(), true};
    return {number_at(i, false), false};
}

double ContextOdds::nearness(Number word) const {
    double sum = 0;
    for (const Number other : all_)
        sum += std::max(0.0, contexts_.nearness(word, other) - 1);
    return std::min(sum, most_near);
}

// By how often it stands at all, and beside the words there.
double ContextOdds::beside(const Spot& spot, Number meant) const {
    const double frequency = contexts_.likelihood(meant) - contexts_.likelihood(spot.typed);
    double odds =
        weight::prior + weight::frequency * std::clamp(frequency, least_beside, most_frequent);
    const auto behind_word = [&](Number word, Number other) {
        return contexts_.likelihood_behind(word, other);
    };
    if (const auto left = spot.left.word) {
        const double more = behind_word(*left, meant) - behind_word(*left, spot.typed);
        odds += weight::word_before * std::clamp(more - frequency, least_beside, most_beside);
    }
    if (const auto right = spot.right.word) {
        const double more = behind_word(meant, *right) - behind_word(spot.typed, *right);
        odds += weight::word_behind * std::clamp(more, -most_beside, most_beside);
    }
    return odds;
}

double ContextOdds::of(const Spot& spot, Number meant, std::uint8_t why) const {
    double odds = beside(spot, meant);
    if (sentence_.word(spot.i).size() < 4) odds += weight::short_word;
    if (spot.left.edge) odds += weight::opens;
    if (spot.right.edge) odds += weight::ends;
    if (!spot.left.edge && is_capital(sentence_.token(spot.i))) odds += weight::capital;
    if (std::ranges::binary_search(all_, meant)) odds += weight::both;
    if ((why & WordContexts::is_listed) != 0) odds += weight::listed;
    if ((why & WordContexts::sounds_alike) != 0) odds += weight::alike;
    if ((why & WordContexts::has_letters_swapped) != 0) odds += weight::swapped;
    return odds;
}

// Of most the words beside them tell that they are not meant, however near the others are: these
// are looked at only where they could turn the scale.
std::vector<LikelyWord>
ContextOdds::above(double least, std::size_t i,
                   const std::function<double(std::string_view)>& further) const {
    std::vector<LikelyWord> likely;
    const WordContexts::Meant meant =
        numbers_[i] ? contexts_.meant_for(*numbers_[i]) : WordContexts::Meant{};
    if (meant.words.empty()) return likely;
    const Spot spot{i, *numbers_[i], before(i), behind(i)};
    for (std::size_t k = 0; k < meant.words.size(); ++k) {
        const Number number = meant.words[k];
        const std::string_view word = contexts_.word(number);
        const double apart = of(spot, number, meant.why[k]) + further(word);
        if (apart + weight::near_meant * most_near <= least) continue;
        const double odds = apart + weight::near_meant * nearness(number) +
                            weight::near_typed * nearness(spot.typed);
        if (odds > least) likely.push_back({word, odds});
    }
    return likely;
}

}
