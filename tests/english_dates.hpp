// The words of dates in English, as the pages of samples have them.
#pragma once

#include "compiler/stages/theme/words.hpp"

namespace quoin {

inline const model::DateWords& english_dates() {
    static const theme::Words words = [] {
        Sources sources;
        Diagnostics diagnostics;
        return theme::read_words(sources, QUOIN_DATA_FOLDER "/themes/words/en", diagnostics);
    }();
    return words.dates;
}

}
