// Of the names above an entry's bullets: which is what was done, which for whom.
#pragma once

#include "compiler/transcription/pieces.hpp"

#include <map>
#include <string>
#include <tuple>
#include <vector>

namespace quoin::transcription {

// How this page sets the two, learnt from those entries whose words tell.
class HeadHabits {
public:
    void learn(const HeadPieces& pieces);
    double lean(const HeadPiece& piece, std::size_t position) const;

private:
    using Look = std::tuple<bool, bool, std::size_t>;
    static Look look_of(const HeadPiece& piece);

    std::map<Look, double> by_look_;
    std::map<std::size_t, double> by_position_;
};

struct TitleAndOrg {
    std::string title, org, town;
    std::vector<std::string> others;
    bool sure = true;
};

TitleAndOrg title_and_org(const HeadPieces& pieces, const HeadHabits& habits);

}
