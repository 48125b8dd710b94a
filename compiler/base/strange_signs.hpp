// Signs that come with text from phones, chats and word processors: some are invisible, some only
// look different from the letters they stand for.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace quoin {

// Signs of direction, joining and breaking (general category Cf, default ignorable).
bool is_invisible(char32_t code);

// U+2028 and U+2029, which end a line in some programs and in no file.
bool separates_lines(char32_t code);

// What has a meaning in a line after all, by the letters in it.
struct KeptSigns {
    bool invisible =
        false;         // it runs from right to left, has letters that such signs join, or pictures
    bool wide = false; // it has ideographs, whose punctuation is of full width
};
KeptSigns kept_signs(std::string_view line);

// Another writing of letters that a keyboard has: ligatures, full width, mathematical alphabets,
// Roman numerals of one sign (a part of what Normalization Form KC replaces; what changes the
// meaning, such as a superscript, is not among them).
bool only_looks_different(char32_t code, KeptSigns kept);

// Of well-formed text within one line: without what is invisible, a space for what separates lines,
// letters for what only looks different, in Normalization Form C.
std::string plain_signs(std::string_view text, KeptSigns kept);

struct InvisibleSigns {     // some in a row
    std::size_t offset = 0; // in the line's plain signs: where they stood
    std::size_t count = 0;
    char32_t first = 0;
    bool separates = false; // a space has taken their place
    std::string before;     // the next word, empty at the line's end
};
// What plain_signs() takes out of the line.
std::vector<InvisibleSigns> invisible_signs(std::string_view line, KeptSigns kept);

}
