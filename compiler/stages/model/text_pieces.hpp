// The pieces of an inline text between reading and pairing: what text.cpp, text_marks.cpp and
// text_links.cpp hand to one another. Not for other stages.
#pragma once

#include "compiler/stages/model/text.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace quoin::model {

// A value as one string, with the way back to its lines. Linear to build, logarithmic to ask.
class JoinedValue {
public:
    explicit JoinedValue(const syntax::Value& value);

    const std::string& text() const { return text_; }
    bool is_fold(std::size_t offset) const; // the space that stands for a line's end
    // The first byte after the slice that holds `offset`; that of its fold is the fold itself.
    std::size_t slice_end(std::size_t offset) const;
    // Cut at the end of the line; a fold is the empty place at its line's end.
    Place place(std::size_t offset, std::size_t length) const;

private:
    std::size_t slice(std::size_t offset) const;

    const syntax::Value& value_;
    std::string text_;
    std::vector<std::size_t> starts_; // offset of each slice
};

struct Piece {
    enum class Kind { literal, sign, space, mark, double_quote, single_quote, dash, link, dropped };
    static constexpr std::size_t none = static_cast<std::size_t>(-1);

    Kind kind = Kind::literal;
    std::size_t begin = 0; // into the joined text
    std::size_t end = 0;
    std::string_view text;      // signs: what is printed for them
    std::size_t partner = none; // marks and quotes: the piece that closes or opens them
    Marks marks;
    std::size_t link = none; // index into Text::links
};

using Pieces = std::vector<Piece>;

// Runs the grammar; faults of single pieces are reported.
Pieces cut_pieces(const JoinedValue& value, Diagnostics& diagnostics);

// Finds the partners of marks and quotes, reports marks left open, chooses the quotes' signs.
void pair_marks(Pieces& pieces, const JoinedValue& value, Diagnostics& diagnostics);
void pair_quotes(Pieces& pieces, std::string_view text);

// Gives every link its words; returns the URIs.
std::vector<std::string> place_links(Pieces& pieces, const JoinedValue& value,
                                     Diagnostics& diagnostics);

// What stands before or after an offset, as the conditions for marks and quotes see it.
enum class Neighbour { edge, space, opening, closing, quote, dash, hyphen, digit, letter, other };
Neighbour neighbour_before(std::string_view text, std::size_t offset);
Neighbour neighbour_after(std::string_view text, std::size_t offset);

}
