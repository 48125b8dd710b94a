// The sizes of paper.
#pragma once

#include "compiler/trade/kinds.hpp"

namespace quoin::trade {

struct PaperSize { // pt
    double width = 0, height = 0;
};
constexpr PaperSize size_of(Paper paper) {
    constexpr double millimetre = 72 / 25.4;
    return paper == Paper::a4 ? PaperSize{210 * millimetre, 297 * millimetre} : PaperSize{612, 792};
}

}
