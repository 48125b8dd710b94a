// What a posting asks of a résumé: its terms with their weights, and where each is shown.
#pragma once

#include "compiler/matching/texts.hpp"

#include <string>
#include <vector>

namespace quoin::tailoring {

using matching::Spot;

struct Asked {
    std::string words;
    double weight = 0;
    std::vector<Spot> spots;
};

using Demand = std::vector<Asked>; // the heaviest first

}
