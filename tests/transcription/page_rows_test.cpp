// Words of a page that come in pieces, put together on their line by what lies between the pieces.
#include "compiler/transcription/page_rows.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

namespace quoin::transcription {

namespace {

struct Piece {
    std::string text;
    double left = 0, right = 0, size = 10;
};

std::string line_of_pieces(const std::vector<Piece>& pieces) {
    std::vector<PlacedWord> words;
    for (const Piece& piece : pieces) {
        PlacedWord placed;
        placed.word.text = piece.text;
        placed.word.left = piece.left;
        placed.word.right = piece.right;
        placed.word.size = piece.size;
        placed.bottom = 10;
        words.push_back(placed);
    }
    std::string text;
    const std::vector<OldLine> lines = rows_of(words, 1);
    for (const OldWord& word : lines.front().words)
        text += (text.empty() ? "" : " ") + word.text;
    return text;
}

}

TEST_CASE("old documents: a word that comes in pieces is one where nothing lies between them") {
    struct Case {
        std::vector<Piece> pieces;
        std::string line;
    };
    const Case cases[] = {
        {{{"Juror\u2019", 0, 30}, {"s", 30, 35}, {"Mention", 38, 80}}, "Juror\u2019s Mention"},
        {{{"couldn'", 0, 30}, {"t,", 30.5, 35}, {"so", 38, 50}}, "couldn't, so"},
        {{{"students\u2019", 0, 40}, {"s", 43, 48}}, "students\u2019 s"},     // a space between
        {{{"students\u2019", 0, 40}, {"art", 40, 55}}, "students\u2019 art"}, // no ending
        {{{"\u2019", 0, 3}, {"s", 3, 8}}, "\u2019 s"},                        // no word
        {{{"E", 0, 8, 12}, {"DUCATION", 8, 60, 9}}, "EDUCATION"},
        {{{"E", 0, 8, 12}, {"DUCATION", 12, 60, 9}}, "E DUCATION"},
    };
    for (const auto& [pieces, line] : cases)
        CHECK(line_of_pieces(pieces) == line);
}

}
