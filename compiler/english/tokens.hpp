// A bullet as words, figures and signs, each with its bytes.
#pragma once

#include "compiler/english/language.hpp"

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::english {

enum class TokenKind {
    word,
    figure, // starts with a digit or a currency sign: 12-hour, $1.2M, 24/7
    comma,
    stop, // . ; : ! ? and dashes that part clauses
    open,
    close,
    quote,
    sign, // any other
};

struct Token {
    TokenKind kind{};
    Extent extent;
    std::string text;   // as typed, but ' for typographic apostrophes and - for their hyphens
    std::string lower;  // ASCII letters folded
    int depth = 0;      // of parentheses around it
    bool title = false; // in quotation marks, or in a piece given as a title
};

using Tokens = std::vector<Token>;

// Linear in the text. `titles` are in order and part nothing: pieces in italics, say.
Tokens read_tokens(std::string_view text, std::span<const Extent> titles);

bool is_capital(const Token& token);      // begins with a capital letter
bool is_all_capitals(const Token& token); // two letters or more, no small one among them

}
