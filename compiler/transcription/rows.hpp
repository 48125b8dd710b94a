// The lines of a section with wrapped ones joined: what is an item of a list, what stands above it.
#pragma once

#include "compiler/transcription/old_text.hpp"

#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::transcription {

struct OldRow {
    std::vector<OldWord> words; // without the list's sign; empty: nothing but a sign
    double left = 0, mark_left = 0;
    double gap = 0;    // white above, in heights of letters
    bool item = false; // of a list
    int level = 1;     // of the list
    bool running = false;
    bool begins_column = false;

    std::string text() const { return joined_words(words, 0, words.size()); }
    bool looks_like(const OldRow& other) const { // as each begins
        const OldWord &first = words.front(), &second = other.words.front();
        return first.strong == second.strong && first.slanted == second.slanted &&
               first.font == second.font;
    }
};

using IsWord = std::function<bool(std::string_view)>; // of the language, in small letters

// Words that a line's end divided are put together where that is sure.
std::vector<OldRow> rows_below(std::span<const OldLine> lines, const IsWord& is_word);

}
