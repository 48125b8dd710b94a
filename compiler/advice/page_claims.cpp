// Checks of what the page says in two places: a figure in the summary and in a bullet, a bullet and
// another; and of what was to be filled in.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/date_order.hpp"
#include "compiler/advice/degree_claims.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/english/stems.hpp"
#include "compiler/english/tokens.hpp"
#include "compiler/trade/limits.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>
#include <set>

namespace quoin::advice {

namespace {

using trade::FieldName;

// --- what is said twice

constexpr std::size_t most_bullets = 150; // of more no page is made

bool is_little(std::string_view word) {
    return word.size() < 3 || has_digit(word) || is_one_of(word, List::needed_words) ||
           is_one_of(word, List::little_words) || is_one_of(word, List::number_words) ||
           is_one_of(word, List::function_words) || is_one_of(word, List::turns);
}

using Stems = std::set<std::string>;

Stems stems_of(std::string_view text, const english::Stemmer& stemmer) {
    Stems stems;
    for (const WordAt& word : words_in(text)) {
        const std::string small = lower_case(word.word);
        if (!is_little(small)) stems.insert(stemmer.stem(small));
    }
    return stems;
}

std::size_t shared(const Stems& a, const Stems& b) {
    return static_cast<std::size_t>(
        std::ranges::count_if(a, [&](const std::string& stem) { return b.contains(stem); }));
}

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

// --- figures in two places

struct Amount {
    double value = 0;
    char kind = ' ';      // %, $ or none
    std::string of;       // what is counted, its stem
    std::size_t at = 0;   // bytes
    std::size_t size = 0; // bytes
};

std::optional<Amount> amount_in(std::string_view word) {
    Amount amount;
    if (word.starts_with('$')) {
        amount.kind = '$';
        word.remove_prefix(1);
    }
    std::string plain(word);
    std::erase(plain, ',');
    const auto end = std::from_chars(plain.data(), plain.data() + plain.size(), amount.value);
    const std::string_view rest(end.ptr,
                                static_cast<std::size_t>(plain.data() + plain.size() - end.ptr));
    if (end.ec != std::errc{} || (!rest.empty() && rest != "%")) return std::nullopt;
    if (rest == "%") amount.kind = '%';
    return amount;
}

// Not years, nor measures of time.
std::vector<Amount> amounts_in(std::string_view text, const english::Stemmer& stemmer) {
    std::vector<Amount> amounts;
    const english::Tokens tokens = english::read_tokens(text, {});
    for (std::size_t i = 0; i < tokens.size(); ++i) {
        auto amount = tokens[i].kind == english::TokenKind::figure ? amount_in(tokens[i].lower)
                                                                   : std::nullopt;
        if (!amount) continue;
        const std::string next = i + 1 < tokens.size() ? tokens[i + 1].lower : std::string();
        if (next == "percent") amount->kind = '%';
        if (amount->kind == ' ' && (is_little(next) || next.empty())) continue;
        if (next.starts_with("year") || next.starts_with("month")) continue;
        if (amount->kind == ' ') amount->of = stemmer.stem(next);
        amount->at = tokens[i].extent.offset;
        amount->size = tokens[i].extent.length;
        amounts.push_back(std::move(*amount));
    }
    return amounts;
}

bool is_rounded(std::string_view lower) {
    constexpr std::array<std::string_view, 11> words{"over",     "more than",  "nearly", "about",
                                                     "almost",   "up to",      "around", "some",
                                                     "at least", "as many as", "total"};
    return lower.find('+') != lower.npos ||
           std::ranges::any_of(words, [&](std::string_view one) { return has_phrase(lower, one); });
}

// The one amount of `bullet` that is of the same kind as `claimed`; none if any agrees with it.
std::optional<Amount> other_amount(const Amount& claimed, std::string_view bullet,
                                   const english::Stemmer& stemmer) {
    std::optional<Amount> other;
    for (const Amount& one : amounts_in(bullet, stemmer)) {
        if (one.kind != claimed.kind || one.of != claimed.of) continue;
        if (other || one.value == claimed.value) return std::nullopt;
        other = one;
    }
    return other;
}

// Of a clause of the summary with one figure: the bullet that tells the same with another.
void compare_clause(std::string_view clause, std::size_t offset, const model::Text& text,
                    const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::size_t least = 2;
    const english::Stemmer stemmer;
    const auto claimed = amounts_in(clause, stemmer);
    const Stems said = stems_of(clause, stemmer);
    if (claimed.size() != 1 || said.size() < least || is_rounded(lower_case(clause))) return;
    const WordedBullet* found = nullptr;
    std::optional<Amount> other;
    for (const WordedBullet& bullet : context.bullets) {
        const Stems told = stems_of(bullet.text, stemmer);
        if (shared(said, told) < said.size()) continue;
        if (found) return; // they may be parts of it
        found = &bullet;
        other = other_amount(claimed.front(), bullet.text, stemmer);
    }
    if (!found || !other) return;
    report<messages::figures_differ>(
        findings, text.place(offset + claimed.front().at, claimed.front().size),
        in_quotes(clause.substr(claimed.front().at, claimed.front().size)),
        in_quotes(found->text.substr(other->at, other->size)),
        found->bullet->text.place(0, 1).line);
}

void figures_differ(const ProofContext& context, std::vector<Finding>& findings) {
    gpa_differs(context, findings);
    if (context.bullets.size() > most_bullets) return;
    for (const TextInResume& part : context.texts) {
        const std::string& text = part.plain;
        if (!is_claim(part) || !has_digit(text) || text.size() > 2000) continue;
        for (std::size_t begin = 0; begin < text.size();) {
            std::size_t end = begin;
            const auto parts = [&](std::size_t i) {
                const bool last = i + 1 == text.size() || text[i + 1] == ' ';
                return text[i] == ';' || ((text[i] == '.' || text[i] == ',') && last);
            };
            while (end < text.size() && !parts(end))
                ++end;
            compare_clause(std::string_view(text).substr(begin, end - begin), begin, part.text,
                           context, findings);
            begin = end + 1;
        }
    }
}

// --- what was to be filled in

// XX%, $XXX, X.X, TBD; not a century, nor a size.
bool is_blank(std::string_view word, std::string_view next) {
    constexpr std::array<std::string_view, 10> marks{"TBD", "TODO", "FIXME", "???", "XX.X",
                                                     "X%",  "N%",   "##",    "###", "#%"};
    if (is_one_of(word, marks)) return true;
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

std::optional<english::Extent> blank_in(const TextInResume& part) {
    const std::string_view text = part.plain, lower = part.lower;
    if (is_note_to_self(text)) return english::Extent{0, text.size()};
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
