// ICU finds the opportunities of Annex #14; those that would part what a reader takes in as one
// sign are then left out, by two short tables of rules.

#include "compiler/stages/composition/break_opportunities.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/trade/months.hpp"
#include "compiler/trade/units.hpp"

#include <unicode/ubrk.h>
#include <unicode/utext.h>
#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <memory>
#include <optional>
#include <span>
#include <stdexcept>
#include <string>

namespace quoin::composition {
namespace {

using Chunk = std::string_view;
using Iterator = std::unique_ptr<UBreakIterator, decltype(&ubrk_close)>;
using Utf8 = std::unique_ptr<UText, decltype(&utext_close)>;

void require(UErrorCode status, const char* what) {
    if (U_FAILURE(status)) throw std::runtime_error(std::string(what) + ": " + u_errorName(status));
}

Iterator open_iterator() {
    UErrorCode status = U_ZERO_ERROR;
    // The root locale: where a line may end must not hang on the user's settings.
    Iterator iterator(ubrk_open(UBRK_LINE, "", nullptr, 0, &status), ubrk_close);
    require(status, "cannot load the rules for line breaks");
    return iterator;
}

// -- Characters --

Chunk leading_character(Chunk text) {
    return text.empty() ? text : text.substr(0, first_character(text).length);
}

Chunk trailing_character(Chunk text) {
    const auto continues = [](char byte) { return (static_cast<unsigned char>(byte) >> 6) == 2; };
    std::size_t length = std::min<std::size_t>(text.size(), 1);
    while (length < 4 && length < text.size() && continues(text[text.size() - length]))
        ++length;
    return text.substr(text.size() - length);
}

utf8proc_category_t category(Chunk character) {
    if (character.empty()) return UTF8PROC_CATEGORY_CN;
    return utf8proc_category(static_cast<utf8proc_int32_t>(first_character(character).code));
}

bool is_letter_at(Chunk character) {
    const utf8proc_category_t found = category(character);
    return found >= UTF8PROC_CATEGORY_LU && found <= UTF8PROC_CATEGORY_LO;
}

bool is_capital_at(Chunk character) {
    return category(character) == UTF8PROC_CATEGORY_LU;
}

bool is_space_byte(char byte) {
    return byte == ' ' || byte == '\t' || byte == '\n' || byte == '\r';
}

// -- Words --

struct Part { // what letters and figures stand together beside a hyphen or a slash
    std::size_t letters = 0;
    std::size_t figures = 0;
};

bool count(Chunk character, Part& part) {
    if (character.empty()) return false;
    if (is_figure(character.front()))
        ++part.figures;
    else if (is_letter_at(character))
        ++part.letters;
    else
        return false;
    return true;
}

Part first_part(Chunk text) {
    Part part;
    for (Chunk next = leading_character(text); count(next, part); next = leading_character(text))
        text.remove_prefix(next.size());
    return part;
}

Part last_part(Chunk text) {
    Part part;
    for (Chunk next = trailing_character(text); count(next, part); next = trailing_character(text))
        text.remove_suffix(next.size());
    return part;
}

// Nothing before or after most words is to be taken off, and a look at one byte tells.
bool starts_bare(Chunk word) {
    return !word.empty() && is_letter_or_figure(word.front());
}

bool ends_bare(Chunk word) {
    return !word.empty() && is_letter_or_figure(word.back());
}

// A word without the brackets and quotation marks before it.
Chunk opened(Chunk word) {
    static constexpr std::array<Chunk, 6> signs{"(", "[", "\"", "'", "“", "‘"};
    while (!starts_bare(word) && is_one_of(leading_character(word), signs))
        word.remove_prefix(leading_character(word).size());
    return word;
}

// A word without the punctuation, brackets and quotation marks after it.
Chunk closed(Chunk word) {
    static constexpr std::array<Chunk, 12> signs{".", ",", ";",  ":", "!", "?",
                                                 ")", "]", "\"", "'", "”", "’"};
    while (!ends_bare(word) && is_one_of(trailing_character(word), signs))
        word.remove_suffix(trailing_character(word).size());
    return word;
}

bool is_figures(Chunk text) {
    return !text.empty() && std::ranges::all_of(text, is_figure);
}

bool starts_with_digit(Chunk text) {
    return !text.empty() && is_figure(text.front());
}

bool ends_with_digit(Chunk text) {
    return !text.empty() && is_figure(text.back());
}

enum class WordKind { plain, email, web_address };

// Two labels or more parted by full stops, the last of letters alone (RFC 1123, section 2.1).
bool is_host(Chunk text) {
    const auto allowed = [](char byte) {
        return is_ascii_letter(byte) || is_figure(byte) || byte == '-' || byte == '.';
    };
    const std::size_t stop = text.rfind('.');
    if (stop == Chunk::npos || stop == 0 || text.find("..") != Chunk::npos) return false;
    const Chunk last = text.substr(stop + 1);
    return last.size() >= 2 && std::ranges::all_of(last, is_ascii_letter) &&
           std::ranges::all_of(text, allowed);
}

WordKind kind_of(Chunk word) {
    word = closed(opened(word));
    const std::size_t at = word.find('@');
    if (at != Chunk::npos && at > 0 && at + 1 < word.size()) return WordKind::email;
    const bool marked = word.find("://") != Chunk::npos || word.starts_with("www.");
    return marked || is_host(word.substr(0, word.find('/'))) ? WordKind::web_address
                                                             : WordKind::plain;
}

std::vector<Chunk> words_between_spaces(Chunk text) {
    std::vector<Chunk> words;
    for (std::size_t begin = 0; begin < text.size();) {
        std::size_t end = begin;
        while (end < text.size() && !is_space_byte(text[end]))
            ++end;
        if (end > begin) words.push_back(text.substr(begin, end - begin));
        begin = end + 1;
    }
    return words;
}

// -- Between words: `before` has all words up to the opportunity, and is not empty. Each rule says
// whether the last of them and the word after keep together.

using Words = std::span<const Chunk>;

bool lone_dash(Words, Chunk after) {
    static constexpr std::array<Chunk, 4> dashes{"–", "—", "-", "--"};
    return is_one_of(after, dashes);
}

bool is_month(Chunk word) {
    const Chunk name = closed(opened(word));
    return !name.empty() && is_capital_letter(name.front()) && trade::month_named(name);
}

// `Jun 2026`, `May 12`
bool month_and_figure(Words before, Chunk after) {
    return starts_with_digit(after) && is_month(before.back());
}

// `12 May`
bool day_and_month(Words before, Chunk after) {
    const Chunk day = opened(before.back());
    return is_figures(day) && day.size() <= 2 && is_month(after);
}

// `12, 2026` of a date
bool day_and_year(Words before, Chunk after) {
    const Chunk day = before.back();
    return day.ends_with(',') && is_figures(day.substr(0, day.size() - 1)) && day.size() <= 3 &&
           before.size() > 1 && is_month(before[before.size() - 2]) && starts_with_digit(after);
}

// `Summer 2026`
bool season_and_year(Words before, Chunk after) {
    static constexpr std::array<Chunk, 5> seasons{"Spring", "Summer", "Fall", "Autumn", "Winter"};
    return is_one_of(opened(before.back()), seasons) && is_figures(closed(after)) &&
           closed(after).size() == 4;
}

// `+1`, `(360)`
bool opens_phone_number(Chunk word) {
    if (word.starts_with('(') && word.ends_with(')') && word.size() >= 5)
        return is_figures(word.substr(1, word.size() - 2));
    word = opened(word);
    return word.starts_with('+') && is_figures(word.substr(1));
}

bool is_phone_group(Chunk word) {
    static constexpr Chunk signs = "-.()";
    const auto allowed = [](char byte) {
        return is_figure(byte) || signs.find(byte) != Chunk::npos;
    };
    return std::ranges::any_of(word, is_figure) && std::ranges::all_of(word, allowed);
}

// `(360) 555-0142`, `+1 360 555 0142`, `360 555 0142`
bool phone_number(Words before, Chunk after) {
    static constexpr std::size_t most_groups = 6;
    const Chunk group = opened(before.back());
    if (!is_phone_group(closed(after))) return false;
    if (is_figures(group) && group.size() == 3 && closed(after).size() >= 3) return true;
    for (std::size_t i = 1; i <= std::min(most_groups, before.size()); ++i) {
        const Chunk word = before[before.size() - i];
        if (opens_phone_number(word) || !is_phone_group(word)) return opens_phone_number(word);
    }
    return false;
}

// `J. R. Brandt`
bool initial_and_name(Words before, Chunk after) {
    const Chunk word = opened(before.back());
    const Chunk letter = leading_character(word);
    return word.substr(letter.size()) == "." && is_capital_at(letter) &&
           is_capital_at(leading_character(after));
}

// `Dr. Brandt`
bool title_and_name(Words before, Chunk after) {
    static constexpr std::array<Chunk, 9> titles{"Dr.",   "Mr.", "Mrs.", "Ms.",  "Mx.",
                                                 "Prof.", "St.", "Rev.", "Capt."};
    return is_one_of(opened(before.back()), titles) && is_capital_at(leading_character(after));
}

// `No. 5`, `p. 12`
bool abbreviation_and_figure(Words before, Chunk after) {
    static constexpr std::array<Chunk, 16> abbreviations{
        "No.",  "no.",  "Nos.", "nos.", "p.",   "pp.",  "Vol.", "vol.",
        "Fig.", "fig.", "Ch.",  "ch.",  "Sec.", "sec.", "ext.", "§"};
    return starts_with_digit(after) && is_one_of(opened(before.back()), abbreviations);
}

// `18 %`, `300 mL`, `5 km/h`: symbols of units, and those of the clock
bool figure_and_unit(Words before, Chunk after) {
    static constexpr std::array<Chunk, 4> clock{"a.m", "p.m", "AM", "PM"};
    const Chunk unit = closed(after);
    return ends_with_digit(before.back()) &&
           (trade::is_unit_symbol(unit) || is_one_of(unit, clock));
}

// `Spanish- or Portuguese-speaking`: at a line's end readers take the hyphen for one of division
bool suspended_hyphen(Words before, Chunk after) {
    const Chunk word = before.back();
    return word.size() > 1 && word.ends_with('-') && !word.ends_with("--") &&
           is_letter_at(leading_character(after));
}

// `3.62 / 4.00`
bool slash_between_figures(Words before, Chunk after) {
    return before.back() == "/" && starts_with_digit(after);
}

// -- Inside a word. Each rule says whether the parts of the word keep together.

struct Halves {
    Chunk before;
    Chunk after;
    WordKind kind = WordKind::plain; // of the whole word
};

bool email(const Halves& word) {
    return word.kind == WordKind::email;
}

// `ellerystate.example/|survey`, and nowhere else
bool web_address(const Halves& word) {
    const bool after_slash = word.before.ends_with('/') && !word.before.ends_with("//");
    return word.kind == WordKind::web_address && !(after_slash && !word.after.starts_with('/'));
}

// `C++`, `F#`
bool plus_or_number_sign(const Halves& word) {
    static constexpr Chunk signs = "+#";
    return signs.find(word.before.back()) != Chunk::npos ||
           signs.find(word.after.front()) != Chunk::npos;
}

// `and/or`, `CI/CD`, `24/7`; not `design/|research`
bool slash_by_short_word(const Halves& word) {
    static constexpr std::size_t least = 4; // letters
    return word.before.ends_with('/') && word.kind == WordKind::plain &&
           (last_part(word.before.substr(0, word.before.size() - 1)).letters < least ||
            first_part(word.after).letters < least);
}

// `e-mail`, `3-D`, `12-week`, `2019–2021`, `$5–$10`; not `half-|day`
bool hyphen_by_letter_or_figure(const Halves& word) {
    static constexpr std::array<Chunk, 3> hyphens{"-", "‐", "–"};
    const Chunk hyphen = trailing_character(word.before);
    const auto is_short = [](Part part) {
        return part.letters == 0 || part.letters + part.figures == 1;
    };
    return is_one_of(hyphen, hyphens) &&
           (is_short(last_part(word.before.substr(0, word.before.size() - hyphen.size()))) ||
            is_short(first_part(word.after)));
}

// `survey—|and`: a dash stays with what it follows
bool before_dash(const Halves& word) {
    return word.after.starts_with("–") || word.after.starts_with("—");
}

constexpr std::array between_words{lone_dash,        month_and_figure,      day_and_month,
                                   day_and_year,     season_and_year,       phone_number,
                                   initial_and_name, title_and_name,        abbreviation_and_figure,
                                   figure_and_unit,  slash_between_figures, suspended_hyphen};

constexpr std::array inside_words{
    email,      web_address, plus_or_number_sign, slash_by_short_word, hyphen_by_letter_or_figure,
    before_dash};

// Puts the rules to one opportunity after another, in ascending order.
class Exceptions {
public:
    explicit Exceptions(Chunk text) : text_(text), words_(words_between_spaces(text)) {}

    bool keep_together(std::size_t at) {
        while (index_ < words_.size() && begin() + words_[index_].size() <= at) {
            ++index_;
            kind_.reset();
        }
        if (index_ == words_.size() || at < begin()) return false;
        return at > begin() ? holds_inside(at) : holds_between(at);
    }

private:
    std::size_t begin() const {
        return static_cast<std::size_t>(words_[index_].data() - text_.data());
    }

    bool holds_between(std::size_t at) const {
        if (index_ == 0 || text_[at - 1] != ' ') return false;
        const Words before = Words(words_).first(index_);
        return std::ranges::any_of(between_words,
                                   [&](auto* rule) { return rule(before, words_[index_]); });
    }

    bool holds_inside(std::size_t at) {
        const Chunk word = words_[index_];
        if (!kind_) kind_ = kind_of(word);
        const Halves halves{word.substr(0, at - begin()), word.substr(at - begin()), *kind_};
        return std::ranges::any_of(inside_words, [&](auto* rule) { return rule(halves); });
    }

    Chunk text_;
    std::vector<Chunk> words_;
    std::size_t index_ = 0;        // of the first word that ends after the opportunity
    std::optional<WordKind> kind_; // of that word, once known
};

}

std::vector<std::size_t> uax14_opportunities(std::string_view text) {
    thread_local const Iterator iterator = open_iterator();
    UErrorCode status = U_ZERO_ERROR;
    const Utf8 bytes(utext_openUTF8(nullptr, text.empty() ? "" : text.data(),
                                    static_cast<std::int64_t>(text.size()), &status),
                     utext_close);
    ubrk_setUText(iterator.get(), bytes.get(), &status);
    require(status, "cannot read a text for its line breaks");
    std::vector<std::size_t> offsets;
    for (auto at = ubrk_next(iterator.get()); at != UBRK_DONE; at = ubrk_next(iterator.get()))
        if (static_cast<std::size_t>(at) < text.size())
            offsets.push_back(static_cast<std::size_t>(at));
    return offsets;
}

std::vector<std::size_t> break_opportunities(std::string_view text) {
    std::vector<std::size_t> offsets = uax14_opportunities(text);
    Exceptions exceptions(text);
    std::erase_if(offsets, [&](std::size_t at) { return exceptions.keep_together(at); });
    return offsets;
}

}
