#include "compiler/postings/weights.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/postings/evidence.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/trade/spoken_languages.hpp"

#include <algorithm>
#include <array>

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

}

Kind kind_of(const Phrase& phrase) {
    const std::string words = joined_words(phrase);
    if (trade::is_spoken_language(words) || trade::is_spoken_language(phrase.lower.back()))
        return Kind::language;
    if (is_one_of(words, List::credentials) || is_one_of_words(phrase, List::credential_words))
        return Kind::credential;
    if (phrase.after_field || is_one_of(phrase.lower.back(), List::ends_of_fields))
        return Kind::field;
    if (is_one_of(words, List::soft_skills) || is_one_of(words, List::soft_predicates))
        return Kind::soft_skill;
    return Kind::hard_skill;
}

double importance_of(Standing standing) {
    constexpr std::array<double, 4> shares{1, 0.9, 0.95, 0.7};
    return shares[static_cast<std::size_t>(standing)];
}

double weight_of(const Term& term) {
    const double odds = odds_of(term.signs);
    return importance_of(term.standing) * odds / (1 + odds);
}

}
