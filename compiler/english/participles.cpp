// What a participle is goes by the word and by what follows it.
#include "compiler/english/participles.hpp"

#include "compiler/english/compounds.hpp"
#include "compiler/english/nouns.hpp"

namespace quoin::english {
bool is_recognition(const Sentence& sentence, std::size_t i) {
    return sentence.is(i, List::recognitions);
}

bool is_adjective_participle(const Sentence& sentence, std::size_t i) {
    const std::size_t next = i + 1;
    if (sentence.word(i).starts_with("self-") && sentence.is_participle(i)) return true;
    // Licensed font to museum, and not licensed to drive
    const bool granted = sentence.is_word(i, {"licensed"}) && sentence.classes(next) == 0 &&
                         sentence.is_word(next + 1, {"to"});
    const bool bare = !sentence.starts_object(next) && !granted;
    if (bare && sentence.is(i, List::mostly_adjectives)) return true;
    if (sentence.is_word(i, {"dedicated", "committed", "devoted", "accustomed", "opposed"}))
        return sentence.is_word(next, {"to"}) || is_agent_noun(sentence, next);
    // Certified nurse, Qualified electrician's helper: the trade that is so called
    if (sentence.is(i, List::called_so)) return is_agent_noun(sentence, head_noun(sentence, next));
    // but Trained classifier on 18,000 recordings
    const bool machine =
        sentence.is_word(next + 1, {"on", "with", "over", "from"}) && sentence.is_number(next + 2);
    return sentence.is_word(i, {"trained"}) && is_agent_noun(sentence, next) && !machine;
}

bool is_acted_on(const Sentence& sentence, std::size_t i) {
    if (is_recognition(sentence, i)) return false;
    const std::size_t next = sentence.past_adverbs(i + 1);
    if (sentence.is_word(next, {"by"})) {
        // `Led by example`, `Cut by 30%`, `Grew by half`
        const bool amount =
            sentence.is_figure(next + 1) &&
            (sentence.word(next + 1).back() == '%' || sentence.word(next + 1).front() == '$' ||
             sentence.is_word(next + 2, {"percent", "points"}));
        return !amount && !sentence.forms(next + 1).gerund &&
               !sentence.is_word(next + 1, {"example", "doing", "half", "nearly", "at"}) &&
               !sentence.is(i, List::without_object);
    }
    if (const auto by = sentence.lexicon().said_of(sentence.word(i), List::acted_on))
        return has_word(*by, sentence.word(next));
    if (sentence.is_word(i, {"placed"}))
        return sentence.is_word(next, {"in"}) && sentence.is_word(next + 1, {"charge"});
    return sentence.is_word(i, {"given", "shown"}) && !sentence.is_word(next, {"to"});
}

}
