// Checks of what the page says in two places, a bullet and another, a claim and what bears it out;
// and of what was to be filled in.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/content_stems.hpp"
#include "compiler/advice/degree_claims.hpp"
#include "compiler/advice/figures_differ.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/english/stems.hpp"

#include <algorithm>
#include <array>
#include <optional>

namespace quoin::advice {

namespace {

// --- what is said twice

// `Mixed 9 wireless microphones`, and again, whatever stands behind.
bool begin_alike(std::string_view a, std::string_view b) {
    constexpr std::size_t words = 4;
    std::size_t at = 0;
    for (std::size_t i = 0; i < words && at != a.npos; ++i)
        at = a.find_first_of(" ,;", at + 1);
    return at != a.npos && at > 20 && a.substr(0, at) == b.substr(0, at);
}

void said_twice(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::size_t least = 3;
    if (context.bullets.size() > most_bullets) return;
    const english::Stemmer stemmer;
    std::vector<Stems> stems;
    for (const WordedBullet& bullet : context.bullets) {
        stems.push_back(stems_of(bullet.text, stemmer));
        const Stems& later = stems.back();
        for (std::size_t i = 0; i + 1 < stems.size() && later.size() >= least; ++i) {
            const std::size_t fewer = std::min(stems[i].size(), later.size());
            const bool alike = begin_alike(context.bullets[i].text, bullet.text);
            if (fewer < least || (!alike && 4 * shared(stems[i], later) < 3 * fewer)) continue;
            if (!bullet.bullet->tags.empty()) break; // another wording for another build
            report<messages::said_twice>(findings, bullet.place({0, bullet.text.size()}),
                                         context.bullets[i].bullet->text.place(0, 1).line);
            break;
        }
    }
}

// --- what was to be filled in

// XX%, $XXX, X.X, TBD; not a century, nor a size.
bool is_blank(std::string_view word, std::string_view next) {
    constexpr std::array<std::string_view, 10> marks{"TBD", "TODO", "FIXME", "???", "XX.X",
                                                     "X%",  "N%",   "##",    "###", "#%"};
    if (is_one_of(word, marks)) return true;
    if (word.find('X') == word.npos && word.find('x') == word.npos) return false;
    const bool signed_one = word.starts_with('$') || word.ends_with('%') || word.ends_with('+');
    const std::string_view letters = trimmed(word, "$%+,.;");
    const bool crosses =
        letters.size() > 1 && letters.size() < 8 && std::ranges::all_of(letters, [](char c) {
            return c == 'X' || c == 'x' || c == '.' || c == ',';
        });
    if (!crosses) return false;
    if (letters.size() > 2 && std::ranges::all_of(letters, [](char c) { return c == 'x'; }))
        return true;
    return signed_one || letters.find('.') != letters.npos ||
           (letters.front() == 'X' && !next.empty() && is_small_letter(next.front()));
}

// `[client name]`, but not of code, array[index], nor `[sic]` and what a quotation adds.
std::optional<english::Extent> blank_in_brackets(std::string_view text, std::string_view lower) {
    constexpr std::array<std::string_view, 12> surely{"[company", "[date",   "[employer", "[insert",
                                                      "[name",    "[number", "[role",     "[x]",
                                                      "[xx",      "[title",  "[city",     "[#]"};
    constexpr std::size_t longest = 40; // bytes
    if (text.find('[') == text.npos) return std::nullopt;
    for (const std::string_view blank : surely)
        if (const std::size_t at = lower.find(blank); at != lower.npos)
            return english::Extent{at, blank.size()};
    for (std::size_t at = text.find('['); at != text.npos; at = text.find('[', at + 1)) {
        const std::size_t length = text.substr(at, longest).find(']');
        if (length == text.npos || length == 1) continue;
        const std::size_t end = at + length;
        const std::string inner = lower_case(text.substr(at + 1, end - at - 1));
        const bool words = std::ranges::all_of(inner, [](char c) {
            return is_small_letter(c) || c == ' ' || c == '-' || c == '#' || c == '/' || c == '_';
        });
        const char before = at == 0 ? ' ' : text[at - 1];
        if (text.substr(end + 1).starts_with('(')) continue; // a link of other markup
        if (words && (before == ' ' || before == '$' || before == '(') && inner != "sic" &&
            inner != "we" && inner != "i" && inner != "the")
            return english::Extent{at, end - at + 1};
    }
    return std::nullopt;
}

// `(amount)`, `<number>`: a word of what was to stand there.
std::optional<english::Extent> blank_named(std::string_view lower) {
    if (lower.find_first_of("(<{") == lower.npos) return std::nullopt;
    for (const std::string_view name :
         {"number", "amount", "name", "company", "company name", "employer", "date", "dates",
          "role", "title", "city", "school", "your name", "percent", "percentage", "metric"})
        for (const std::string_view signs : {"()", "<>", "{}"}) {
            const std::string blank = signs[0] + std::string(name) + signs[1];
            if (const std::size_t at = lower.find(blank); at != lower.npos)
                return english::Extent{at, blank.size()};
        }
    return std::nullopt;
}

// `Trained X employees`: a letter where a number was to be.
std::optional<english::Extent> letter_for_number(const std::vector<WordAt>& words) {
    constexpr std::array<std::string_view, 12> named{"type",  "title",  "generation", "gen",
                                                     "phase", "factor", "vitamin",    "grade",
                                                     "class", "model",  "twitter",    "malcolm"};
    constexpr std::array<std::string_view, 3> names{"rays", "rayed", "games"};
    for (std::size_t i = 1; i + 1 < words.size(); ++i) {
        if (words[i].word != "X" && words[i].word != "N") continue;
        const std::string_view before = words[i - 1].word, after = words[i + 1].word;
        const bool counts = after.size() > 3 && after.ends_with('s') && all_small_letters(after) &&
                            !is_one_of(after, names);
        const bool apart = words[i].offset + 2 == words[i + 1].offset;
        const bool name = (i > 1 && is_capitalised(before)) || is_one_of(lower_case(before), named);
        if (counts && apart && !name) return english::Extent{words[i].offset, 1};
    }
    return std::nullopt;
}

// `(ask Bram if he minds??)`: a note to oneself, in parentheses alone.
bool is_note_to_self(std::string_view text) {
    if (text.size() < 3 || text.front() != '(' || text.back() != ')') return false;
    const std::string inner = ' ' + lower_case(text.substr(1, text.size() - 2));
    if (inner.find('?') != inner.npos) return true;
    constexpr std::array<std::string_view, 9> asides{" ask ",     " check ",    " fix ",
                                                     " add ",     " remember ", " find out ",
                                                     " look up ", " maybe ",    " not sure "};
    return std::ranges::any_of(asides,
                               [&](std::string_view aside) { return inner.starts_with(aside); });
}

// `brb fix this later`: what is still to be done to the line.
bool is_put_off(const TextInResume& part) {
    constexpr std::array<std::string_view, 10> chores{"fix",    "add", "finish", "check", "edit",
                                                      "update", "ask", "expand", "write", "redo"};
    constexpr std::size_t most_words = 5;
    return part.lower.ends_with(" later") && part.words.size() <= most_words &&
           std::ranges::any_of(part.words, [&](const WordAt& word) {
               return is_one_of(lower_case(word.word), chores);
           });
}

std::optional<english::Extent> blank_in(const TextInResume& part) {
    const std::string_view text = part.plain, lower = part.lower;
    if (is_note_to_self(text) || is_put_off(part)) return english::Extent{0, text.size()};
    if (const std::size_t at = text.find("??"); at != text.npos)
        return english::Extent{at, std::min(text.find_first_not_of('?', at), text.size()) - at};
    if (const std::size_t at = text.find("___"); at != text.npos) return english::Extent{at, 3};
    for (const std::string_view phrase :
         {"lorem ipsum", "yourname", "to be added", "insert number"})
        if (const std::size_t at = lower.find(phrase); at != lower.npos)
            return english::Extent{at, phrase.size()};
    if (const auto blank = blank_in_brackets(text, lower)) return blank;
    if (const auto blank = blank_named(lower)) return blank;
    if (const auto blank = letter_for_number(part.words)) return blank;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        const std::size_t after = std::min(end + 1, text.size());
        const std::string_view next =
            text.substr(after, std::min(text.find(' ', after), text.size()) - after);
        if (is_blank(text.substr(at, end - at), next)) return english::Extent{at, end - at};
        at = end + 1;
    }
    return std::nullopt;
}

// A field that holds the name of what it was to hold.
bool names_itself(const TextInResume& part, std::string_view lower) {
    constexpr std::array<std::string_view, 13> names{
        "job title",   "company name", "company",        "employer name",  "city, state",
        "school name", "degree name",  "your school",    "position title", "role title",
        "your degree", "your title",   "name of company"};
    return part.field && !part.bullet && is_one_of(lower, names);
}

void left_blank(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        const std::string& text = part.plain;
        const auto blank = names_itself(part, part.lower)
                               ? std::optional(english::Extent{0, text.size()})
                               : blank_in(part);
        if (blank)
            report<messages::left_blank>(findings, part.text.place(blank->offset, blank->length),
                                         in_quotes(text.substr(blank->offset, blank->length)));
    }
}

constexpr std::array page_claim_table{
    Check{"degree-claimed", Weight::must, "claims",
          "Headline and summary claim no degree, and no licence that needs one, before it is "
          "earned.",
          "It is looked up, and a claim that is ahead of its date ends the matter.",
          "common practice", "headline: Biology graduate, and graduation: May 2027 (expected)",
          "headline: Biology student, graduating in May 2027", degree_claimed},
    Check{"figures-differ", Weight::must, "claims",
          "A figure in headline or summary is the same as in the bullet that tells of it.",
          "Of two figures for one thing a reader believes neither.", "common practice",
          "text: Cut waste 22%. and - Cut waste 12% in a year",
          "text: Cut waste 12%. and - Cut waste 12% in a year", figures_differ},
    Check{"left-blank", Weight::must, "claims",
          "Nothing is left that was to be filled in: XX%, TBD, [name].",
          "It says that nobody has read the page to its end.", "common practice", "- Cut waste XX%",
          "- Cut waste 12%", left_blank},
    Check{"said-twice", Weight::should, "wording",
          "No bullet says what another has said already, in nearly the same words.",
          "The second one takes the room of something new.", "common practice",
          "- Trained 4 volunteers in survey methods, twice",
          "- Trained 4 volunteers in survey methods, once", said_twice},
};

}

std::span<const Check> page_claim_checks() {
    return page_claim_table;
}

}
