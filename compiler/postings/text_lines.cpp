// Lines of plain text: bullets, headings, and paragraphs that were broken at a column.
#include "compiler/postings/lines.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/base/strange_signs.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/postings/headings.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/said_phrases.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace quoin::postings {

namespace {

constexpr std::size_t longest_heading = 60; // characters
constexpr std::size_t most_heading_words = 7;
constexpr std::size_t widest_column = 140; // beyond it, lines are whole paragraphs
constexpr std::size_t most_question_words = 12;
constexpr std::size_t longest_parted_heading = 72; // with white above, and none below or a part
constexpr std::size_t most_parted_heading_words = 10;

bool is_blank(char32_t code) {
    return code <= U' ' || code == U'\u00A0' || (code >= U'\u2000' && code <= U'\u200A') ||
           code == U'\u202F' || code == U'\u3000';
}

bool is_control(char32_t code) { // C1; of C0 all are blank
    return code >= 0x7F && code < 0xA0;
}

bool is_apostrophe(char32_t code) {
    return code == U'\u2018' || code == U'\u2019';
}

bool is_hyphen(char32_t code) {
    return code == U'\u2010' || code == U'\u2011';
}

// What stands before an item: signs that are bullets wherever they open a line, and those that are
// only before a blank.
std::size_t bullet_at(std::string_view text) {
    constexpr std::u32string_view always = U"\u2022\u25CF\u25AA\u25E6\u2023\u25A0\u25A1\u2043\u00B7"
                                           U"\u27A4\u2713\u2714\u2610\u25BA\u2605\uF0B7\u25CB";
    constexpr std::u32string_view before_blank = U"-*+o\u2013\u2014~>";
    const Character first = first_character(text);
    const bool picture = (first.code >= U'\u2190' && first.code <= U'\u2BFF') ||
                         (first.code >= U'\U0001F000' && first.code <= U'\U0001FAFF');
    if (picture || always.find(first.code) != always.npos) return first.length;
    for (const std::string_view arrow : {"-> ", "=> ", ">> ", "-- "})
        if (text.starts_with(arrow)) return arrow.size() - 1;
    if (before_blank.find(first.code) == before_blank.npos) return 0;
    return text.size() > first.length && text[first.length] == ' ' ? first.length : 0;
}

// `1.`, `2)`, `3.1`, `(a)` or `b)`, and a blank.
std::size_t number_at(std::string_view text) {
    const std::size_t begin = text.starts_with('(') ? 1 : 0;
    std::size_t end = begin;
    while (end < text.size() && (is_figure(text[end]) || text[end] == '.') && end < begin + 5)
        ++end;
    const bool figures = end > begin && is_figure(text[begin]);
    const bool dotted = figures && text.substr(begin, end - begin).find('.') != text.npos;
    if (!figures) {
        if (begin >= text.size() || !is_small_letter(text[begin])) return 0;
        end = begin + 1;
    }
    if (end < text.size() && text[end] == ')')
        ++end;
    else if (!dotted || begin > 0)
        return 0;
    return end < text.size() && text[end] == ' ' ? end : 0;
}

bool all_capitals(std::string_view text) {
    return std::ranges::none_of(text, is_small_letter) &&
           std::ranges::count_if(text, is_capital_letter) >= 3;
}

bool ends_sentence(std::string_view text) {
    return text.ends_with('.') || text.ends_with('!') || text.ends_with('?') ||
           text.ends_with(';') || text.ends_with(',');
}

// By its looks alone.
bool is_surely_heading(std::string_view text) {
    if (text.size() > longest_heading || word_count(text) > most_heading_words) return false;
    return text.ends_with(':') || (all_capitals(text) && !ends_sentence(text));
}

// A heading within signs: `~ Extras ~`, `**Extras**`, `[ Extras ]`, `## Extras`.
bool take_frame(std::string& plain) {
    constexpr std::string_view opening = "#*=~_-+|[<", closing = "#*=~_-+|]>";
    const std::size_t kind = plain.empty() ? opening.npos : opening.find(plain.front());
    if (kind == opening.npos) return false;
    std::string_view inner = trimmed(plain, " :");
    const bool closed = inner.back() == closing[kind];
    const std::string signs{opening[kind], closing[kind], ' ', ':'};
    inner = trimmed(inner, signs);
    const std::size_t begin = plain.find_first_not_of(opening[kind]);
    const bool numbered = opening[kind] == '#' && begin != plain.npos && plain[begin] == ' ';
    if ((!closed && !numbered) || inner.empty() || inner.size() > longest_heading ||
        word_count(inner) > (closed ? most_question_words : most_heading_words) ||
        inner.find(opening[kind]) != inner.npos)
        return false;
    plain = std::string(inner);
    return true;
}

// `Benefits`, by itself: a heading wherever it stands. A word of what is asked for may be an item.
bool names_part(std::string_view text) {
    if (text.size() > longest_heading || ends_sentence(text) || !is_capital_letter(text.front()))
        return false;
    const Part part = part_named_whole(heading_words(text));
    return part.known && (part.not_read || part.standing != Standing::required ||
                          says_any(comparable(text), List::heading_surely_required));
}

struct RawLine {
    std::string text;
    bool heading = false; // by the signs around it, or the line below it
    bool item = false;
    std::string sign; // its bullet
    bool parted = false;
    std::size_t indent = 0;
    std::uint32_t number = 0;
};

// Signs below a short line make it a heading.
bool is_underlined(const RawLine& above, std::string_view rule, std::uint32_t number) {
    return rule.size() > 2 && above.number + 1 == number && !above.item &&
           above.text.size() <= longest_heading && word_count(above.text) <= most_heading_words &&
           !ends_sentence(above.text);
}

std::vector<RawLine> raw_lines(std::string_view text) {
    std::vector<RawLine> lines;
    bool parted = true;
    std::uint32_t number = 0;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        const std::string_view whole = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        ++number;
        const std::size_t indent = std::min(whole.find_first_not_of(" \t"), whole.size());
        std::string plain = plain_line(whole);
        if (plain == "--" && !lines.empty()) break; // a letter's signature
        if (take_frame(plain)) {
            lines.push_back({std::move(plain), true, false, "", true, indent, number});
            parted = true;
            continue;
        }
        const std::size_t bullet = std::max(bullet_at(plain), number_at(plain));
        const bool numbered = number_at(plain) > 0;
        std::string sign = numbered ? "1" : plain.substr(0, bullet);
        const bool item = take_bullet(plain) && !(numbered && is_surely_heading(plain));
        const bool rule = std::ranges::none_of(plain, [](char c) {
            return is_letter_or_figure(c) || static_cast<unsigned char>(c) >= 0x80;
        });
        if (rule) {
            if (!lines.empty() && is_underlined(lines.back(), whole, number))
                lines.back().heading = true;
            parted = true;
            continue;
        }
        lines.push_back({std::move(plain), false, item, std::move(sign), parted, indent, number});
        parted = false;
    }
    return lines;
}

// How long lines are that go on below: a shorter one ends its paragraph.
std::size_t column_of(const std::vector<RawLine>& lines) {
    std::size_t longest = 0;
    for (const RawLine& line : lines)
        longest = std::max(longest, line.text.size());
    return longest;
}

bool goes_on(const RawLine& above, const RawLine& line, std::size_t column) {
    if (line.item || line.parted || line.heading || is_surely_heading(above.text) ||
        is_surely_heading(line.text) || names_part(line.text) || names_part(above.text))
        return false;
    if (above.item) return line.indent > 0 || is_small_letter(line.text.front());
    const std::size_t word = std::min(line.text.find(' '), line.text.size());
    const bool had_room = above.text.size() + word + 12 < column; // and ended all the same
    const bool opens_part = above.parted && had_room && !ends_sentence(above.text) &&
                            above.text.size() <= longest_parted_heading &&
                            part_headed(above.text).known;
    if (opens_part) return false;
    if (is_small_letter(line.text.front())) return true;
    return column <= widest_column && above.text.size() + word + 12 > column &&
           word_count(above.text) > 5;
}

// FCC GROL: of an item without a bullet.
bool is_of_acronyms(std::string_view text) {
    constexpr std::size_t longest = 5;
    return std::ranges::all_of(pieces_of(text, " "),
                               [](std::string_view word) { return word.size() <= longest; }) &&
           !part_headed(text).known;
}

// Between items, or between a sentence and items; before sentences only if it names a part.
bool parts_items(const std::vector<Line>& lines, std::size_t i) {
    if (i == 0 || !is_capital_letter(lines[i].text.front())) return false;
    const std::string_view above = lines[i - 1].text;
    const bool over = i == 1 || lines[i - 1].item || above.ends_with('.') || above.ends_with('!') ||
                      above.ends_with('?');
    return over && (lines[i + 1].item || part_headed(lines[i].text).known);
}

// Short and no sentence, with white above and something below.
bool is_heading(const std::vector<Line>& lines, std::size_t i) {
    const std::string_view text = lines[i].text;
    const bool stands_apart =
        i + 1 < lines.size() && lines[i].parted && is_capital_letter(text.front()) &&
        text.size() <= longest_parted_heading && (!lines[i + 1].parted || part_headed(text).known);
    if (is_surely_heading(text) && (lines[i].parted || !is_of_acronyms(text))) return true;
    const std::size_t most = text.ends_with('?') ? most_question_words
                             : stands_apart      ? most_parted_heading_words
                                                 : most_heading_words;
    if (text.size() > (stands_apart ? longest_parted_heading : longest_heading) ||
        word_count(text) > most)
        return false;
    const bool sentence = text.ends_with('.') || text.ends_with(',') || text.ends_with(';') ||
                          text.find(": ") != text.npos;
    return !sentence && i + 1 < lines.size() &&
           (lines[i].parted || names_part(text) || parts_items(lines, i));
}

// `EDUCATION. Two years of college`: its capitals are its heading.
std::size_t capitals_run_in(std::string_view text) {
    constexpr std::size_t shortest = 4;
    const std::size_t end = text.find_first_of(".:");
    if (end == text.npos || end < shortest || end > longest_heading || end + 2 >= text.size() ||
        text[end + 1] != ' ')
        return 0;
    const std::string_view run = text.substr(0, end);
    return all_capitals(run) && !all_capitals(text.substr(end)) &&
                   run.find_first_of("0123456789(") == run.npos
               ? end
               : 0;
}

void split_run_ins(std::vector<Line>& lines) {
    std::vector<Line> split;
    for (Line& line : lines) {
        if (const std::size_t end = line.heading ? 0 : capitals_run_in(line.text); end > 0) {
            Line head = line;
            head.text.resize(end);
            head.heading = true;
            head.minor = std::exchange(head.item, false);
            split.push_back(std::move(head));
            line.text.erase(0, end + 2);
            line.parted = false;
        }
        split.push_back(std::move(line));
    }
    lines = std::move(split);
}

// A heading with a sign before it: another sign than that of the items below, and white above.
bool has_own_sign(const std::vector<RawLine>& raw, std::size_t i) {
    if (i + 1 >= raw.size()) return false;
    const bool opens_prose = !raw[i + 1].item && names_part(raw[i].text);
    return raw[i].parted && (raw[i + 1].parted || raw[i + 1].item || opens_prose) &&
           raw[i + 1].sign != raw[i].sign &&
           !(i > 0 && (raw[i - 1].heading || raw[i - 1].sign == raw[i].sign));
}

}

bool take_bullet(std::string& plain) {
    const std::size_t bullet = std::max(bullet_at(plain), number_at(plain));
    if (bullet > 0) plain = plain_line(std::string_view(plain).substr(bullet));
    return bullet > 0;
}

std::string plain_line(std::string_view text) {
    std::string plain;
    bool blank = false;
    while (!text.empty()) {
        const Character c = take_character(text);
        if (is_invisible(c.code) || is_control(c.code)) continue;
        if (is_blank(c.code)) {
            blank = !plain.empty();
            continue;
        }
        if (blank) plain += ' ';
        blank = false;
        plain += is_apostrophe(c.code) ? "'" : is_hyphen(c.code) ? "-" : c.bytes;
    }
    return plain;
}

std::vector<Line> text_lines(std::string_view text) {
    const std::vector<RawLine> raw = raw_lines(text);
    const std::size_t column = column_of(raw);
    std::vector<Line> lines;
    for (std::size_t i = 0; i < raw.size(); ++i) {
        if (i > 0 && goes_on(raw[i - 1], raw[i], column)) {
            lines.back().text += ' ' + raw[i].text;
            continue;
        }
        const bool item = raw[i].item && !has_own_sign(raw, i);
        lines.push_back({raw[i].text, raw[i].heading, false, item, raw[i].parted, raw[i].number});
    }
    for (std::size_t i = 0; i < lines.size(); ++i)
        lines[i].heading =
            lines[i].heading ? i + 1 < lines.size() : !lines[i].item && is_heading(lines, i);
    split_run_ins(lines);
    return lines;
}

}
