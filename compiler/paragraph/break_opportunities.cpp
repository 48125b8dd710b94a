// ICU finds the opportunities of Annex #14; those that would part what a reader takes in as one
// sign are then left out, by two short tables of rules.

#include "compiler/paragraph/break_opportunities.hpp"

#include "compiler/source/utf8.hpp"

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

namespace quoin {
namespace {

using Piece = std::string_view;
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

Piece leading(Piece text) {
    return text.empty() ? text : text.substr(0, first_character(text).length);
}

Piece trailing(Piece text) {
    const auto continues = [](char byte) { return (static_cast<unsigned char>(byte) >> 6) == 2; };
    std::size_t length = std::min<std::size_t>(text.size(), 1);
    while (length < 4 && length < text.size() && continues(text[text.size() - length]))
        ++length;
    return text.substr(text.size() - length);
}

utf8proc_category_t category(Piece character) {
    if (character.empty()) return UTF8PROC_CATEGORY_CN;
    return utf8proc_category(static_cast<utf8proc_int32_t>(first_character(character).code));
}

bool is_letter(Piece character) {
    const utf8proc_category_t found = category(character);
    return found >= UTF8PROC_CATEGORY_LU && found <= UTF8PROC_CATEGORY_LO;
}

bool is_capital(Piece character) {
    return category(character) == UTF8PROC_CATEGORY_LU;
}

bool is_digit(char byte) {
    return byte >= '0' && byte <= '9';
}

bool is_ascii_letter(char byte) {
    return (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z');
}

bool is_space(char byte) {
    return byte == ' ' || byte == '\t' || byte == '\n' || byte == '\r';
}

template<std::size_t size>
bool one_of(const std::array<Piece, size>& list, Piece text) {
    return std::ranges::find(list, text) != list.end();
}

// -- Words --

struct Part { // what letters and figures stand together beside a hyphen or a slash
    std::size_t letters = 0;
    std::size_t figures = 0;
};

bool count(Piece character, Part& part) {
    if (character.empty()) return false;
    if (is_digit(character.front()))
        ++part.figures;
    else if (is_letter(character))
        ++part.letters;
    else
        return false;
    return true;
}

Part first_part(Piece text) {
    Part part;
    for (Piece next = leading(text); count(next, part); next = leading(text))
        text.remove_prefix(next.size());
    return part;
}

Part last_part(Piece text) {
    Part part;
    for (Piece next = trailing(text); count(next, part); next = trailing(text))
        text.remove_suffix(next.size());
    return part;
}

// A word without the brackets and quotation marks before it.
Piece opened(Piece word) {
    static constexpr std::array<Piece, 6> signs{"(", "[", "\"", "'", "“", "‘"};
    while (one_of(signs, leading(word)))
        word.remove_prefix(leading(word).size());
    return word;
}

// A word without the punctuation, brackets and quotation marks after it.
Piece closed(Piece word) {
    static constexpr std::array<Piece, 12> signs{".", ",", ";",  ":", "!", "?",
                                                 ")", "]", "\"", "'", "”", "’"};
    while (one_of(signs, trailing(word)))
        word.remove_suffix(trailing(word).size());
    return word;
}

bool is_figures(Piece text) {
    return !text.empty() && std::ranges::all_of(text, is_digit);
}

bool starts_with_digit(Piece text) {
    return !text.empty() && is_digit(text.front());
}

bool ends_with_digit(Piece text) {
    return !text.empty() && is_digit(text.back());
}

enum class Kind { plain, email, web_address };

// Two labels or more parted by full stops, the last of letters alone (RFC 1123, section 2.1).
bool is_host(Piece text) {
    const auto allowed = [](char byte) {
        return is_ascii_letter(byte) || is_digit(byte) || byte == '-' || byte == '.';
    };
    const std::size_t stop = text.rfind('.');
    if (stop == Piece::npos || stop == 0 || text.find("..") != Piece::npos) return false;
    const Piece last = text.substr(stop + 1);
    return last.size() >= 2 && std::ranges::all_of(last, is_ascii_letter) &&
           std::ranges::all_of(text, allowed);
}

Kind kind_of(Piece word) {
    word = closed(opened(word));
    const std::size_t at = word.find('@');
    if (at != Piece::npos && at > 0 && at + 1 < word.size()) return Kind::email;
    const bool marked = word.find("://") != Piece::npos || word.starts_with("www.");
    return marked || is_host(word.substr(0, word.find('/'))) ? Kind::web_address : Kind::plain;
}

std::vector<Piece> split(Piece text) {
    std::vector<Piece> words;
    for (std::size_t begin = 0; begin < text.size();) {
        std::size_t end = begin;
        while (end < text.size() && !is_space(text[end]))
            ++end;
        if (end > begin) words.push_back(text.substr(begin, end - begin));
        begin = end + 1;
    }
    return words;
}

// -- Between words: `before` has all words up to the opportunity, and is not empty. Each rule says
// whether the last of them and the word after keep together.

using Words = std::span<const Piece>;

bool lone_dash(Words, Piece after) {
    static constexpr std::array<Piece, 4> dashes{"–", "—", "-", "--"};
    return one_of(dashes, after);
}

bool is_month(Piece word) {
    static constexpr std::array<Piece, 24> months{
        "January", "February",  "March",   "April",    "May",      "June", "July", "August",
        "Sept",    "September", "October", "November", "December", "Jan",  "Feb",  "Mar",
        "Apr",     "Jun",       "Jul",     "Aug",      "Sep",      "Oct",  "Nov",  "Dec"};
    return one_of(months, closed(opened(word)));
}

// `Jun 2026`, `May 12`
bool month_and_figure(Words before, Piece after) {
    return starts_with_digit(after) && is_month(before.back());
}

// `12 May`
bool day_and_month(Words before, Piece after) {
    const Piece day = opened(before.back());
    return is_figures(day) && day.size() <= 2 && is_month(after);
}

// `12, 2026` of a date
bool day_and_year(Words before, Piece after) {
    const Piece day = before.back();
    return day.ends_with(',') && is_figures(day.substr(0, day.size() - 1)) && day.size() <= 3 &&
           before.size() > 1 && is_month(before[before.size() - 2]) && starts_with_digit(after);
}

// `Summer 2026`
bool season_and_year(Words before, Piece after) {
    static constexpr std::array<Piece, 5> seasons{"Spring", "Summer", "Fall", "Autumn", "Winter"};
    return one_of(seasons, opened(before.back())) && is_figures(closed(after)) &&
           closed(after).size() == 4;
}

// `+1`, `(360)`
bool opens_phone_number(Piece word) {
    if (word.starts_with('(') && word.ends_with(')') && word.size() >= 5)
        return is_figures(word.substr(1, word.size() - 2));
    word = opened(word);
    return word.starts_with('+') && is_figures(word.substr(1));
}

bool is_phone_group(Piece word) {
    static constexpr Piece signs = "-.()";
    const auto allowed = [](char byte) {
        return is_digit(byte) || signs.find(byte) != Piece::npos;
    };
    return std::ranges::any_of(word, is_digit) && std::ranges::all_of(word, allowed);
}

// `(360) 555-0142`, `+1 360 555 0142`, `360 555 0142`
bool phone_number(Words before, Piece after) {
    static constexpr std::size_t most_groups = 6;
    const Piece group = opened(before.back());
    if (!is_phone_group(closed(after))) return false;
    if (is_figures(group) && group.size() == 3 && closed(after).size() >= 3) return true;
    for (std::size_t i = 1; i <= std::min(most_groups, before.size()); ++i) {
        const Piece word = before[before.size() - i];
        if (opens_phone_number(word) || !is_phone_group(word)) return opens_phone_number(word);
    }
    return false;
}

// `J. R. Brandt`
bool initial_and_name(Words before, Piece after) {
    const Piece word = opened(before.back());
    const Piece letter = leading(word);
    return word.substr(letter.size()) == "." && is_capital(letter) && is_capital(leading(after));
}

// `Dr. Brandt`
bool title_and_name(Words before, Piece after) {
    static constexpr std::array<Piece, 9> titles{"Dr.",   "Mr.", "Mrs.", "Ms.",  "Mx.",
                                                 "Prof.", "St.", "Rev.", "Capt."};
    return one_of(titles, opened(before.back())) && is_capital(leading(after));
}

// `No. 5`, `p. 12`
bool abbreviation_and_figure(Words before, Piece after) {
    static constexpr std::array<Piece, 16> abbreviations{
        "No.",  "no.",  "Nos.", "nos.", "p.",   "pp.",  "Vol.", "vol.",
        "Fig.", "fig.", "Ch.",  "ch.",  "Sec.", "sec.", "ext.", "§"};
    return one_of(abbreviations, opened(before.back())) && starts_with_digit(after);
}

// `18 %`, `300 mL`, `5 km/h`: symbols of units alone (SI Brochure, 9th edition, tables 2, 4 and 8;
// NIST Handbook 44, appendix C), and those of the clock; neither words nor `in`, which is one.
bool figure_and_unit(Words before, Piece after) {
    static constexpr std::array<Piece, 60> units{
        "%",  "‰",   "°",  "°C", "°F",  "nm",  "µm",  "μm", "mm", "cm", "m",   "km",
        "ha", "ft",  "yd", "mi", "lb",  "oz",  "gal", "µg", "μg", "mg", "g",   "kg",
        "µL", "μL",  "mL", "ml", "L",   "mol", "mM",  "µM", "μM", "ns", "µs",  "ms",
        "s",  "min", "h",  "Hz", "kHz", "MHz", "GHz", "W",  "kW", "MW", "kWh", "V",
        "mV", "N",   "J",  "kJ", "Pa",  "kPa", "dB",  "kB", "MB", "GB", "TB",  "mph"};
    static constexpr std::array<Piece, 4> clock{"a.m", "p.m", "AM", "PM"};
    const Piece unit = closed(after);
    return ends_with_digit(before.back()) &&
           (one_of(units, unit.substr(0, unit.find('/'))) || one_of(clock, unit));
}

// `3.62 / 4.00`
bool slash_between_figures(Words before, Piece after) {
    return before.back() == "/" && starts_with_digit(after);
}

// -- Inside a word. Each rule says whether the parts of the word keep together.

struct Halves {
    Piece before;
    Piece after;
    Kind kind = Kind::plain; // of the whole word
};

bool email(const Halves& word) {
    return word.kind == Kind::email;
}

// `ellerystate.example/|survey`, and nowhere else
bool web_address(const Halves& word) {
    const bool after_slash = word.before.ends_with('/') && !word.before.ends_with("//");
    return word.kind == Kind::web_address && !(after_slash && !word.after.starts_with('/'));
}

// `C++`, `F#`
bool plus_or_number_sign(const Halves& word) {
    static constexpr Piece signs = "+#";
    return signs.find(word.before.back()) != Piece::npos ||
           signs.find(word.after.front()) != Piece::npos;
}

// `and/or`, `CI/CD`, `24/7`; not `design/|research`
bool slash_by_short_word(const Halves& word) {
    static constexpr std::size_t least = 4; // letters
    return word.before.ends_with('/') && word.kind == Kind::plain &&
           (last_part(word.before.substr(0, word.before.size() - 1)).letters < least ||
            first_part(word.after).letters < least);
}

// `e-mail`, `3-D`, `12-week`, `2019–2021`, `$5–$10`; not `half-|day`
bool hyphen_by_letter_or_figure(const Halves& word) {
    static constexpr std::array<Piece, 3> hyphens{"-", "‐", "–"};
    const Piece hyphen = trailing(word.before);
    const auto is_short = [](Part part) {
        return part.letters == 0 || part.letters + part.figures == 1;
    };
    return one_of(hyphens, hyphen) &&
           (is_short(last_part(word.before.substr(0, word.before.size() - hyphen.size()))) ||
            is_short(first_part(word.after)));
}

// `survey—|and`: a dash stays with what it follows
bool before_dash(const Halves& word) {
    return word.after.starts_with("–") || word.after.starts_with("—");
}

constexpr std::array between_words{lone_dash,        month_and_figure,     day_and_month,
                                   day_and_year,     season_and_year,      phone_number,
                                   initial_and_name, title_and_name,       abbreviation_and_figure,
                                   figure_and_unit,  slash_between_figures};

constexpr std::array inside_words{
    email,      web_address, plus_or_number_sign, slash_by_short_word, hyphen_by_letter_or_figure,
    before_dash};

// Puts the rules to one opportunity after another, in ascending order.
class Exceptions {
public:
    explicit Exceptions(Piece text) : text_(text), words_(split(text)) {}

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
        const Piece word = words_[index_];
        if (!kind_) kind_ = kind_of(word);
        const Halves halves{word.substr(0, at - begin()), word.substr(at - begin()), *kind_};
        return std::ranges::any_of(inside_words, [&](auto* rule) { return rule(halves); });
    }

    Piece text_;
    std::vector<Piece> words_;
    std::size_t index_ = 0;    // of the first word that ends after the opportunity
    std::optional<Kind> kind_; // of that word, once known
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
