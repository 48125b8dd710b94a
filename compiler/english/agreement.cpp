// Only where subject and verb touch, or a relative pronoun stands between: claims that was paid,
// students who needs help, Tickets was sold. What is farther apart may have another subject.
#include "compiler/english/agreement.hpp"

#include "compiler/english/nouns.hpp"

#include <optional>
#include <string>

namespace quoin::english {
namespace {

namespace w = word_class;

// Plurals that take a verb in the singular, or either: news, series, data.
bool is_either_number(const Sentence& s, std::size_t i) {
    return s.is(i, List::plural_or_singular) || is_capital(s.token(i)) || s.token(i).title;
}

bool is_content(const Sentence& s, std::size_t i) {
    return s.token(i).kind == TokenKind::word && s.classes(i) == 0;
}

bool is_plural_subject(const Sentence& s, std::size_t i) {
    return is_content(s, i) && is_plural_noun(s, i) && !is_either_number(s, i) &&
           !s.is(i, List::times);
}

struct Number {
    bool plural = false;
    std::size_t noun = 0;
};

// Whether the noun before the pronoun at `i` is surely what it stands for: `3 claims that`, and not
// `list of claims that`, nor `a form and notes that`.
std::optional<Number> antecedent(const Sentence& s, std::size_t i) {
    if (i == 0 || !is_content(s, i - 1)) return std::nullopt;
    const std::size_t noun = i - 1;
    std::size_t first = noun;
    while (first > 0 && is_content(s, first - 1) && first + 3 > noun)
        --first;
    const std::size_t before = first - 1; // past the end where there is none
    const bool counted = first > 0 && s.is_number(before);
    const bool one = first > 0 && s.is_word(before, {"a", "an", "each", "every", "one", "another"});
    const std::size_t outer = counted || one ? before - 1 : before;
    if (s.is_word(outer, {"of", "and", "or", "&"})) return std::nullopt;
    if (is_plural_subject(s, noun) && !one) return Number{true, noun};
    if (one && !is_plural_noun(s, noun) && !s.is(noun, List::groups)) return Number{false, noun};
    return std::nullopt;
}

// What the verb at `i` would be after a subject in the other number; empty if it fits both.
std::string in_other_number(const Sentence& s, std::size_t i, bool plural) {
    const std::string& word = s.word(i);
    struct Pair {
        std::string_view singular, plural;
    };
    for (const Pair& pair :
         {Pair{"was", "were"}, Pair{"is", "are"}, Pair{"has", "have"}, Pair{"does", "do"}}) {
        if (plural && word == pair.singular) return std::string(pair.plural);
        if (!plural && word == pair.plural) return std::string(pair.singular);
    }
    return {};
}

// `students who needs help`, `clubs that meets weekly`
std::string of_open_verb(const Sentence& s, std::size_t i, bool plural) {
    const VerbForms& forms = s.forms(i);
    if (forms.none() || s.classes(i) != 0 || is_capital(s.token(i))) return {};
    const bool sure = s.is_word(i - 1, {"who"}) || !forms.verb->noun;
    if (plural && forms.third && sure) return std::string(forms.verb->base);
    if (!plural && forms.base && !forms.past && sure && s.is_word(i - 1, {"who"}))
        return third_person(forms.verb->base);
    return {};
}

std::optional<Disagreement> in_relative(const Sentence& s, std::size_t i) {
    if (!s.is_word(i, {"that", "which", "who"})) return std::nullopt;
    const auto subject = antecedent(s, i);
    const std::size_t verb = s.past_adverbs(i + 1);
    if (!subject) return std::nullopt;
    std::string meant = in_other_number(s, verb, subject->plural);
    if (meant.empty() && verb == i + 1) meant = of_open_verb(s, verb, subject->plural);
    if (meant.empty()) return std::nullopt;
    return Disagreement{s.token(subject->noun).extent, s.token(verb).extent, std::move(meant),
                        false};
}

// The words before the verb at `i` are its subject alone: back to a stop, or to what opens a
// clause.
bool opens_clause(const Sentence& s, std::size_t noun) {
    for (std::size_t k = noun; k-- > 0;) {
        if (s.token(k).kind == TokenKind::stop) return true;
        if (s.is_word(k, {"when", "while", "because", "until", "whose", "where", "if", "so"}))
            return true;
        const bool of_phrase =
            is_content(s, k) || s.is_number(k) || s.is(k, w::determiner | w::possessive);
        if (!of_phrase) return false;
        if (s.token(k).kind == TokenKind::figure && s.token(k).text.front() == '$') return false;
    }
    return true;
}

// A verb that leads has its object there: Proved claims was needed no more.
bool is_led_by_verb(const Sentence& s, std::size_t noun) {
    constexpr std::size_t near = 8;
    std::size_t k = noun;
    while (k > 0 && k + near > noun && s.token(k - 1).kind != TokenKind::stop)
        --k;
    return k < noun && s.forms(k).past && !s.forms(k).present();
}

std::optional<Disagreement> after_noun(const Sentence& s, std::size_t i) {
    if (i == 0 || !s.is_word(i, {"was", "is", "has"})) return std::nullopt;
    const std::size_t noun = i - 1;
    if (!is_content(s, noun) || !is_plural_noun(s, noun) || s.is(noun, List::plural_or_singular) ||
        s.is(noun, List::times) || s.token(noun).title)
        return std::nullopt;
    if (is_capital(s.token(noun)) && noun > 0) return std::nullopt; // a name
    if (!opens_clause(s, noun) || is_led_by_verb(s, noun)) return std::nullopt;
    if (s.is_word(i, {"has"}) && !s.forms(s.past_adverbs(i + 1)).participle) return std::nullopt;
    return Disagreement{s.token(noun).extent, s.token(i).extent, in_other_number(s, i, true),
                        false};
}

// `there was 9 errors`, `they was`
std::optional<Disagreement> after_pronoun(const Sentence& s, std::size_t i) {
    const std::size_t verb = i + 1;
    if (s.is_word(i, {"they", "we", "these", "those", "you"}) &&
        s.is_word(verb, {"was", "is", "has"}))
        return Disagreement{s.token(i).extent, s.token(verb).extent, in_other_number(s, verb, true),
                            false};
    const bool counted =
        s.is_number(i + 2) && !s.is_word(i + 2, {"one", "1"}) && is_plural_subject(s, i + 3);
    if (s.is_word(i, {"there"}) && s.is_word(verb, {"was", "is"}) && counted)
        return Disagreement{s.extent(i + 2, i + 3), s.token(verb).extent,
                            in_other_number(s, verb, true), false};
    return std::nullopt;
}

// --- possessives

bool is_people(const Sentence& s, std::size_t i) {
    const std::string_view word = s.word(i);
    if (!s.forms(i).none() && s.forms(i).verb->verb_count > 0) return false; // leads, guides
    return word.size() > 3 && word.ends_with('s') && !word.ends_with("'s") && is_content(s, i) &&
           !is_capital(s.token(i)) && is_person_noun(word.substr(0, word.size() - 1), s.lexicon());
}

// Taught patients exercises, Served guests drinks: two objects, and no possessive.
bool has_two_objects(const Sentence& s, std::size_t noun) {
    constexpr std::size_t near = 20;
    for (std::size_t k = noun; k-- > 0 && k + near > noun;) {
        if (s.token(k).kind == TokenKind::stop) return false;
        const VerbForms& forms = s.forms(k);
        if (!forms.none() && s.lexicon().has(forms.verb->base, List::with_two_objects)) return true;
    }
    return false;
}

// `all 41 patients charts`: those of persons, where a sign is missing.
std::optional<Disagreement> before_owned(const Sentence& s, std::size_t i) {
    const std::size_t next = i + 1;
    if (!is_people(s, i) || s.token(i).title || !is_content(s, next)) return std::nullopt;
    const bool owned = is_plural_noun(s, next) && !is_either_number(s, next) &&
                       s.word(next).ends_with('s') && !s.is(next, List::of_plurals);
    if (!owned || i == 0 || has_two_objects(s, i)) return std::nullopt;
    return Disagreement{s.token(next).extent, s.token(i).extent, s.token(i).text + "'", false};
}

// `childrens books`, `womens' team`: a plural already.
std::optional<Disagreement> of_irregular_plural(const Sentence& s, std::size_t i) {
    const auto meant = s.lexicon().said_of(s.word(i), List::doubled_plurals);
    if (!meant) return std::nullopt;
    return Disagreement{s.token(i + 1).extent, s.token(i).extent, std::string(*meant), false};
}

}

std::vector<Disagreement> find_disagreements(const Sentence& sentence) {
    std::vector<Disagreement> found;
    for (std::size_t i = 0; i < sentence.size(); ++i) {
        if (sentence.token(i).title) continue;
        for (const auto& look :
             {in_relative, after_noun, after_pronoun, before_owned, of_irregular_plural})
            if (auto one = look(sentence, i)) {
                found.push_back(std::move(*one));
                break;
            }
    }
    return found;
}

}
