#include "compiler/postings/weights.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/trade/spoken_languages.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace quoin::postings {

namespace {

std::string joined_words(const Phrase& phrase) {
    std::string text;
    for (const std::string& word : phrase.lower)
        text += (text.empty() ? "" : " ") + word;
    return text;
}

bool is_one_of_words(const Phrase& phrase, List list) {
    return std::ranges::any_of(phrase.lower,
                               [&](const std::string& w) { return is_one_of(w, list); });
}

double rarity_of(const std::string& word, const english::WordList& words) {
    constexpr double frequent = 0.5, ordinary = 0.72, met = 0.88, rare = 1, unlisted = 1.08;
    switch (words.class_of(word)) {
    case english::WordList::is_frequent:
        return frequent;
    case english::WordList::is_ordinary:
        return ordinary;
    case english::WordList::is_met:
        return met;
    case english::WordList::is_none:
        return unlisted;
    default:
        return rare;
    }
}

}

Kind kind_of(const Phrase& phrase) {
    const std::string words = joined_words(phrase);
    if (trade::is_spoken_language(words) || trade::is_spoken_language(phrase.lower.back()))
        return Kind::language;
    if (is_one_of(words, List::credentials) || is_one_of_words(phrase, List::credential_words))
        return Kind::credential;
    if (phrase.after_field || is_one_of(phrase.lower.back(), List::ends_of_fields))
        return Kind::field;
    if (is_one_of(words, List::soft_skills)) return Kind::soft_skill;
    return Kind::hard_skill;
}

double standing_factor(Standing standing) {
    constexpr std::array<double, 4> factors{1, 0.72, 0.85, 0.4};
    return factors[static_cast<std::size_t>(standing)];
}

double kind_factor(Kind kind) {
    constexpr std::array<double, 5> factors{1, 0.7, 1.15, 1.1, 1.15};
    return factors[static_cast<std::size_t>(kind)];
}

double rarity_factor(const Phrase& phrase, const english::WordList& words) {
    double sum = 0;
    for (const std::string& word : phrase.lower)
        sum += is_one_of(word, List::weak_heads) ? 0.6 : rarity_of(word, words);
    const double mean = sum / static_cast<double>(phrase.lower.size());
    return phrase.capitals ? std::max(mean, 1.0) : mean;
}

double times_factor(int times) {
    return 1 + 0.2 * std::log2(static_cast<double>(times));
}

double rake_factor(double score, double best) {
    return best <= 0 ? 1 : 0.7 + 0.3 * std::sqrt(score / best);
}

}
