// What counts, measures or values, and the numbers that only name: years, rooms, forms, clocks.
#include "compiler/base/ascii.hpp"
#include "compiler/english/nouns.hpp"
#include "compiler/english/reading.hpp"
#include "compiler/trade/months.hpp"

#include <algorithm>

namespace quoin::english {
namespace {

namespace w = word_class;

bool all_digits(std::string_view text) {
    return !text.empty() && std::ranges::all_of(text, is_figure);
}

bool is_year(std::string_view text) {
    return text.size() >= 4 && all_digits(text.substr(0, 4)) &&
           (text.starts_with("19") || text.starts_with("20")) &&
           (text.size() == 4 || text.substr(4) == "s" || text[4] == '-' || text[4] == '/');
}

// Words that number one of many: room 214, grade 4, ages 5 to 7.
bool is_designator(const Sentence& s, std::size_t i) {
    return s.is(i, List::designators);
}

bool is_month(const Sentence& s, std::size_t i) {
    return s.token(i).kind == TokenKind::word && trade::month_named(s.word(i)) &&
           is_capital(s.token(i));
}

// `Windows 11`, `BIOL 301`: a name takes the number after it. The bullet's first word has its
// capital anyway, and a verb counts.
bool is_name_before(const Sentence& s, std::size_t i) {
    if (i == 0) return false;
    const std::size_t before = i - 1;
    const Token& token = s.token(before);
    if (token.kind != TokenKind::word) return false;
    if (is_month(s, before)) return true;
    if (before == 0) return is_capital(token) && s.forms(0).none() && s.classes(0) == 0;
    return is_capital(token) && !s.is(before, w::preposition | w::conjunction | w::determiner |
                                                  w::possessive | w::adverb);
}

bool is_range_word(const Sentence& s, std::size_t i) {
    return s.is_word(i, {"to", "and", "through", "or", "&", "-"}) ||
           s.token(i).kind == TokenKind::comma || s.token(i).kind == TokenKind::stop;
}

// `Schedule 14 shifts` and `grade 40 exams` count; there is no grade 40.
bool is_verb_with_number(const Sentence& s, std::size_t i) {
    if (!s.forms(i - 1).base) return false;
    const bool rank =
        s.is_word(i - 1, {"level", "grade", "class", "type", "phase", "tier", "stage"});
    if (rank) return s.word(i).size() > 1 && s.word(i) > "12" && all_digits(s.word(i));
    return i == 1 || s.is(i - 2, w::conjunction);
}

// The same name or kind governs the second number of a span: ages 5 to 7, Python 2 to Python 3.
bool is_named(const Sentence& s, std::size_t i) {
    if (is_name_before(s, i) || (i > 0 && is_designator(s, i - 1) && !is_verb_with_number(s, i)))
        return true;
    return i > 2 && is_range_word(s, i - 1) && s.is_figure(i - 2) &&
           (is_name_before(s, i - 2) || is_designator(s, i - 3)) && is_figure(s.word(i).back());
}

bool is_clock(const Sentence& s, std::size_t i) {
    const std::string& text = s.word(i);
    const std::size_t colon = text.find(':');
    if (colon != text.npos && colon + 3 <= text.size() && all_digits(text.substr(colon + 1, 2)))
        return true;
    if (text.ends_with("am") || text.ends_with("pm") || text.ends_with("a.m") ||
        text.ends_with("p.m"))
        return true;
    for (std::size_t k = i + 1; k < i + 5; k += 2) {
        if (s.is_word(k, {"am", "pm", "a.m", "p.m", "o'clock"})) return true;
        if (!is_range_word(s, k) || !s.is_figure(k + 1)) return false;
    }
    return false;
}

bool is_age(const Sentence& s, std::size_t i) {
    std::size_t other = i + 1; // 3- and 4-year-olds
    while (other < i + 3 && is_range_word(s, other))
        ++other;
    const bool of_span = other > i + 1 && s.is_figure(other);
    if (of_span && s.word(other).find("year-old") != std::string::npos) return true;
    return s.word(i).find("year-old") != std::string::npos ||
           s.is_word(i + 1, {"year-old", "year-olds"}) ||
           (s.is_word(i + 1, {"years", "months"}) && s.is_word(i + 2, {"old"}));
}

bool is_ordinal_ending(std::string_view text) {
    return text.ends_with("st") || text.ends_with("nd") || text.ends_with("rd") ||
           text.ends_with("th");
}

// A place won: placed third, 2nd place, ranked 4th of 30.
bool is_place_won(const Sentence& s, std::size_t i) {
    if (s.is_word(i + 1, {"place", "of", "prize"}) ||
        (s.is_word(i + 1, {"out"}) && s.is_word(i + 2, {"of"})))
        return !s.is_word(i + 1, {"of"}) || s.is_number(i + 2);
    const bool placed = i > 0 && s.is(i - 1, List::verbs_of_placing);
    return placed;
}

bool is_ordinal_figure(std::string_view text) {
    const std::size_t digits =
        static_cast<std::size_t>(std::ranges::find_if_not(text, is_figure) - text.begin());
    return digits > 0 && is_ordinal_ending(text.substr(digits)) && text.size() == digits + 2;
}

// A code or a name in one token: 24/7, 401(k), 3D, 4K, 100-level, 1-on-1, 5th-grade.
bool is_code(const Sentence& s, std::size_t i) {
    const std::string& text = s.word(i);
    if (s.is(i, List::codes) || text.ends_with("(k)")) return true;
    if (text.ends_with("-level") || text.ends_with("-on-1") || text.ends_with("-grade") ||
        text.ends_with("-graders") || text.ends_with("-grader") || text.ends_with("-series"))
        return true;
    if (text.starts_with("3d-") || text.starts_with("2d-")) return true;               // 3D-printed
    const std::size_t hyphen = text.find('-');                                         // 10-K
    if (hyphen != text.npos && is_ordinal_figure(text.substr(0, hyphen))) return true; // 3rd-deck
    if (hyphen != text.npos && hyphen + 2 == text.size() && !is_figure(text.back())) return true;
    const bool race = (text == "5k" || text == "10k") &&
                      s.is_word(i + 1, {"run", "race", "walk", "fun", "fundraiser"});
    const std::size_t slash = text.find('/');
    return race || (slash != text.npos && is_year(std::string_view(text).substr(slash + 1)));
}

bool is_year_here(const Sentence& s, std::size_t i) {
    if (!is_year(s.word(i))) return false;
    // `Counted 2000 larvae`: right after the verb that opens
    return !(i == 1 && s.token(i).text.size() == 4 && s.forms(0).verb != nullptr &&
             is_plural_noun(s, i + 1));
}

bool counts(const Sentence& s, std::size_t i) {
    const std::string& text = s.word(i);
    if (!is_figure(text.front())) return true; // money
    if (text.back() == '%' || s.is_word(i + 1, {"percent", "%"})) return true;
    if (is_code(s, i) || is_year_here(s, i) || is_clock(s, i) || is_age(s, i)) return false;
    if (is_ordinal_figure(text)) return is_place_won(s, i);
    if (text.find(',') != text.npos) return true; // 1,040 is no form
    return !is_named(s, i);
}

bool is_fraction(const Sentence& s, std::size_t i) {
    const std::string& word = s.word(i);
    if (s.is(i, List::fractions)) {
        const bool after_by =
            i > 0 && s.is_word(i - 1, {"by", "in", "one", "nearly", "about", "over"});
        const bool of_article =
            i > 1 && s.is_word(i - 1, {"a"}) &&
            (s.is_word(i - 2, {"by", "over", "nearly", "about", "almost", "than", "to"}) ||
             s.is_word(i + 1, {"of"}));
        const bool half_of = word == "half" && s.is_word(i + 1, {"of", "the", "a", "an", "as"});
        return word == "thirds" ||
               (after_by && (word == "half" || s.is_word(i - 1, {"by", "one"}))) || of_article ||
               half_of;
    }
    return word == "one-third" || word == "one-half" || word == "one-quarter" ||
           word == "one-fifth" || word == "one-tenth" || word.ends_with("-thirds") ||
           word.ends_with("-quarters") || word.ends_with("-fifths");
}

bool is_multiple(const Sentence& s, std::size_t i) {
    if (s.is_word(i, {"double", "triple", "halve", "quadruple"}))
        return i == 0 || s.is_word(i - 1, {"and", "to"}) || s.is_word(i + 1, {"the"});
    return s.is(i, List::multiples) && !s.is_word(i + 1, {"as"});
}

// four-hour, twenty-five, two-person; but a two-way radio counts nothing.
bool is_number_compound(const Sentence& s, std::size_t i) {
    const std::string& word = s.word(i);
    const std::size_t hyphen = word.find('-');
    if (hyphen == word.npos || (word_classes(word.substr(0, hyphen), s.lexicon()) & w::number) == 0)
        return false;
    const std::string_view rest = std::string_view(word).substr(hyphen + 1);
    return !s.lexicon().has(rest, List::compounds_without_count);
}

bool is_number_word(const Sentence& s, std::size_t i) {
    const Token& token = s.token(i);
    const bool name = is_capital(token) && i > 0 && s.token(i - 1).kind != TokenKind::stop;
    if (name) return false;
    const bool number = s.is(i, w::number) || is_number_compound(s, i);
    if (number)
        return !is_age(s, i) && !is_clock(s, i) &&
               !(i > 0 && is_designator(s, i - 1) && !s.is_word(i - 1, {"lab", "class"}));
    if (s.is(i, List::ordinals) && is_place_won(s, i)) return true;
    return is_fraction(s, i) || is_multiple(s, i) || token.lower == "first-place" ||
           token.lower == "second-place" || token.lower == "third-place";
}

}

bool has_figure(const Sentence& sentence) {
    for (std::size_t i = 0; i < sentence.size(); ++i) {
        const TokenKind kind = sentence.token(i).kind;
        if (sentence.token(i).title) continue;
        if (kind == TokenKind::figure && counts(sentence, i)) return true;
        if (kind == TokenKind::word && is_number_word(sentence, i)) return true;
    }
    return false;
}

}
