// The OpenType features that a word is shaped with: its figures, ligatures and kerning.
#pragma once

#include "compiler/stages/fonts/shape.hpp"

#include <hb.h>

#include <cstddef>
#include <span>
#include <vector>

namespace quoin::fonts {

struct WordRange { // of a text's characters, [begin, end), no space in it
    std::size_t begin = 0, end = 0;
};

std::vector<hb_feature_t> word_features(std::span<const hb_codepoint_t> codes, WordRange word,
                                        const ShapingFeatures& features);

}
