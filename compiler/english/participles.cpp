// What a participle is goes by the word and by what follows it.
#include "compiler/english/participles.hpp"

#include "compiler/english/compounds.hpp"
#include "compiler/english/nouns.hpp"

#include <algorithm>

namespace quoin::english {
namespace {

// Verbs that nobody does to another: they make no passive.
bool is_without_object(const Sentence& sentence, std::size_t i) {
    return sentence.is_word(i, {"stood", "stopped", "passed", "came", "went", "grew", "rose",
                                "fell", "lived", "worked", "started", "began", "improved",
                                "increased", "decreased", "dropped", "volunteered", "competed"});
}

// Seldom anything but an adjective, if no object follows: Skilled in.
bool is_mostly_adjective(std::string_view word) {
    constexpr std::string_view adjectives[] = {
        "skilled",  "experienced",    "motivated",   "talented",     "gifted",
        "seasoned", "versed",         "licensed",    "accomplished", "proven",
        "driven",   "self-motivated", "well-versed", "detailed",     "interested",
        "advanced", "acquainted",     "accustomed",  "fascinated"};
    return std::ranges::find(adjectives, word) != std::end(adjectives);
}

}

bool is_recognition(const Sentence& sentence, std::size_t i) {
    return sentence.is_word(i, {"selected", "chosen", "awarded", "promoted", "elected", "named",
                                "nominated", "invited", "voted", "rated", "recognized",
                                "recognised", "certified", "honored", "ranked"});
}

bool is_adjective_participle(const Sentence& sentence, std::size_t i) {
    const std::size_t next = i + 1;
    if (sentence.word(i).starts_with("self-") && sentence.is_participle(i)) return true;
    const bool bare = !sentence.starts_object(next);
    if (bare && is_mostly_adjective(sentence.word(i))) return true;
    if (sentence.is_word(i, {"dedicated", "committed", "devoted", "accustomed", "opposed"}))
        return sentence.is_word(next, {"to"}) || is_agent_noun(sentence.word(next));
    // Certified nurse, Qualified electrician's helper: the trade that is so called
    if (sentence.is_word(i,
                         {"certified", "experienced", "honored", "licensed", "mixed", "published",
                          "qualified", "registered", "respected", "seasoned", "valued"}))
        return is_agent_noun(sentence.word(head_noun(sentence, next)));
    return sentence.is_word(i, {"trained"}) && is_agent_noun(sentence.word(next));
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
               !is_without_object(sentence, i);
    }
    if (sentence.is_word(
            i, {"trained", "coached", "schooled", "tutored", "instructed", "cross-trained"}))
        return sentence.is_word(next, {"in", "on", "under", "as"});
    if (sentence.is_word(i, {"mentored", "supervised", "sponsored", "funded", "employed"}))
        return sentence.is_word(next, {"under", "through", "at"});
    if (sentence.is_word(i, {"hired",    "asked",        "assigned",   "required",  "expected",
                             "paid",     "sent",         "allowed",    "permitted", "authorized",
                             "cleared",  "told",         "picked",     "appointed", "recruited",
                             "tapped",   "called",       "encouraged", "assigned",  "contracted",
                             "retained", "commissioned", "loaned"}))
        return sentence.is_word(next, {"to", "as"});
    if (sentence.is_word(
            i, {"entrusted", "trusted", "charged", "credited", "credentialed", "presented"}))
        return sentence.is_word(next, {"with"});
    if (sentence.is_word(i, {"exposed"})) return sentence.is_word(next, {"to"});
    if (sentence.is_word(i, {"placed"}))
        return sentence.is_word(next, {"in"}) && sentence.is_word(next + 1, {"charge"});
    if (sentence.is_word(i, {"taught"})) return sentence.is_word(next, {"how"});
    return sentence.is_word(i, {"given", "shown"}) && !sentence.is_word(next, {"to"});
}

}
