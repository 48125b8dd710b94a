// Checks of sentences and their signs: two sentences joined by a comma alone, stray commas, open
// parentheses, words of talk, and what shouts.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/sentence_forms.hpp"
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

// What the writer says in own words: bullets, summaries, notes.
bool is_prose(const TextInResume& part) {
    return part.bullet || (part.field && has(part.field->name, trade::Trait::writes));
}

bool is_group(const TextInResume& part) {
    return part.field && part.field->name == trade::FieldName::group;
}

// --- two sentences in one

constexpr std::array<std::string_view, 10> new_subjects{"that", "it", "this", "they", "he",
                                                        "she",  "we", "i",    "you",  "there"};

bool is_finite(const Sentence& sentence, std::size_t i) {
    if (sentence.is(i, word_class::be | word_class::have | word_class::modal)) return true;
    const english::VerbForms& forms = sentence.forms(i);
    return forms.past || forms.present();
}

// `this week` begins no sentence, `this kept` does.
bool is_past_alone(const Sentence& sentence, std::size_t i) {
    const english::VerbForms& forms = sentence.forms(i);
    return (forms.past && !forms.base && !forms.base_of_other && !forms.only_participle()) ||
           sentence.is(i, word_class::be | word_class::modal);
}

bool begins_sentence(const Sentence& sentence, std::size_t i) {
    if (!is_one_of(sentence.word(i), new_subjects) || sentence.token(i).title) return false;
    const std::size_t verb = sentence.past_adverbs(i + 1);
    if (sentence.is_word(i, {"there", "that"})) return sentence.is(verb, word_class::be);
    return sentence.word(i) == "this" ? is_past_alone(sentence, verb) : is_finite(sentence, verb);
}

// `When a pump failed, they called`: the first is no sentence by itself.
bool depends(const Sentence& sentence, std::size_t from, std::size_t to) {
    for (std::size_t i = from; i < to; ++i)
        if (is_one_of(sentence.word(i), List::openings_of_clauses)) return true;
    return false;
}

// `therapist checked the angles`, `the owner was happy`: a person, and what he or she did.
bool begins_with_person(const Sentence& sentence, std::size_t i) {
    const std::size_t noun = sentence.is_word(i, {"the", "my", "our"}) ? i + 1 : i;
    std::string_view person = sentence.word(noun);
    if (english::is_plural_noun(sentence, noun)) person.remove_suffix(1);
    if (!english::is_person_noun(person, sentence.lexicon())) return false;
    if (!sentence.forms(noun).none() && !english::is_plural_noun(sentence, noun)) return false;
    if (sentence.token(noun).title || english::is_capital(sentence.token(noun))) return false;
    const std::size_t verb = sentence.past_adverbs(noun + 1), object = verb + 1;
    if (sentence.is(verb, word_class::past_be)) return noun > i;
    const bool starts = sentence.is(object, word_class::determiner | word_class::possessive) ||
                        sentence.is_word(object, {"them", "it", "him", "her", "me", "us"});
    const bool timed = is_one_of(sentence.word(object + 1), List::turns); // hired the month before
    return is_past_alone(sentence, verb) && starts && !timed;
}

// `visits fell by a third`, `the bill dropped 12%`: a thing, and how it changed.
bool begins_with_change(const Sentence& sentence, std::size_t i) {
    constexpr std::size_t longest = 3; // words of the subject
    if (sentence.is(i, word_class::conjunction | word_class::preposition | word_class::relative))
        return false;
    for (std::size_t verb = i + 1; verb <= i + longest && verb < sentence.size(); ++verb) {
        if (sentence.is_word(
                verb, {"rose", "fell", "dropped", "grew", "went", "became", "doubled", "improved"}))
            return sentence.is_number(verb + 1) || sentence.ends_phrase(verb + 1) ||
                   sentence.is_word(verb + 1, {"by", "to", "from", "up", "down", "smoothly"});
        const bool of_subject = sentence.token(verb - 1).kind == TokenKind::word &&
                                !sentence.token(verb - 1).title &&
                                (sentence.classes(verb - 1) & ~word_class::determiner) == 0 &&
                                sentence.forms(verb).none();
        if (!of_subject && verb > i + 1) return false;
    }
    return false;
}

std::optional<english::Extent> second_sentence(const Sentence& sentence) {
    std::size_t begin = 0; // of the piece between commas
    for (std::size_t i = 1; i + 1 < sentence.size(); ++i) {
        const english::Token& before = sentence.token(i - 1);
        if (before.depth > 0 || before.kind == TokenKind::stop) begin = i;
        if (before.kind != TokenKind::comma) continue;
        const bool begins = begins_sentence(sentence, i) && !depends(sentence, begin, i);
        const bool person = begins_with_person(sentence, i) &&
                            !is_one_of(sentence.word(begin), List::openings_of_clauses);
        // of the first clause alone, which a verb leads: behind it stands a list of them
        const bool change = begin == 0 && sentence.forms(0).past &&
                            begins_with_change(sentence, i) && !depends(sentence, 0, i);
        const bool splices =
            (begins || person || change) && i > begin + 2 && sentence.token(i).depth == 0;
        if (splices) return sentence.extent(i - 2, i + 1);
        begin = i;
    }
    return std::nullopt;
}

// `Cleaned 9 tanks this kept the fish well`: no sign at all.
std::optional<english::Extent> run_on_this(const Sentence& sentence) {
    for (std::size_t i = 2; i + 1 < sentence.size(); ++i) {
        if (!sentence.is_word(i, {"this", "it"}) || !is_past_alone(sentence, i + 1)) continue;
        const bool noun = i > 2 && sentence.token(i - 1).kind == TokenKind::word &&
                          sentence.classes(i - 1) == 0 && sentence.word(i - 1).ends_with('s');
        if (noun && !depends(sentence, 0, i)) return sentence.extent(i - 1, i + 1);
    }
    return std::nullopt;
}

bool may_run_on(std::string_view lower) {
    return lower.find(',') != lower.npos ||
           std::ranges::any_of(new_subjects,
                               [&](std::string_view one) { return has_phrase(lower, one); });
}

void run_on(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : context.bullets) {
        if (!may_run_on(bullet.part.lower)) continue;
        const auto opening = bullet.reading.opening;
        using Opening = english::BulletReading::Opening;
        if (opening == Opening::participle || opening == Opening::gerund) continue;
        const Sentence& sentence = bullet.part.sentence;
        auto two = second_sentence(sentence);
        if (!two) two = run_on_this(sentence);
        if (two)
            report<messages::run_on>(findings, bullet.place(*two), in_quotes(bullet.words(*two)));
    }
}

// --- signs

// Of several of one sign; three points stand for what is left out.
std::size_t doubled_sign(std::string_view text) {
    for (std::size_t i = 0; i + 1 < text.size(); ++i) {
        if (text[i] != text[i + 1] || std::string_view(",;:.").find(text[i]) == text.npos) continue;
        const std::size_t end = std::min(text.find_first_not_of(text[i], i), text.size());
        if (text[i] != '.' || end - i == 2) return i;
        i = end - 1;
    }
    return std::string_view::npos;
}

// `eels,crabs`
std::size_t unspaced_comma(std::string_view text) {
    for (std::size_t i = 2; i + 2 < text.size(); ++i) {
        if (text[i] != ',' && text[i] != ';') continue;
        const bool letters = is_small_letter(text[i - 1]) && is_small_letter(text[i - 2]) &&
                             is_ascii_letter(text[i + 1]) && is_small_letter(text[i + 2]);
        if (letters) return i;
    }
    return std::string_view::npos;
}

// `the diagram, and, labeled`: no second comma closes what the first would open.
std::size_t stray_comma(std::string_view lower) {
    for (const std::string_view joint : {" and,", " or,", " but,"}) {
        const std::size_t at = lower.find(joint);
        if (at == lower.npos) continue;
        const std::string_view rest = lower.substr(at + joint.size());
        if (rest.find(',') == rest.npos && rest.find(" --") == rest.npos) return at + 1;
    }
    return std::string_view::npos;
}

// `to MODS, that a museum adopted`: what tells which one it is needs no comma.
std::size_t comma_before_that(std::string_view lower) {
    for (const std::string_view article : {", that a ", ", that the ", ", that an ", ", that our "})
        if (const std::size_t at = lower.find(article); at != lower.npos) return at;
    return std::string_view::npos;
}

// `Painted railings,`: something was to follow.
std::size_t comma_at_end(std::string_view text) {
    const std::size_t last = text.find_last_not_of(' ');
    return last != text.npos && last > 0 && (text[last] == ',' || text[last] == ';') ? last
                                                                                     : text.npos;
}

// `8 %`, `640$`: the place of the percent and of the dollar in the US.
std::size_t misplaced_sign(std::string_view text) {
    for (std::size_t i = 1; i < text.size(); ++i) {
        const bool ends = i + 1 == text.size() ||
                          std::string_view(" ,.;)").find(text[i + 1]) != std::string_view::npos;
        if (text[i] == '%' && i > 1 && text[i - 1] == ' ' && is_figure(text[i - 2])) return i;
        if (text[i] != '$' || !is_figure(text[i - 1]) || !ends) continue;
        const std::size_t before = text.find_last_not_of("0123456789,.", i - 1);
        if (before == text.npos || text[before] != '$') return i;
    }
    return std::string_view::npos;
}

// `$30,00`, `1,0000`: behind a comma stand three figures.
std::size_t misgrouped(std::string_view text) {
    for (std::size_t i = 1; i + 1 < text.size(); ++i) {
        if (text[i] != ',' || !is_figure(text[i - 1]) || !is_figure(text[i + 1])) continue;
        const std::size_t end = std::min(text.find_first_not_of("0123456789", i + 1), text.size());
        const std::size_t begin = text.find_last_not_of("0123456789,", i) + 1; // npos + 1 is 0
        const bool money = begin > 0 && text[begin - 1] == '$';
        const std::size_t group = end - i - 1;
        if ((money && group != 3) || group == 4) return i;
    }
    return std::string_view::npos;
}

// Of the bracket that is opened and not closed, or closed and not opened; `a)` counts.
std::size_t lone_bracket(std::string_view text, char opening, char closing) {
    std::vector<std::size_t> open;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] == opening) open.push_back(i);
        if (text[i] != closing) continue;
        const bool counts =
            i > 0 && is_letter_or_figure(text[i - 1]) && (i == 1 || text[i - 2] == ' ');
        const bool smiles = i > 0 && !is_letter_or_figure(text[i - 1]);
        if (!open.empty())
            open.pop_back();
        else if (!counts && !smiles)
            return i;
    }
    return open.empty() ? std::string_view::npos : open.back();
}

// Of the quotation mark that has no other; 24" is inches.
std::size_t lone_quote(std::string_view text) {
    std::size_t count = 0, last = text.npos;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] != '"' || (i > 0 && is_figure(text[i - 1]))) continue;
        ++count;
        last = i;
    }
    if (count % 2 == 1) return last;
    // as the page has them
    const std::size_t open = text.rfind("\u201C"), close = text.rfind("\u201D");
    return open != text.npos && (close == text.npos || close < open) ? open : text.npos;
}

void punctuation(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        const bool address = part.in_heading || (part.field && !is_prose(part) &&
                                                 has(part.field->name, trade::Trait::names));
        if (address) continue;
        const std::string& text = part.plain;
        const auto tell = [&](std::size_t at, std::size_t length, const Message& what,
                              const Message& mend) {
            if (at == text.npos) return;
            report<messages::odd_sign>(findings, part.text.place(at, length), what.text)
                .suggestion = mend.text;
        };
        tell(doubled_sign(text), 2, messages::doubled_sign, messages::one_sign);
        tell(unspaced_comma(text), 1, messages::unspaced_sign, messages::space_behind);
        tell(stray_comma(part.lower), 4, messages::stray_comma, messages::sign_at_pause);
        tell(lone_bracket(text, '(', ')'), 1, messages::lone_parenthesis, messages::other_half);
        tell(lone_bracket(text, '[', ']'), 1, messages::lone_bracket, messages::other_half);
        tell(lone_quote(text), 1, messages::lone_quote, messages::other_half);
        if (!is_prose(part)) continue;
        tell(comma_before_that(part.lower), 6, messages::comma_before_that,
             messages::sign_at_pause);
        tell(comma_at_end(text), 1, messages::comma_at_end, messages::sign_at_pause);
        tell(misplaced_sign(text), 1, messages::misplaced_sign, messages::sign_at_figure);
        tell(misgrouped(text), 1, messages::misgrouped, messages::see_number);
    }
}

// --- what shouts

bool is_capitals(std::string_view word) {
    return word.size() > 1 && std::ranges::all_of(word, is_capital_letter);
}

// Three words and most of all in capitals, of more than a name's length.
bool is_all_capitals(const TextInResume& part) {
    constexpr std::size_t least = 3;
    std::size_t loud = 0, all = 0;
    for (const WordAt& word : part.words) {
        if (has_digit(word.word)) continue;
        ++all;
        if (is_capitals(word.word)) ++loud;
    }
    return loud >= least && 4 * loud >= 3 * all;
}

// Not in titles: in italics, in quotation marks.
std::size_t exclaimed(const model::Text& text) {
    std::size_t begin = 0;
    for (const model::Span& span : text.spans) {
        const std::size_t at = span.text.find('!');
        const bool owned = span.marks.emphasis || span.link;
        const std::string_view after =
            std::string_view(span.text).substr(std::min(at, span.text.size()));
        if (at != span.text.npos && !owned && after.find("\u201D") == after.npos) return begin + at;
        begin += span.text.size();
    }
    return std::string::npos;
}

std::size_t smiley_in(std::string_view text) {
    for (const std::string_view smiley : {":)", ":-)", ";)", ";-)", ":D", ":(", "<3", "^_^"}) {
        const std::size_t at = text.find(smiley);
        if (at != text.npos && (at == 0 || text[at - 1] == ' ')) return at;
    }
    return std::string_view::npos;
}

void loud(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        if (!is_prose(part) && !is_group(part)) continue;
        const std::string& text = part.plain;
        const std::size_t sign = exclaimed(part.text), smiley = smiley_in(text);
        if (sign != text.npos)
            report<messages::exclaimed>(findings, part.text.place(sign, 1));
        else if (smiley != text.npos)
            report<messages::smiley>(findings, part.text.place(smiley, 2));
        else if (is_prose(part) && is_all_capitals(part))
            report<messages::all_in_capitals>(findings, part.text.place(0, text.size()));
    }
}

// --- words of talk

bool is_counted(std::string_view text, std::size_t at) { // a figure stands right before
    return at > 1 && is_figure(text[at - 2]);
}

void slang(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        if (!is_prose(part) && !is_group(part)) continue;
        const std::string& lower = part.lower;
        for (const std::string_view phrase : listed(List::slang)) {
            const std::size_t at = part.phrased.find(phrase);
            const bool verb = at == 0 && phrase == "stuff";                  // Stuff envelopes
            if (at == lower.npos || verb || is_counted(lower, at)) continue; // 40 tons of steel
            report<messages::slang>(findings, part.text.place(at, phrase.size()),
                                    in_quotes(part.plain.substr(at, phrase.size())));
            break;
        }
    }
}

constexpr std::array sentence_table{
    Check{"run-on", Weight::should, "wording",
          "No second sentence begins in a bullet after a comma, or after no sign at all.",
          "Two sentences joined by a comma read as haste.",
          "common practice, as guides to usage have it", "- Wrote notes, they go to the officer",
          "- Wrote notes that go to the officer", run_on},
    Check{"unfinished", Weight::must, "wording",
          "No bullet ends in a word that something has to follow.",
          "The rest was lost, and the reader sees that nobody looked.", "common practice",
          "- Settled 9 claims, recovering $1.9 million from the",
          "- Settled 9 claims, recovering $1.9 million", unfinished},
    Check{"parallel", Weight::should, "wording", "The verbs of a list have one form.",
          "A list whose verbs part ways has to be read twice.",
          "common practice, as guides to usage have it",
          "- Answer 40 calls a day and scheduling 9 trucks",
          "- Answer 40 calls a day and schedule 9 trucks", unparallel},
    Check{"punctuation", Weight::should, "consistency",
          "Commas, semicolons and full stops stand once and have a space behind them, none is "
          "left over, and parentheses are closed.",
          "A stray sign looks like a draft.", "common practice",
          "- Drew the diagram, and, labeled it", "- Drew the diagram and labeled it", punctuation},
    Check{"loud", Weight::consider, "wording",
          "No exclamation marks, no smileys, no line all in capitals; titles aside.",
          "What is loud on paper sounds unsure.", "common practice", "- Sold 40 tickets!",
          "- Sold 40 tickets", loud},
    Check{"slang", Weight::should, "wording", "No words of talk and of messages: 'gonna', 'stuff'.",
          "The page is read as a sample of how you write to customers.", "common practice",
          "- Sold tons of stuff", "- Sold 140 tickets", slang},
};

}

std::span<const Check> sentence_checks() {
    return sentence_table;
}

}
