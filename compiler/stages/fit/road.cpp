// Counts are worked out only where those on either side differ.
#include "compiler/stages/fit/road.hpp"

namespace quoin::fit {

Road::Road(const composition::Composition& composition, const SettingChoices& choices)
    : composition_(composition), choices_(choices) {
    const double narrowest = full_measure(setting(roomiest));
    paragraphs_.reserve(composition.paragraphs.size());
    for (const composition::Paragraph& paragraph : composition.paragraphs)
        paragraphs_.emplace_back(paragraph, narrowest);
}

RoadPlace Road::at(double tightness) const {
    RoadPlace place{tightness, setting(tightness), {}};
    const double measure = full_measure(place.setting);
    place.counts.reserve(paragraphs_.size());
    for (const lines::MeasuredParagraph& paragraph : paragraphs_)
        place.counts.push_back(paragraph.line_count(measure));
    return place;
}

RoadPlace Road::between(const RoadPlace& low, const RoadPlace& high) const {
    const double tightness = (low.tightness + high.tightness) / 2;
    RoadPlace place{tightness, setting(tightness), low.counts};
    const double measure = full_measure(place.setting);
    for (std::size_t i = 0; i < paragraphs_.size(); ++i)
        if (low.counts[i] != high.counts[i]) place.counts[i] = paragraphs_[i].line_count(measure);
    return place;
}

Fit Road::fit(const RoadPlace& place) const {
    Fit fit;
    fit.setting = place.setting;
    fit.tightness = place.tightness;
    const double measure = full_measure(place.setting);
    for (const lines::MeasuredParagraph& paragraph : paragraphs_)
        fit.lines.push_back(paragraph.lines(measure));
    return fit;
}

}
