#include "compiler/postings/part_signs.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/english/nouns.hpp"
#include "compiler/english/sentence.hpp"
#include "compiler/postings/headings.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/phrase_words.hpp"
#include "compiler/postings/said_phrases.hpp"
#include "compiler/trade/spoken_languages.hpp"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <string>

namespace quoin::postings {

namespace {

namespace wc = english::word_class;
using english::Sentence;
using english::TokenKind;

constexpr std::size_t fewest_lines = 12; // of a posting that has a beginning and an end

struct ListSign {
    List list;
    std::size_t sign;
};

void see_heading(std::string_view heading, PartSigns& signs) {
    constexpr ListSign rows[] = {{List::heading_first_asked, PartSign::says_first_asked},
                                 {List::heading_first_done, PartSign::says_duties},
                                 {List::heading_not_read, PartSign::says_out},
                                 {List::heading_preferred, PartSign::says_preferred},
                                 {List::heading_surely_required, PartSign::says_surely_required},
                                 {List::heading_duties, PartSign::says_duties},
                                 {List::heading_required, PartSign::says_required}};
    const std::string lower = heading_words(heading);
    if (const Part whole = part_named_whole(lower); whole.known) {
        const std::size_t asked = static_cast<std::size_t>(whole.standing);
        signs[whole.not_read ? PartSign::whole_out : PartSign::whole_required + asked] = 1;
    }
    for (const ListSign& row : rows)
        if (says_any(lower, row.list)) signs[row.sign] = 1;
    const auto says = [&](std::initializer_list<std::string_view> words) {
        return std::ranges::any_of(words, [&](std::string_view w) { return has_phrase(lower, w); });
    };
    signs[PartSign::says_you] = says({"you", "your", "you'll", "you'd", "you're", "you've"});
    signs[PartSign::says_we] = says({"we", "our", "us", "we'll", "we'd", "we're", "we've"});
    signs[PartSign::asks] = lower.ends_with('?');
}

std::size_t past_bullets(const Sentence& sentence) {
    std::size_t i = 0;
    while (i < sentence.size() && sentence.token(i).kind != TokenKind::word &&
           sentence.token(i).kind != TokenKind::figure)
        ++i;
    return sentence.past_adverbs(i);
}

bool opens_with_verb(const Sentence& sentence, std::size_t i) {
    const english::VerbForms& forms = sentence.forms(i);
    if (forms.none() || sentence.ends_phrase(i + 1)) return false;
    const bool object = sentence.starts_object(i + 1);
    return forms.gerund ? !english::is_noun_compound(sentence, i)
                        : forms.present() && (object || !english::mostly_noun(*forms.verb));
}

// Exactly one.
std::size_t opening_of(const Sentence& sentence) {
    const std::size_t i = past_bullets(sentence);
    const auto is = [&](std::size_t k, std::initializer_list<std::string_view> words) {
        return sentence.is_word(k, words);
    };
    if (is(i, {"you'll", "you'd"})) return PartSign::with_you_will;
    if (is(i, {"you", "you're", "you've", "your"}))
        return is(i + 1, {"will", "would", "may", "might"}) ? PartSign::with_you_will
                                                            : PartSign::with_you;
    if (is(i, {"if", "should", "anyone", "anybody", "someone", "somebody"}))
        return PartSign::with_if;
    if (is(i, {"we", "our", "we'll", "we'd", "we're", "we've", "us", "i", "my"}))
        return PartSign::with_we;
    if (is_one_of(sentence.word(i), List::applying_verbs) && !sentence.forms(i).third)
        return PartSign::with_applying;
    if (opens_with_verb(sentence, i)) {
        const english::VerbForms& forms = sentence.forms(i);
        return forms.gerund ? PartSign::with_gerund
               : forms.base ? PartSign::with_base
                            : PartSign::with_third;
    }
    return sentence.is(i, wc::determiner | wc::pronoun | wc::relative | wc::preposition |
                              wc::conjunction)
               ? PartSign::with_the
               : PartSign::with_a_thing;
}

// The aide prepares, the teller will verify.
bool tells_what_a_person_does(const Sentence& sentence) {
    const std::size_t looked_at = std::min<std::size_t>(sentence.size(), 8);
    for (std::size_t i = 1; i < looked_at; ++i) {
        if (!english::is_person_noun(sentence, i - 1)) continue;
        const std::size_t verb = sentence.past_adverbs(i);
        const english::VerbForms& forms = sentence.forms(verb);
        const bool several = sentence.word(i - 1).ends_with('s');
        if ((several ? forms.base : forms.third) || sentence.is_word(verb, {"will", "shall"}))
            return true;
    }
    return false;
}

// Most mornings you splice; not: if you like boats, we help you grow, you know knots.
bool tells_what_you_do(const Sentence& sentence) {
    for (std::size_t i = 0; i + 1 < sentence.size(); ++i) {
        if (!sentence.is_word(i, {"you"})) continue;
        if (i > 0 && is_one_of(sentence.word(i - 1), List::words_before_no_deed)) continue;
        const std::size_t verb = sentence.past_adverbs(i + 1);
        if (sentence.forms(verb).base && !sentence.is(verb, wc::modal | wc::have | wc::be) &&
            !is_one_of(sentence.word(verb), List::states_of_applicants))
            return true;
    }
    return false;
}

void see_lists(const std::string& lower, PartSigns& signs) {
    constexpr ListSign rows[] = {
        {List::lead_ins, PartSign::lead_in},   {List::items_asked, PartSign::qualification},
        {List::said_required, PartSign::need}, {List::said_surely_required, PartSign::sure_need},
        {List::said_duties, PartSign::duty},   {List::said_not_asked, PartSign::nothing_asked},
        {List::items_given, PartSign::given}};
    for (const ListSign& row : rows)
        if (says_any(lower, row.list)) signs[row.sign] += 1;
    signs[PartSign::preference] += says_preferred(lower);
    // each followed by the sign of the unsure ones
    constexpr ListSign doubled[] = {{List::said_of_pay, PartSign::pay},
                                    {List::said_of_equality, PartSign::equality},
                                    {List::said_of_applying, PartSign::applying},
                                    {List::said_of_the_employer, PartSign::employer}};
    for (const ListSign& row : doubled) {
        const PhrasesSeen seen = seen_of(lower, row.list);
        signs[row.sign] += seen.sure > 0;
        signs[row.sign + 1] += std::min(seen.unsure, 2);
    }
}

void see_words(const Sentence& sentence, const std::string& lower, PartSigns& signs) {
    bool any[PartSign::in_all] = {};
    for (std::size_t i = 0; i < sentence.size(); ++i) {
        const std::string& word = sentence.word(i);
        const auto is = [&](std::initializer_list<std::string_view> words) {
            return sentence.is_word(i, words);
        };
        any[PartSign::spoken_language] |= i > 0 && trade::is_spoken_language(word);
        any[PartSign::credential] |=
            is_one_of(word, List::credential_words) || is_one_of(word, List::credentials);
        any[PartSign::of_you] |= is({"you", "your", "you'll", "you'd", "you're", "you've"});
        any[PartSign::of_us] |= is_one_of(word, List::we) || is({"i", "my", "i'm"});
        any[PartSign::supposing] |= is({"would", "could", "if", "might", "you'd", "we'd", "even"});
        any[PartSign::denying] |= sentence.is(i, wc::negation) || word.ends_with("n't") ||
                                  is({"no", "not", "nor", "never", "without"});
        any[PartSign::past] |= sentence.is(i, wc::past_be) || is({"had", "been"});
        any[PartSign::years] |=
            sentence.is_number(i) &&
            sentence.is_word(i + 1, {"year", "years", "year's", "months", "semesters"});
        any[PartSign::modal] |= is({"must", "should", "need", "shall"});
    }
    any[PartSign::sum_or_address] |= lower.find_first_of("@$") != lower.npos ||
                                     lower.find("www.") != lower.npos || has_telephone(lower);
    any[PartSign::exclaiming] = lower.ends_with('!');
    any[PartSign::long_one] = sentence.size() > 28;
    any[PartSign::short_one] = sentence.size() <= 5;
    for (std::size_t i = 0; i < PartSign::in_all; ++i)
        signs[i] += any[i];
}

void see_sentence(std::string_view text, PartSigns& signs) {
    const Sentence sentence(text, {}, english::Lexicon{});
    const std::string lower = comparable(text);
    signs[opening_of(sentence)] += 1;
    signs[PartSign::person_does] += tells_what_a_person_does(sentence);
    signs[PartSign::you_do] += tells_what_you_do(sentence);
    see_lists(lower, signs);
    see_words(sentence, lower, signs);
}

}

PartSigns part_signs(const Stretch& stretch, std::span<const Line> lines) {
    PartSigns signs{};
    std::size_t sentences = 0;
    for (const Piece& piece : stretch.pieces) {
        if (piece.heading) continue;
        ++sentences;
        see_sentence(piece.text, signs);
        signs[PartSign::item] += lines[piece.line].item;
    }
    for (double& sign : signs)
        sign /= std::sqrt(static_cast<double>(std::max<std::size_t>(sentences, 1)));
    signs[PartSign::always] = 1;
    signs[PartSign::headed] = stretch.headed;
    if (stretch.headed) see_heading(stretch.heading(), signs);
    if (lines.size() < fewest_lines) return signs;
    const double place =
        static_cast<double>(stretch.pieces.front().line + 1) / static_cast<double>(lines.size());
    signs[PartSign::early] = place < 0.2;
    signs[PartSign::late] = place > 0.75;
    return signs;
}

}
