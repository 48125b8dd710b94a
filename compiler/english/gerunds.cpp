// A form in -ing that opens a bullet: the gerund of a verb, or a noun (Debugging of, Evening
// shifts).
#include "compiler/english/compounds.hpp"
#include "compiler/english/nouns.hpp"
#include "compiler/english/reading.hpp"

namespace quoin::english {
namespace {

namespace w = word_class;

// `Using Python, built 3 models`
bool opens_phrase(const Sentence& sentence, std::size_t i) {
    for (std::size_t k = i + 1; k < sentence.size(); ++k) {
        if (sentence.token(k).kind != TokenKind::comma) continue;
        const VerbForms& after = sentence.forms(sentence.past_adverbs(k + 1));
        return after.past && !after.present();
    }
    return false;
}

// `Cleaning and stocking of`, `Landscaping and snow removal`; but `Cleaning and stocking 4 bays`.
Homograph gerund_by_conjunction(const Sentence& sentence, std::size_t i) {
    const std::size_t other = i + 2;
    if (sentence.forms(other).gerund) {
        if (sentence.is_word(other + 1, {"of"})) return Homograph::noun;
        return sentence.starts_object(other + 1) ? Homograph::verb : Homograph::unsure;
    }
    const bool noun = sentence.token(other).kind == TokenKind::word &&
                      sentence.classes(other) == 0 && !sentence.forms(other).past;
    return noun ? Homograph::noun : Homograph::unsure;
}

Homograph gerund_by_preposition(const Sentence& sentence, std::size_t i) {
    const bool noun =
        sentence.is_word(i + 1, {"for", "in", "at", "on"}) && sentence.is(i, List::trades);
    return noun ? Homograph::noun : Homograph::verb;
}

// Bare words follow, an object or the rest of a compound.
Homograph by_compound(const Sentence& sentence, std::size_t i) {
    const std::size_t head = head_noun(sentence, i + 1);
    const bool by_use =
        is_in_either_number(sentence.word(head), List::named_by_use, sentence.lexicon());
    if (is_person_noun(sentence, head)) return Homograph::noun;
    if (is_noun_compound(sentence, i)) return Homograph::noun;
    if (sentence.is(i, List::gerunds_of_things) && sentence.is_word(head + 1, {"of"}))
        return Homograph::unsure; // Building inspections of
    // Ticketing system support: named by what is done more than told what one does
    if (mostly_noun(*sentence.forms(i).verb) && is_deed_noun(sentence, head))
        return Homograph::unsure;
    if (!by_use) return Homograph::verb;
    return sentence.is(i, List::activities) ? Homograph::noun : Homograph::unsure;
}

}

Homograph read_gerund(const Sentence& sentence, std::size_t i) {
    const std::size_t next = i + 1;
    if (sentence.is_word(next, {"of"}) || sentence.is(i, List::never_gerunds))
        return Homograph::noun;
    if (opens_phrase(sentence, i)) return Homograph::unsure;
    if (sentence.starts_object(next) || sentence.is(next, w::adverb)) return Homograph::verb;
    if (sentence.is(next, w::conjunction)) return gerund_by_conjunction(sentence, i);
    if (sentence.ends_phrase(next)) return Homograph::unsure;
    if (sentence.is(next, w::be | w::modal | w::have)) return Homograph::noun;
    if (sentence.is(next, w::preposition)) return gerund_by_preposition(sentence, i);
    return by_compound(sentence, i);
}

}
