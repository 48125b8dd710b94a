// Every way to part the sections, at every width.
#include "compiler/stages/fit/side_choice.hpp"

#include "compiler/stages/fit/column.hpp"
#include "compiler/stages/fit/comfort.hpp"
#include "compiler/stages/fit/page_breaks.hpp"
#include "compiler/stages/lines/paragraph_lines.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <utility>

namespace quoin::fit {

namespace {

struct Pile { // a section in one column, pt
    double height = 0;
    double below = 0; // its last baseline
};

struct Piles {
    PageSetting setting;
    double head = 0;
    std::vector<Pile> main, side; // one a section
};

struct ColumnFeet { // of two columns, pt from the top margin
    double head = 0, main = 0, side = 0;

    double lower() const { return std::max(main, side); }
    double unevenness() const { return std::abs(main - side) / lower(); }
    double fullness() const { return (side - head) / std::max(main - head, 1.0); }
};

using AtSide = std::vector<bool>; // one a section

double foot_of(const Piles& piles, const AtSide& at_side, bool side) {
    double height = piles.head, below = 0;
    const std::vector<Pile>& column = side ? piles.side : piles.main;
    for (std::size_t s = 0; s < at_side.size(); ++s) {
        if (at_side[s] != side || column[s].height == 0) continue;
        height += column[s].height;
        below = column[s].below;
    }
    return height + below;
}

ColumnFeet feet_of(const Piles& piles, const AtSide& at_side) {
    return {piles.head, foot_of(piles, at_side, false), foot_of(piles, at_side, true)};
}

// All ways to part the sections, one whose writer asks for the side always there.
std::vector<AtSide> ways_to_part(const SideOffer& offer) {
    constexpr std::size_t most_free = 8; // the rest stay in the main column
    std::vector<std::size_t> free;
    for (std::size_t s = 0; s < offer.may.size(); ++s)
        if (offer.may[s] && !offer.must[s] && free.size() < most_free) free.push_back(s);
    std::vector<AtSide> ways;
    for (std::size_t bits = 0; bits < std::size_t{1} << free.size(); ++bits) {
        AtSide way = offer.must;
        for (std::size_t i = 0; i < free.size(); ++i)
            way[free[i]] = (bits >> i & 1) != 0;
        if (std::ranges::find(way, true) != way.end() && std::ranges::find(way, false) != way.end())
            ways.push_back(std::move(way));
    }
    return ways;
}

// Even steps from the least to the most.
std::vector<double> widths_of(const theme::Preference& width) {
    std::vector<double> widths;
    const int steps = width.least == width.most ? 0 : width_steps;
    for (int step = 0; step <= steps; ++step)
        widths.push_back(
            std::lerp(width.least, width.most, static_cast<double>(step) / width_steps));
    return widths;
}

}

// A composition whose columns can be given another width. A paragraph is measured once, where its
// column is narrowest: the words that may have to be broken there are all that ever may.
class WidthPages {
public:
    WidthPages(const SideOffer& offer, const theme::Theme& theme, const model::Settings& settings)
        : theme_(theme), settings_(settings), main_(offer.main), side_(offer.side),
          sections_(offer.may.size()) {
        double narrowest = std::numeric_limits<double>::infinity();
        for (const double width : widths_of(theme.side_width)) {
            set_width(width);
            narrowest = std::min(narrowest, full_measure(setting_at(choices_, roomiest)));
        }
        measure(main_, 0, narrowest); // beside the widest, the last
        set_width(theme.side_width.least);
        measure(side_, 1, narrowest);
    }

    void set_width(double width) {
        for (composition::Composition* each : {&main_, &side_})
            for (composition::Paragraph& paragraph : each->paragraphs)
                if (paragraph.section > 0)
                    paragraph.span = composition::span_of(
                        theme_, each == &main_ ? composition::Region::main : paragraph.region,
                        width);
        choices_ = choices_of(theme_, settings_, characters_in_em(main_));
    }

    Piles at(double tightness) const {
        Piles piles{setting_at(choices_, tightness), 0, {}, {}};
        piles.main = pile_up(main_, measured_[0], piles, false);
        piles.side = pile_up(side_, measured_[1], piles, true);
        return piles;
    }

private:
    void measure(const composition::Composition& composition, std::size_t column,
                 double narrowest) {
        for (const composition::Paragraph& paragraph : composition.paragraphs)
            measured_[column].emplace_back(paragraph, narrowest);
    }

    std::vector<Pile> pile_up(const composition::Composition& composition,
                              const std::vector<lines::MeasuredParagraph>& measured, Piles& piles,
                              bool side) const {
        const double measure = full_measure(piles.setting);
        std::vector<int> counts;
        for (const lines::MeasuredParagraph& paragraph : measured)
            counts.push_back(paragraph.line_count(measure));
        const Column column = make_columns(composition, counts).back();
        std::vector<Pile> sections(sections_);
        double head = 0;
        for (std::size_t i = 0; i < column.lines.size(); ++i) {
            const Height step = i == 0 ? to_first_baseline(column, 0, 0) : to_baseline(column, i);
            const std::uint32_t section = column.lines[i].paragraph->section;
            if (section == 0) {
                head += step.at(piles.setting);
                continue;
            }
            sections[section - 1].height += step.at(piles.setting);
            sections[section - 1].below = below_baseline(column, i).at(piles.setting);
        }
        if (!side) piles.head = head;
        return sections;
    }

    const theme::Theme& theme_;
    const model::Settings& settings_;
    composition::Composition main_, side_;
    std::size_t sections_;
    SettingChoices choices_;
    std::array<std::vector<lines::MeasuredParagraph>, 2> measured_; // of main_ and of side_
};

namespace {

class SideSearch {
public:
    SideSearch(WidthPages& pages, const std::vector<AtSide>& ways) : pages_(pages), ways_(ways) {}

    std::optional<composition::SidePlan> run(const std::vector<double>& widths) {
        for (const double width : widths)
            try_width(width);
        for (const Found* found : {&roomiest_, &lowest_})
            if (!found->plan.at_side.empty()) return found->plan;
        return std::nullopt;
    }

private:
    struct Found {
        composition::SidePlan plan;
        double tightness = tightest;
        double unevenness = std::numeric_limits<double>::infinity();
    };

    void try_width(double width) {
        pages_.set_width(width);
        const Piles preferred = pages_.at(0), least = pages_.at(tightest);
        std::vector<const AtSide*> full;
        for (const AtSide& way : ways_) {
            if (feet_of(preferred, way).fullness() < least_side) continue;
            full.push_back(&way);
            const double height = feet_of(least, way).lower();
            if (height < lowest_.unevenness) lowest_ = {{way, width}, tightest, height};
        }
        search(full, width);
    }

    const AtSide* evenest(const std::vector<const AtSide*>& ways, const Piles& piles) const {
        const PageSetting& at = piles.setting;
        const double room = at.paper_height - at.top_margin - at.bottom_margin + rounding_slack;
        const AtSide* best = nullptr;
        double least = std::numeric_limits<double>::infinity();
        for (const AtSide* way : ways) {
            const ColumnFeet feet = feet_of(piles, *way);
            if (feet.lower() > room || feet.unevenness() >= least) continue;
            least = feet.unevenness();
            best = way;
        }
        return best;
    }

    void search(const std::vector<const AtSide*>& ways, double width) {
        constexpr double precision = 1e-4;
        double low = roomiest, high = roomiest_.tightness;
        if (ways.empty() || !evenest(ways, pages_.at(high))) return;
        if (evenest(ways, pages_.at(low))) high = low;
        while (high - low > precision) {
            const double middle = (low + high) / 2;
            (evenest(ways, pages_.at(middle)) ? high : low) = middle;
        }
        const Piles piles = pages_.at(high);
        const AtSide* way = evenest(ways, piles);
        const double uneven = feet_of(piles, *way).unevenness();
        if (roomiest_.tightness - high > precision || uneven < roomiest_.unevenness)
            roomiest_ = {{*way, width}, high, uneven};
    }

    WidthPages& pages_;
    const std::vector<AtSide>& ways_;
    Found roomiest_, lowest_; // of the lowest, its height for unevenness
};

}

SideChoice::SideChoice(const SideOffer& offer, const theme::Theme& theme,
                       const model::Settings& settings)
    : pages_(std::make_unique<WidthPages>(offer, theme, settings)), ways_(ways_to_part(offer)),
      widths_(widths_of(theme.side_width)), nothing_{offer.must, theme.side_width.preferred} {}

SideChoice::~SideChoice() = default;

std::optional<composition::SidePlan> SideChoice::next() {
    if (widths_.empty()) return std::nullopt;
    auto plan = SideSearch(*pages_, ways_).run(widths_);
    if (!plan) {
        widths_.clear();
        return nothing_;
    }
    std::erase(widths_, plan->width);
    return plan;
}

}
