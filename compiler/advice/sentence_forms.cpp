// Sentences that stop short, and lists whose verbs part ways.
#include "compiler/advice/sentence_forms.hpp"

#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/english/nouns.hpp"
#include "compiler/english/reading.hpp"

#include <algorithm>
#include <array>
#include <optional>

namespace quoin::advice {

namespace {

using english::Sentence;
using english::TokenKind;
namespace word_class = english::word_class;

// --- what stops short

// No sentence ends in these; the second ones may end a clause that leaves its object out.
constexpr std::array<std::string_view, 22> never_last{
    "the",   "a",       "an",    "and", "or",     "my",  "our",       "your",
    "their", "which",   "whose", "its", "during", "per", "including", "while",
    "than",  "because", "among", "if",  "versus", "whom"};
constexpr std::array<std::string_view, 4> seldom_last{"of", "from", "into", "between"};

// `a boat that we came from`, `guests we take care of`
bool leaves_object_out(const std::vector<WordAt>& words) {
    constexpr std::array<std::string_view, 6> joints{"that", "which", "who",
                                                     "whom", "where", "what"};
    constexpr std::array<std::string_view, 9> with_of{"care",  "made",  "proud", "think",  "know",
                                                      "dream", "heard", "hear",  "capable"};
    for (const WordAt& word : words)
        if (is_one_of(lower_case(word.word), joints)) return true;
    return words.size() > 1 && is_one_of(lower_case(words[words.size() - 2].word), with_of);
}

bool stops_short(std::string_view text, const std::vector<WordAt>& words) {
    if (words.size() < 4 || words.back().offset + words.back().word.size() != text.size())
        return false;
    const std::string_view last = words.back().word; // Vitamin A, Team Its
    if (is_one_of(last, never_last)) return true;
    return is_one_of(last, seldom_last) && !leaves_object_out(words);
}

// --- lists of verbs

bool governs(const Sentence& s, std::size_t i) { // a noun in -ing may stand behind it
    return s.is(i, word_class::preposition | word_class::relative | word_class::be) ||
           s.is_word(i, {"to", "including", "like", "such", "as"});
}

// Only verbs and their objects stand before the comma or the `and` at `joint`; what a preposition
// has in the first piece may be the whole list.
bool follows_plain_verb(const Sentence& s, std::size_t joint) {
    std::size_t first_comma = joint;
    for (std::size_t k = joint; k-- > 0;) {
        if (s.token(k).kind == TokenKind::stop || (s.forms(k).gerund && s.classes(k) == 0))
            return false;
        if (s.token(k).kind == TokenKind::comma) first_comma = k;
    }
    for (std::size_t k = 0; k < first_comma; ++k)
        if (governs(s, k)) return false;
    return true;
}

// `Answer 40 calls and scheduling 9 trucks`: a verb where a noun in -ing has no object.
bool is_gerund_with_object(const Sentence& s, std::size_t i) {
    if (!s.forms(i).gerund || s.classes(i) != 0 || s.token(i).title || s.token(i).depth > 0)
        return false;
    if (s.is_word(i, {"building", "wing", "string", "evening", "morning", "spring"})) return false;
    const bool counted =
        s.is_number(i + 1) || s.is(i + 1, word_class::determiner | word_class::possessive);
    const std::string_view noun = s.word(i + 1);
    const bool persons = s.token(i - 2).kind == TokenKind::comma && noun.ends_with('s') &&
                         english::is_person_noun(noun.substr(0, noun.size() - 1), {}) &&
                         s.is_word(i + 2, {"to", "in", "how"});
    return counted || persons;
}

// `inspected belts and to replace batteries`: no infinitive goes before that it could be joined to.
bool is_lone_infinitive(const Sentence& s, std::size_t i) {
    if (!s.is_word(i, {"to"}) || !s.forms(i + 1).base || english::is_capital(s.token(i + 1)))
        return false;
    if (s.forms(i + 1).verb->noun && !s.starts_object(i + 2)) return false; // and to market
    for (std::size_t k = 0; k < i; ++k)
        if (s.is_word(k, {"to", "how"}) || s.is(k, word_class::relative)) return false;
    return s.starts_object(i + 2) || english::is_plural_noun(s, i + 2);
}

// `and each visit is documented`
bool is_passive_clause(const Sentence& s, std::size_t i) {
    return s.is_word(i, {"each", "every", "all"}) && s.token(i + 1).kind == TokenKind::word &&
           s.is(i + 2, word_class::be) && s.is_participle(i + 3);
}

std::optional<english::Extent> parting_verb(const Sentence& s) {
    for (std::size_t i = 3; i + 1 < s.size(); ++i) {
        if (!s.is_word(i - 1, {"and", "or"}) || s.token(i).depth > 0) continue;
        if (is_gerund_with_object(s, i) && follows_plain_verb(s, i - 1)) return s.extent(i, i + 1);
        bool relative = false;
        for (std::size_t k = 0; k < i; ++k)
            relative = relative || s.is(k, word_class::relative);
        if (!relative && is_passive_clause(s, i)) return s.extent(i, i + 3);
    }
    return std::nullopt;
}

// `Rotating tires, inspected belts and to replace batteries`: however it opens.
std::optional<english::Extent> parting_infinitive(const Sentence& s) {
    for (std::size_t i = 3; i + 1 < s.size(); ++i)
        if (s.is_word(i - 1, {"and", "or"}) && s.token(i).depth == 0 && !s.forms(0).none() &&
            is_lone_infinitive(s, i))
            return s.extent(i, i + 1);
    return std::nullopt;
}

bool opens_with_verb(const WordedBullet& bullet) {
    using Opening = english::BulletReading::Opening;
    const Opening opening = bullet.reading.opening;
    return opening == Opening::past_verb || opening == Opening::present_verb ||
           opening == Opening::either_tense;
}

}

void unfinished(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : context.bullets) {
        const auto& words = bullet.part.words;
        if (!stops_short(bullet.text, words)) continue;
        const english::Extent last{words.back().offset, words.back().word.size()};
        report<messages::unfinished>(findings, bullet.place(last), in_quotes(bullet.words(last)));
    }
}

void unparallel(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : context.bullets) {
        if (bullet.text.find(" and ") == bullet.text.npos) continue;
        if (bullet.text.size() > longest_bullet) continue;
        const Sentence& sentence = bullet.part.sentence;
        auto verb = opens_with_verb(bullet) ? parting_verb(sentence) : std::nullopt;
        if (!verb) verb = parting_infinitive(sentence);
        if (verb)
            report<messages::unparallel>(findings, bullet.place(*verb),
                                         in_quotes(bullet.words(*verb)));
    }
}

}
