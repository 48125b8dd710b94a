// Pronouns of the first person, and what only looks like one: Type II, I-5, AI, ME 210, a mine.
#include "compiler/english/reading.hpp"

namespace quoin::english {
namespace {

namespace w = word_class;

// The one, or the numeral: `Calculus I each week`, `the app I built`.
bool is_pronoun_i(const Sentence& s, std::size_t i) {
    if (s.token(i).text != "I") return false;
    if (s.token(i + 1).kind == TokenKind::sign || s.is_word(i + 1, {"ii", "iii"})) return false;
    if (s.is_word(i + 1, {"am", "have"})) return true;
    const bool verb_follows = [&] {
        const std::size_t next = s.past_adverbs(i + 1);
        if (s.is(next, w::be | w::have | w::modal)) return true;
        const VerbForms& forms = s.forms(next);
        return !forms.none() && (forms.past || forms.base) && !is_capital(s.token(next));
    }();
    if (i == 0 || s.token(i - 1).kind == TokenKind::stop) return verb_follows || i == 0;
    const bool after_name = is_capital(s.token(i - 1)) && i > 1;
    if (after_name) return false;
    return verb_follows || s.is_word(i - 1, {"and", "but"});
}

bool is_pronoun_mine(const Sentence& s, std::size_t i) {
    return s.token(i).text == "mine" && i > 0 &&
           s.is_word(i - 1, {"of", "than", "as", "like", "from", "with", "beside", "and"}) &&
           (s.ends_phrase(i + 1) || s.is(i + 1, w::preposition | w::conjunction));
}

bool is_first_person(const Sentence& s, std::size_t i) {
    const Token& token = s.token(i);
    if (token.kind != TokenKind::word || token.title) return false;
    if (token.lower == "i") return is_pronoun_i(s, i);
    if (token.lower == "mine") return is_pronoun_mine(s, i);
    if (s.is_word(i, {"i'm", "i've", "i'd", "i'll"})) return token.text.front() == 'I';
    // A capital within the bullet is a name's: Why We Vote, MY 2024, US
    const bool plain = !is_capital(token) || ((i == 0 || s.token(i - 1).kind == TokenKind::stop) &&
                                              !is_all_capitals(token));
    return plain && s.is(i, List::first_person);
}

}

std::vector<Extent> find_first_person(const Sentence& sentence) {
    std::vector<Extent> found;
    for (std::size_t i = 0; i < sentence.size(); ++i)
        if (is_first_person(sentence, i)) found.push_back(sentence.token(i).extent);
    return found;
}

}
