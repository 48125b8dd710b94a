// The words of dates in English, as the pages of samples have them.
#pragma once

#include "compiler/stages/page_words/words.hpp"

namespace quoin {

inline const page_words::DateWords& english_dates() {
    static const page_words::Words words = [] {
        Sources sources;
        Diagnostics diagnostics;
        return page_words::read_words(sources, QUOIN_DATA_FOLDER "/themes/words", "en", {},
                                      diagnostics);
    }();
    return words.dates;
}

}
