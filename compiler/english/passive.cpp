// The passive as main verb, or joined to it: Was awarded, Samples were collected, and was moved.
#include "compiler/english/reading.hpp"

namespace quoin::english {
namespace {

namespace w = word_class;
using Opening = BulletReading::Opening;

// `was excited`, `is located`: a state, not something done
bool is_state(const Sentence& s, std::size_t i) {
    return s.is(i, List::states) && !(s.is_word(i, {"used", "finished", "set", "left"}) && i > 0);
}

// The participle of a passive whose `be` or `get` stands at `i`; none if it is no passive.
std::optional<std::size_t> participle_after(const Sentence& s, std::size_t i) {
    std::size_t next = s.past_adverbs(i + 1);
    if (s.is_word(next, {"been", "being", "be"})) next = s.past_adverbs(next + 1);
    if (s.is(next, w::preposition | w::determiner | w::number) || !s.is_participle(next))
        return std::nullopt;
    if (is_state(s, next)) return std::nullopt;
    return next;
}

bool carries_passive(const Sentence& s, std::size_t i) {
    return s.is(i, w::be) && !s.is_word(i, {"being"}) && !s.token(i).title && s.token(i).depth == 0;
}

struct Passive {
    std::size_t be = 0, participle = 0;
};

// With a noun for subject the first `be` is the main verb's, if no clause stands between.
std::optional<Passive> of_subject(const Sentence& s, std::size_t first) {
    bool clause = false;
    for (std::size_t i = first; i < s.size(); ++i) {
        // `before they were energized`
        clause |= i > first && (s.is(i, w::relative) || s.is_word(i, {"before", "after", "once",
                                                                      "until", "while", "when"}));
        if (s.token(i).kind == TokenKind::stop && i > first) return std::nullopt; // another clause
        if (s.is_word(i, {"to"}) && s.is_word(i + 1, {"be"})) return std::nullopt;
        if (!carries_passive(s, i) && !s.is_word(i, {"got", "gets", "get"})) continue;
        if (clause) return std::nullopt;
        if (const auto last = participle_after(s, i)) return Passive{i, *last};
        return std::nullopt;
    }
    return std::nullopt;
}

// `Expired chemicals were sorted`: what has no object describes the subject behind it.
std::optional<Passive> of_described_subject(const Sentence& s, const OpeningReading& opening) {
    constexpr std::size_t most = 3; // words of the subject
    if (!s.is(opening.first, List::without_object)) return std::nullopt;
    std::size_t i = opening.first + 1;
    while (i <= opening.first + most && s.token(i).kind == TokenKind::word && s.classes(i) == 0)
        ++i;
    if (i == opening.first + 1 || !carries_passive(s, i)) return std::nullopt;
    const auto last = participle_after(s, i);
    return last ? std::optional(Passive{i, *last}) : std::nullopt;
}

// A verb leads: only what is joined by `and` is on its level. A clause of its own after a stop may
// well tell what came of it: `; none was missed`.
void add_joined(const Sentence& s, std::size_t from, std::vector<Extent>& found) {
    for (std::size_t i = from; i < s.size(); ++i) {
        if (s.token(i).kind == TokenKind::stop || s.is(i, w::relative)) return;
        const bool joined = s.is(i, w::conjunction) || s.token(i).kind == TokenKind::comma;
        const std::size_t verb = s.past_adverbs(i + 1);
        const bool gets = s.is_word(verb, {"got", "gets", "get"});
        if (!joined || (!gets && !carries_passive(s, verb))) continue;
        if (const auto last = participle_after(s, verb)) found.push_back(s.extent(verb, *last));
    }
}

}

std::optional<std::size_t> passive_of_subject(const Sentence& sentence, std::size_t first) {
    const auto passive = of_subject(sentence, first);
    return passive ? std::optional(passive->be) : std::nullopt;
}

std::vector<Extent> find_passives(const Sentence& sentence, const OpeningReading& opening) {
    std::vector<Extent> found;
    if (opening.passive) found.push_back(sentence.extent(opening.first, opening.last));
    if (opening.kind == Opening::no_verb || (opening.kind == Opening::unsure && found.empty())) {
        if (const auto passive = of_subject(sentence, opening.first))
            found.push_back(sentence.extent(passive->be, passive->participle));
    } else if (const auto passive = of_described_subject(sentence, opening)) {
        found.push_back(sentence.extent(passive->be, passive->participle));
    } else if (opening.kind != Opening::weak || opening.tense != VerbTense::none) {
        add_joined(sentence, opening.last + 1, found);
    }
    return found;
}

}
