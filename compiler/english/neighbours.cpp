// The open classes go by the forms of verbs, by WordNet's nouns and by endings, and overlap: a word
// is of every kind that it may be.
#include "compiler/english/neighbours.hpp"

#include "compiler/english/compounds.hpp"
#include "compiler/english/nouns.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace quoin::english {
namespace {

namespace w = word_class;

enum Kind : Kinds {
    edge = 1u << 0,  // a sign, or the end of the text at either side
    start = 1u << 1, // there is nothing
    comma = 1u << 2,
    number = 1u << 3,  // 12, twelve
    article = 1u << 4, // any determiner
    owner = 1u << 5,   // my, their
    prep = 1u << 6,
    joint = 1u << 7, // and, or
    relative = 1u << 8,
    pronoun = 1u << 9,
    be = 1u << 10,
    have = 1u << 11,
    modal = 1u << 12,
    adverb = 1u << 13,
    open = 1u << 14, // of no closed class
    noun = 1u << 15, // may be one
    plural = 1u << 16,
    person = 1u << 17,
    verb = 1u << 18, // a present form of what is a verb before all
    base = 1u << 19, // may be the base of a verb
    past = 1u << 20, // a past or a participle, and no base
    gerund = 1u << 21,
    adjective = 1u << 22, // by its ending
    capital = 1u << 23,
};

constexpr std::array<std::pair<std::string_view, Kinds>, 24> kind_names{{
    {"edge", edge},
    {"start", start},
    {"comma", comma},
    {"number", number},
    {"article", article},
    {"owner", owner},
    {"prep", prep},
    {"joint", joint},
    {"pronoun", pronoun},
    {"relative", relative},
    {"be", be},
    {"have", have},
    {"modal", modal},
    {"adverb", adverb},
    {"open", open},
    {"noun", noun},
    {"plural", plural},
    {"person", person},
    {"verb", verb},
    {"base", base},
    {"past", past},
    {"gerund", gerund},
    {"adjective", adjective},
    {"capital", capital},
}};

constexpr std::array<std::pair<std::uint32_t, Kinds>, 10> closed{{
    {w::determiner, article},
    {w::possessive, owner},
    {w::preposition, prep},
    {w::conjunction, joint},
    {w::relative, relative},
    {w::pronoun, pronoun},
    {w::be, be},
    {w::have, have},
    {w::modal, modal},
    {w::adverb, adverb},
}};

bool ends_as_adjective(std::string_view word) {
    constexpr std::array<std::string_view, 9> endings{"ful",  "ous",  "ive",  "able", "ible",
                                                      "less", "ical", "tial", "ular"};
    return std::ranges::any_of(endings, [&](std::string_view ending) {
        return word.size() > ending.size() + 1 && word.ends_with(ending);
    });
}

Kinds open_kinds(const Sentence& sentence, std::size_t i) {
    const std::string& word = sentence.word(i);
    const VerbForms& forms = sentence.forms(i);
    const bool past_only = (forms.past || forms.participle) && !forms.base;
    const bool as_adjective = ends_as_adjective(word);
    const bool verb_only = !forms.none() && forms.present() && mostly_verb(*forms.verb);
    Kinds kinds = open;
    if (past_only) kinds |= past;
    if (forms.gerund) kinds |= gerund;
    if (forms.base) kinds |= base;
    if (verb_only && !is_often_adjective(*forms.verb)) kinds |= verb;
    if (as_adjective) kinds |= adjective;
    if (!past_only && !as_adjective && !verb_only) kinds |= noun;
    if (is_plural_noun(sentence, i) && !verb_only) kinds |= plural;
    if (is_person_noun(sentence, i)) kinds |= person;
    return kinds;
}

}

std::optional<Kinds> kind_named(std::string_view name) {
    const auto found =
        std::ranges::find(kind_names, name, [](const auto& row) { return row.first; });
    if (found == kind_names.end()) return std::nullopt;
    return found->second;
}

Kinds kinds_of(const Sentence& sentence, std::size_t i) {
    if (i >= sentence.size()) return edge | start;
    const Token& token = sentence.token(i);
    if (sentence.is_number(i)) return number;
    if (token.kind == TokenKind::comma) return edge | comma;
    if (token.kind != TokenKind::word && sentence.classes(i) == 0) return edge;
    Kinds kinds = is_capital(token) ? Kinds{capital} : Kinds{0};
    for (const auto& [of_word, kind] : closed)
        if (sentence.is(i, of_word)) kinds |= kind;
    return sentence.classes(i) == 0 ? kinds | open_kinds(sentence, i) : kinds;
}

}
