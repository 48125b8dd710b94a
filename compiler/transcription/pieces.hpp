// What stands above an entry's bullets, in pieces: dates and places by themselves, and the names
// that white, signs or another kind of letters part.
#pragma once

#include "compiler/transcription/evidence.hpp"
#include "compiler/transcription/old_dates.hpp"
#include "compiler/transcription/rows.hpp"

#include <span>
#include <string>
#include <vector>

namespace quoin::transcription {

struct HeadPiece {
    std::string text;
    std::size_t row = 0; // of the entry's heads
    std::size_t font = 0;
    bool strong = false, slanted = false;
    bool at_edge = false; // apart from what stands before it, and the last on its row
    std::string joint;    // what parts it from the piece before it on its row; empty: white
};

struct HeadPieces {
    std::vector<HeadPiece> names;
    std::vector<DatesOnLine> dates;
    std::vector<std::string> places;
    std::vector<std::size_t> place_rows; // where a place stands at a row's edge by itself
    bool place_guessed = false;
    std::string text; // whole
};

HeadPieces pieces_of_heads(std::span<const OldRow> heads, const KnownTowns& towns,
                           const portal::PageLanguages& languages);

}
