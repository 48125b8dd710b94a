// A composition along the road from the roomiest setting to the tightest: how many lines each of
// its paragraphs takes where. Lines only ever get longer along it, so counts only ever fall.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/fit/column.hpp"
#include "compiler/stages/fit/comfort.hpp"
#include "compiler/stages/fit/fit.hpp"
#include "compiler/stages/lines/paragraph_lines.hpp"

#include <utility>
#include <vector>

namespace quoin::fit {

struct RoadPlace {
    double tightness = 0;
    PageSetting setting;
    std::vector<int> counts; // of lines, one a paragraph
};

class Road {
public:
    // Both must outlive this.
    Road(const composition::Composition& composition, const SettingChoices& choices);

    RoadPlace at(double tightness) const;
    // The place halfway.
    RoadPlace between(const RoadPlace& low, const RoadPlace& high) const;
    PageSetting setting(double tightness) const { return setting_at(choices_, tightness); }
    std::vector<Column> columns(const RoadPlace& place) const {
        return make_columns(composition_, place.counts);
    }
    Fit fit(const RoadPlace& place) const; // its pages not cut yet

    // The roomiest place of which `holds` is so, to within `precision`. It is so of the tightest,
    // and of all beyond one of which it is.
    template<typename Holds>
    RoadPlace roomiest_that(double precision, Holds holds) const {
        RoadPlace low = at(roomiest), high = at(tightest);
        if (holds(low)) return low;
        while (high.tightness - low.tightness > precision) {
            RoadPlace middle = between(low, high);
            (holds(middle) ? high : low) = std::move(middle);
        }
        return high;
    }

private:
    const composition::Composition& composition_;
    const SettingChoices& choices_;
    std::vector<lines::MeasuredParagraph> paragraphs_;
};

}
