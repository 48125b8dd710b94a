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
    const bool name = is_capital(s.token(i)) && i > 0; // the first word has its capital anyway
    return s.is(i, List::plural_or_singular) || name || s.token(i).title;
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
    // an app for restaurants that syncs
    const bool beside = s.is_word(outer, {"for", "with", "from", "in", "on", "at", "to", "by"});
    if (beside && !s.is_word(i, {"who"})) return std::nullopt;
    if (one && s.is(noun, List::times)) return std::nullopt; // 40 fittings a week that were
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
    // sketches that crews still use
    const std::size_t own = s.past_adverbs(i + 1);
    if (own > i + 1 && is_plural_noun(s, i) && s.forms(own).base && !s.is_word(i - 1, {"who"}))
        return {};
    // logs that shows every dose
    const bool object = s.is(i + 1, w::determiner | w::possessive) || s.is_number(i + 1);
    // groups that meets daily: no noun stands there, with nothing to follow
    const bool closes = s.ends_phrase(i + 1) || s.is(i + 1, w::adverb) ||
                        s.is_word(i + 1, {"daily", "weekly", "monthly", "nightly", "yearly"});
    const bool sure = s.is_word(i - 1, {"who"}) || !forms.verb->noun || object || closes;
    if (plural && forms.third && sure) return std::string(forms.verb->base);
    // a guide that explain 14 forms; but a plan that staff made
    const bool deed = s.is_word(i - 1, {"who"}) || (object && mostly_verb(*forms.verb));
    if (!plural && forms.base && !forms.past && sure && deed) return third_person(forms.verb->base);
    return {};
}

// `Organize a walk among 14 shops that draws 2,300`: it may be the walk that draws.
bool may_be_of_noun_before(const Sentence& s, std::size_t noun) {
    std::size_t k = noun;
    while (k > 0 && (is_content(s, k - 1) || s.is_number(k - 1) ||
                     s.is(k - 1, w::determiner | w::possessive)))
        --k;
    if (k < 3 || !s.is(k - 1, w::preposition)) return false;
    return is_content(s, k - 2) && !is_plural_noun(s, k - 2);
}

std::optional<Disagreement> in_relative(const Sentence& s, std::size_t i) {
    if (!s.is_word(i, {"that", "which", "who"})) return std::nullopt;
    const auto subject = antecedent(s, i);
    if (subject && subject->plural && !s.is_word(i, {"who"}) &&
        may_be_of_noun_before(s, subject->noun))
        return std::nullopt;
    const std::size_t verb = s.past_adverbs(i + 1);
    if (!subject) return std::nullopt;
    std::string meant = in_other_number(s, verb, subject->plural);
    if (meant.empty() && verb == i + 1) meant = of_open_verb(s, verb, subject->plural);
    if (meant.empty()) return std::nullopt;
    return Disagreement{s.token(subject->noun).extent, s.token(verb).extent, std::move(meant),
                        false};
}

bool is_done_to_things(const Sentence& s, std::size_t i) {
    return s.is_word(i, {"adopted", "bought", "displayed", "filed", "hung", "installed", "mailed",
                         "posted", "printed", "published", "sent", "shipped", "shown", "sold",
                         "stored", "used"});
}

// `Timed 9 sprints, which was used to pick a team`: what is used or sold is a thing, and not that
// it was done.
std::optional<Disagreement> behind_comma(const Sentence& s, std::size_t i) {
    const bool told = s.is_word(i, {"which"}) && i > 1 && s.token(i - 1).kind == TokenKind::comma &&
                      s.is_word(i + 1, {"was", "is", "has"});
    const std::size_t deed = i + (s.is_word(i + 2, {"been"}) ? 3 : 2);
    if (!told || !is_done_to_things(s, s.past_adverbs(deed))) return std::nullopt;
    const auto subject = antecedent(s, i - 1);
    if (!subject || !subject->plural) return std::nullopt;
    return Disagreement{s.token(subject->noun).extent, s.token(i + 1).extent,
                        in_other_number(s, i + 1, true), false};
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

// The verb of what begins at `first` with `of`, plain things between: each of the residents have.
std::size_t past_of_phrase(const Sentence& s, std::size_t first) {
    constexpr std::size_t longest = 6; // words
    std::size_t k = first + 1;
    while (k < first + longest &&
           (is_content(s, k) || s.is_number(k) || s.is(k, w::determiner | w::possessive)) &&
           !s.is_word(k, {"that"}))
        ++k;
    return k;
}

// `Each of the residents have`, `One of the pumps were`, `Condition of 40 tanks were logged`
std::optional<Disagreement> before_of_phrase(const Sentence& s, std::size_t i) {
    if (i == 0 || !s.is_word(i, {"of"})) return std::nullopt;
    const std::size_t head = i - 1, verb = past_of_phrase(s, i);
    if (!s.is_word(verb, {"have", "are", "were", "do"})) return std::nullopt;
    const bool one = s.is_word(head, {"each", "either", "neither", "one"}) &&
                     !(head > 0 && s.is_word(head - 1, {"than", "every", "only"}));
    const std::size_t first = head > 0 && s.is_word(head - 1, {"the", "a", "an"}) ? head - 1 : head;
    const bool opens = first == 0 || s.token(first - 1).kind == TokenKind::stop;
    const bool single = opens && is_content(s, head) && !s.token(head).title &&
                        !is_plural_noun(s, head) && !is_either_number(s, head == 0 ? 1 : head) &&
                        !s.is(head, List::groups) && !s.is(head, List::plural_or_singular) &&
                        is_plural_noun(s, verb - 1) &&
                        (s.forms(head).none() || s.forms(head).verb->noun) && !s.forms(head).past;
    const bool the_number = opens && first < head && s.is_word(first, {"the"}) &&
                            s.is_word(head, {"number", "list", "percentage", "amount", "rate"});
    if (!one && !single && !the_number) return std::nullopt;
    const std::string_view meant = s.is_word(verb, {"have"})   ? "has"
                                   : s.is_word(verb, {"are"})  ? "is"
                                   : s.is_word(verb, {"were"}) ? "was"
                                                               : "does";
    return Disagreement{s.token(head).extent, s.token(verb).extent, std::string(meant), false};
}

// `Three of the pumps was rebuilt`
std::optional<Disagreement> after_counted_of(const Sentence& s, std::size_t i) {
    const bool some =
        i == 1 && s.is_word(i, {"of"}) && s.is_number(0) && !s.is_word(0, {"one", "1"});
    const std::size_t verb = past_of_phrase(s, i);
    if (!some || s.word(0).ends_with('%') || !is_plural_subject(s, verb - 1)) return std::nullopt;
    std::string meant = in_other_number(s, verb, true);
    if (meant.empty()) return std::nullopt;
    return Disagreement{s.token(0).extent, s.token(verb).extent, std::move(meant), false};
}

// `Take bitewings; 96% of images is accepted`: a share goes by what it is of; of money or stuff it
// may stand in the singular.
std::optional<Disagreement> after_share_of(const Sentence& s, std::size_t i) {
    const bool share = i > 0 && s.is_word(i, {"of"}) && s.word(i - 1).ends_with('%');
    const bool opens = share && (i == 1 || s.token(i - 2).kind == TokenKind::stop);
    const std::size_t verb = opens ? past_of_phrase(s, i) : 0;
    if (verb < 2 || !is_plural_subject(s, verb - 1) ||
        s.is_word(verb - 1,
                  {"sales", "savings", "earnings", "costs", "funds", "taxes", "proceeds"}))
        return std::nullopt;
    std::string meant = in_other_number(s, verb, true);
    if (meant.empty()) return std::nullopt;
    return Disagreement{s.token(i - 1).extent, s.token(verb).extent, std::move(meant), false};
}

// `11 signs, 9 of which is still up`
std::optional<Disagreement> after_some_of(const Sentence& s, std::size_t i) {
    if (const auto counted = after_counted_of(s, i)) return counted;
    if (const auto share = after_share_of(s, i)) return share;
    const bool some = i > 0 && s.is_word(i, {"of"}) &&
                      s.is_word(i + 1, {"which", "whom", "them"}) && s.is_number(i - 1) &&
                      !s.is_word(i - 1, {"one", "1"});
    if (!some || s.word(i - 1).ends_with('%')) return std::nullopt;
    std::string meant = in_other_number(s, i + 2, true);
    if (meant.empty()) return std::nullopt;
    return Disagreement{s.token(i - 1).extent, s.token(i + 2).extent, std::move(meant), false};
}

// `Trained 15 nurses; 13 is still there`: a count alone is of what was counted before.
std::optional<Disagreement> after_bare_count(const Sentence& s, std::size_t i) {
    const bool opens = i > 1 && s.token(i - 1).kind == TokenKind::stop && s.is_number(i);
    if (!opens || s.is_word(i, {"one", "1"}) || !s.is_word(i + 1, {"was", "is", "has"}))
        return std::nullopt;
    const std::string_view count = s.token(i).text;
    if (count.front() == '$' || count.ends_with('%')) return std::nullopt;
    for (std::size_t k = i - 1; k-- > 1;)
        if (is_plural_subject(s, k))
            return Disagreement{s.token(i).extent, s.token(i + 1).extent,
                                in_other_number(s, i + 1, true), false};
    return std::nullopt;
}

// `Each resident have`, `everyone were`
std::optional<Disagreement> after_each(const Sentence& s, std::size_t i) {
    const bool everyone = s.is_word(i, {"everyone", "everybody", "nobody", "he", "she", "it"});
    const bool each =
        s.is_word(i, {"each", "every"}) && is_content(s, i + 1) && !is_plural_noun(s, i + 1);
    // Trained 5 clerks, each have passed
    const bool alone =
        s.is_word(i, {"each"}) && i > 0 && s.token(i - 1).kind == TokenKind::comma && !each;
    const std::size_t verb = i + (everyone || alone ? 1 : 2);
    if ((!everyone && !each && !alone) || !s.is_word(verb, {"have", "are", "were"}))
        return std::nullopt;
    if (everyone && i > 1 && s.is_word(i - 1, {"and", "if", "than", "of", "as"}))
        return std::nullopt;
    const std::string_view meant = s.is_word(verb, {"have"})  ? "has"
                                   : s.is_word(verb, {"are"}) ? "is"
                                                              : "was";
    return Disagreement{s.token(verb - 1).extent, s.token(verb).extent, std::string(meant), false};
}

// `there was 9 errors`, `they was`
std::optional<Disagreement> after_pronoun(const Sentence& s, std::size_t i) {
    const std::size_t verb = i + 1;
    if (s.is_word(i, {"they", "we", "these", "those", "you"}) &&
        s.is_word(verb, {"was", "is", "has"}))
        return Disagreement{s.token(i).extent, s.token(verb).extent, in_other_number(s, verb, true),
                            false};
    const bool described = is_content(s, i + 3) && is_plural_subject(s, i + 4); // 3 repeat clients
    const bool some = s.is_number(i + 2) || s.is_word(i + 2, {"no", "several", "many", "few"});
    const bool counted =
        some && !s.is_word(i + 2, {"one", "1"}) && (is_plural_subject(s, i + 3) || described);
    if (s.is_word(i, {"there"}) && s.is_word(verb, {"was", "is"}) && counted)
        return Disagreement{s.extent(i + 2, i + 3), s.token(verb).extent,
                            in_other_number(s, verb, true), false};
    return std::nullopt;
}

// `Hulls were inspected and was passed`: one subject, two numbers.
std::optional<Disagreement> after_joined(const Sentence& s, std::size_t i) {
    constexpr std::size_t near = 12;
    if (i < 3 || !s.is_word(i - 1, {"and", "but"}) || !s.is_word(i, {"was", "were"}))
        return std::nullopt;
    for (std::size_t k = i - 1; k-- > 0 && k + near > i;) {
        if (s.token(k).kind == TokenKind::stop || s.is(k, w::relative | w::modal) ||
            s.is_word(k, {"there"}))
            return std::nullopt;
        if (!s.is(k, w::past_be)) continue;
        if (s.word(k) == s.word(i) || !s.is_participle(i + 1)) return std::nullopt;
        for (std::size_t before = k; before-- > 0;)
            if (s.is(before, w::relative)) return std::nullopt;
        return Disagreement{s.token(k).extent, s.token(i).extent, s.word(k), false};
    }
    return std::nullopt;
}

// `Hire, train and schedules front of house`: verbs side by side, and one of another person.
std::optional<Disagreement> after_plain_verbs(const Sentence& s, std::size_t i) {
    const VerbForms& forms = s.forms(i);
    if (i < 4 || i > 9 || !forms.third || forms.base || forms.past || !s.is_word(i - 1, {"and"}))
        return std::nullopt;
    std::size_t k = s.token(i - 2).kind == TokenKind::comma ? i - 3 : i - 2;
    for (;; k -= 2) { // hire , train
        const VerbForms& other = s.forms(k);
        if (!other.base || other.past || s.classes(k) != 0 || !other.verb->verb_count)
            return std::nullopt;
        if (k == 0) break;
        if (k < 2 || s.token(k - 1).kind != TokenKind::comma) return std::nullopt;
    }
    if (s.ends_phrase(i + 1) || s.is(i + 1, w::preposition)) return std::nullopt;
    return Disagreement{s.token(0).extent, s.token(i).extent, std::string(forms.verb->base), true};
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
    if (s.is_number(next + 1)) return std::nullopt; // campers ages 6 to 9
    if (!owned || i == 0 || has_two_objects(s, i)) return std::nullopt;
    return Disagreement{s.token(next).extent, s.token(i).extent, s.token(i).text + "'", false};
}

// No clause of another subject stands before: Cleaned the labs survey data.
bool is_in_first_clause(const Sentence& s, std::size_t i) {
    constexpr std::size_t longest = 40; // words of a clause
    if (i > longest) return false;
    for (std::size_t k = 0; k < i; ++k)
        if (s.is(k, w::relative | w::be | w::have | w::modal) || s.token(k).kind == TokenKind::stop)
            return false;
    return i > 0 && !s.forms(0).none();
}

// What stands before a thing that is owned, and seldom behind several things.
bool tells_apart(const Sentence& s, std::size_t i) {
    return s.is_word(i, {"annual", "monthly", "weekly", "quarterly", "yearly", "own", "largest",
                         "oldest", "newest", "main", "latest", "busiest"});
}

// `the labs survey data`, `all patients charts`: a place of work, or persons, and what is theirs.
std::optional<Disagreement> before_owned_thing(const Sentence& s, std::size_t i) {
    const std::string& word = s.word(i);
    if (i < 2 || word.size() < 4 || !word.ends_with('s') || !is_content(s, i)) return std::nullopt;
    if (s.token(i).title || is_capital(s.token(i)) || !is_content(s, i + 1)) return std::nullopt;
    const std::string single = word.ends_with("ies") ? word.substr(0, word.size() - 3) + "y"
                                                     : word.substr(0, word.size() - 1);
    const bool place =
        s.lexicon().has(single, List::owners) && s.is_word(i - 1, {"the", "our", "my"});
    const bool person = is_people(s, i) && s.is(i - 1, w::determiner | w::possessive);
    const std::size_t thing = s.is(i + 1, List::owned) ? i + 1 : i + 2;     // or of two words
    const bool told_apart = tells_apart(s, i + 1) && s.forms(thing).none(); // the clubs annual gala
    const bool owned =
        (s.is(thing, List::owned) || told_apart) && is_content(s, thing) && !s.forms(i + 1).past;
    if (s.is(i + 1, List::of_plurals)) return std::nullopt; // girls locker room
    if ((!place && !person) || !owned || !is_in_first_clause(s, i)) return std::nullopt;
    if (has_two_objects(s, i)) return std::nullopt;
    // after `the` there may be several of them, after `a` there is one
    const bool several = person && s.is_word(i - 1, {"all", "both", "our", "these", "those"});
    return Disagreement{
        s.token(thing).extent, s.token(i).extent,
        several ? s.token(i).text + "'" : s.token(i).text.substr(0, single.size()) + "'s", false};
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
             {in_relative, behind_comma, after_noun, after_pronoun, before_of_phrase, after_some_of,
              after_each, after_bare_count, after_joined, after_plain_verbs, before_owned,
              before_owned_thing, of_irregular_plural})
            if (auto one = look(sentence, i)) {
                found.push_back(std::move(*one));
                break;
            }
    }
    return found;
}

}
