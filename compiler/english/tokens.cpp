// Words keep their inner hyphens, apostrophes and points: co-led, team's, a.m, Node.js, I/O, C++.
#include "compiler/english/tokens.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/utf8.hpp"

#include <algorithm>

namespace quoin::english {
namespace {

bool is_upper(char32_t c) {
    return c >= U'A' && c <= U'Z';
}

bool passes_for_letter(char32_t c) {
    // Beyond ASCII what is no punctuation, space or symbol is taken for a letter.
    const bool far = c >= 0xC0 && c != 0xD7 && c != 0xF7 && (c < 0x2000 || c > 0x2BFF);
    return is_upper(c) || (c >= U'a' && c <= U'z') || far;
}

bool is_digit(char32_t c) {
    return c >= U'0' && c <= U'9';
}

bool is_apostrophe(char32_t c) {
    return c == U'\'' || c == U'\u2019';
}

bool is_hyphen(char32_t c) {
    return c == U'-' || c == U'\u2010' || c == U'\u2011';
}

bool is_currency(char32_t c) {
    return c == U'$' || c == U'\u20AC' || c == U'\u00A3';
}

TokenKind kind_of_sign(char32_t c) {
    if (c == U',') return TokenKind::comma;
    if (c == U'(' || c == U'[') return TokenKind::open;
    if (c == U')' || c == U']') return TokenKind::close;
    if (c == U'"' || c == U'\u201C' || c == U'\u201D') return TokenKind::quote;
    constexpr std::u32string_view stops = U".;:!?\u2013\u2014";
    return stops.find(c) != stops.npos ? TokenKind::stop : TokenKind::sign;
}

std::string with_plain_signs(std::string_view word) {
    std::string plain;
    while (!word.empty()) {
        const Character c = take_character(word);
        const bool joins = is_hyphen(c.code) || c.code == U'\u2013';
        plain += is_apostrophe(c.code) ? "'" : joins ? "-" : c.bytes;
    }
    return plain;
}

class TokenReader {
public:
    explicit TokenReader(std::string_view text) : text_(text) {}

    Tokens read() {
        constexpr std::size_t usual_length = 5; // of a word or sign with the blank behind it
        tokens_.reserve(text_.size() / usual_length + 1);
        while (at_ < text_.size())
            read_one();
        return std::move(tokens_);
    }

private:
    Character character(std::size_t at) const {
        if (at >= text_.size()) return {U' ', 0, false};
        const auto byte = static_cast<unsigned char>(text_[at]); // of ASCII, nearly always
        return byte < 0x80 ? Character{byte, 1, true} : first_character(text_.substr(at));
    }

    void read_one() {
        const Character first = character(at_);
        if (first.code == U' ' || first.code == U'\t' || first.code == U'\u00A0') {
            at_ += first.length;
            return;
        }
        const char32_t next = character(at_ + first.length).code;
        const bool figure = is_digit(first.code) || (is_currency(first.code) && is_digit(next)) ||
                            (first.code == U'.' && is_digit(next));
        if (figure)
            read_run(TokenKind::figure);
        else if (passes_for_letter(first.code))
            read_run(TokenKind::word);
        else
            add(kind_of_sign(first.code), at_ + first.length);
    }

    void read_run(TokenKind kind) {
        std::size_t end = at_ + character(at_).length;
        while (const std::size_t length = piece(kind, end))
            end += length;
        add(kind, end);
    }

    // Bytes at `end` that go on with the run, which began at at_; 0 if it is over.
    std::size_t piece(TokenKind kind, std::size_t end) const {
        const Character c = character(end);
        if (c.length == 0) return 0;
        if (passes_for_letter(c.code) || is_digit(c.code)) return c.length;
        const char32_t next = character(end + c.length).code;
        const bool joins = passes_for_letter(next) || is_digit(next);
        if (kind == TokenKind::figure) return figure_piece(end, c, next);
        if (c.code == U'+' || c.code == U'#') return c.length;
        if (is_apostrophe(c.code)) return passes_for_letter(next) ? c.length : 0;
        if (is_hyphen(c.code) || c.code == U'.' || c.code == U'_' || c.code == U'@')
            return joins ? c.length : 0;
        // I/O and R&D are words, design/build is two
        const auto before = static_cast<unsigned char>(text_[end - 1]);
        const bool acronym =
            (c.code == U'/' || c.code == U'&') && is_upper(before) && is_upper(next);
        return acronym ? c.length : 0;
    }

    std::size_t figure_piece(std::size_t end, const Character& c, char32_t next) const {
        constexpr std::u32string_view inner = U".,:/-\u2010\u2011\u2013\u00D7";
        if (c.code == U'%' || c.code == U'+' || c.code == U'\u00B0') return c.length;
        if (c.code == U'(' && text_.substr(end, 3) == "(k)") return 3;
        if (is_hyphen(c.code) && passes_for_letter(next)) return c.length;
        const bool ranged = is_digit(next) || is_currency(next);
        return inner.find(c.code) != inner.npos && ranged ? c.length : 0;
    }

    void add(TokenKind kind, std::size_t end) {
        Token token{kind, {at_, end - at_}, {}, {}, depth_, false};
        if (kind == TokenKind::open) ++depth_;
        if (kind == TokenKind::close && depth_ > 0) token.depth = --depth_;
        if (kind == TokenKind::word || kind == TokenKind::figure) spell(token);
        at_ = end;
        tokens_.push_back(std::move(token));
    }

    void spell(Token& token) const {
        const std::string_view typed = text_.substr(token.extent.offset, token.extent.length);
        token.text = all_ascii(typed) ? std::string(typed) : with_plain_signs(typed);
        token.lower = lower_case(token.text);
    }

    std::string_view text_;
    std::size_t at_ = 0;
    int depth_ = 0;
    Tokens tokens_;
};

// Quotation marks in pairs; one that is never closed quotes nothing.
void mark_quoted(Tokens& tokens) {
    std::size_t open = tokens.size();
    for (std::size_t i = 0; i < tokens.size(); ++i) {
        if (tokens[i].kind != TokenKind::quote) continue;
        if (open == tokens.size()) {
            open = i;
            continue;
        }
        for (std::size_t k = open; k <= i; ++k)
            tokens[k].title = true;
        open = tokens.size();
    }
}

void mark_titles(Tokens& tokens, std::span<const Extent> titles) {
    std::size_t next = 0;
    for (Token& token : tokens) {
        while (next < titles.size() &&
               titles[next].offset + titles[next].length <= token.extent.offset)
            ++next;
        if (next < titles.size() && titles[next].offset <= token.extent.offset) token.title = true;
    }
}

}

Tokens read_tokens(std::string_view text, std::span<const Extent> titles) {
    Tokens tokens = TokenReader(text).read();
    mark_quoted(tokens);
    mark_titles(tokens, titles);
    return tokens;
}

bool is_capital(const Token& token) {
    return !token.text.empty() && is_upper(static_cast<unsigned char>(token.text.front()));
}

bool is_all_capitals(const Token& token) {
    const auto upper = std::ranges::count_if(
        token.text, [](char c) { return is_upper(static_cast<unsigned char>(c)); });
    const bool small = std::ranges::any_of(token.text, is_small_letter);
    return upper >= 2 && !small;
}

}
