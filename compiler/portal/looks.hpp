// How the text looks, from `pdftohtml -xml -i -zoom 3`: sizes, colours, and where links lead. Text
// that is drawn invisibly is not in it.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::portal {

struct LookOfText {
    double size = 0;      // pt
    double lightness = 0; // 0 black to 1 white
    std::size_t letters = 0;
};

struct Looks {
    std::vector<LookOfText> texts;
    std::vector<std::string> addresses; // of links
    std::size_t letters = 0;            // of all texts, without spaces
};

Looks read_looks(std::string_view xml);

}
