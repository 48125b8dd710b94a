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
    void learn_places(const HeadPieces& pieces);
    bool has_places_on(std::size_t row) const; // at its edge
    double lean(const HeadPiece& piece, std::size_t position) const;

private:
    using Look = std::tuple<bool, bool, std::size_t>;
    static Look look_of(const HeadPiece& piece);

    std::map<Look, double> by_look_;
    std::map<std::size_t, double> by_position_;
    std::map<std::size_t, std::size_t> place_rows_;
};

struct TitleAndOrg {
    std::string title, org, town;
    std::vector<std::string> others;
    bool sure = true;
};

// A name at a row's edge, where other entries have their places or as towns are called, is a place.
void settle_places(HeadPieces& pieces, const HeadHabits& habits);

TitleAndOrg title_and_org(const HeadPieces& pieces, const HeadHabits& habits);

}
