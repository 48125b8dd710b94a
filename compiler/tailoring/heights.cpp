// A list in its other lengths is composed as well, each in a section of its own below the rest.
#include "compiler/tailoring/heights.hpp"

#include "compiler/stages/fit/page_breaks.hpp"
#include "compiler/tailoring/measuring.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>
#include <variant>

namespace quoin::tailoring {

namespace {

using Kind = Part::Kind;

std::int64_t whole_height(double points) {
    return std::max<std::int64_t>(0, std::llround(points * per_point));
}

class HeightSetter {
public:
    HeightSetter(Offer& offer, const model::Resume& resume) : offer_(offer), all_(resume) {
        for (std::size_t p = 0; p < offer.parts.size(); ++p)
            if (is_length(p) && !offer.parts[p].items->empty()) add_length(p);
        leave_one_wording();
    }

    const model::Resume& with_lengths() const { return all_; }

    void set(const Measures& measures, const Tightest& tightest) {
        for (const model::Section& section : all_.sections)
            first_positions_.push_back(first_positions(section));
        for (std::size_t p = 0; p < offer_.parts.size(); ++p)
            offer_.problem.pieces[p].height = whole_height(height(p, measures, tightest));
        take_off_lists();
        const auto pages = static_cast<double>(std::max(*all_.settings.pages, 1));
        offer_.problem.capacity =
            whole_height(pages * tightest.room() * static_cast<double>(tightest.columns.size())) -
            whole_height(tightest.ends());
    }

private:
    bool is_length(std::size_t p) const {
        return offer_.parts[p].kind == Kind::field && offer_.parts[p].items;
    }

    // Copied so, for there may be as many lengths as there are entries.
    static model::Section without_entries(model::Section& section) {
        std::vector<model::Entry> entries = std::exchange(section.entries, {});
        model::Section copy = section;
        section.entries = std::move(entries);
        return copy;
    }

    // A section like its own, of an entry that is this list alone.
    void add_length(std::size_t p) {
        const Part& part = offer_.parts[p];
        model::Field field = position_of(all_, part).fields[part.field];
        const auto items = std::get<std::vector<model::Text>>(field.value);
        std::vector<model::Text> some;
        for (const std::size_t item : *part.items)
            some.push_back(items[item]);
        field.value = std::move(some);
        model::Section section = without_entries(all_.sections[part.section]);
        section.entries.emplace_back().fields.push_back(std::move(field));
        lengths_[p] = all_.sections.size();
        all_.sections.push_back(std::move(section));
    }

    // Of a line in several wordings the first is composed.
    void leave_one_wording() {
        std::map<std::size_t, std::vector<std::size_t>> others; // fields, by a position's piece
        for (std::size_t p = 0; p < offer_.parts.size(); ++p) {
            const std::size_t one = offer_.problem.pieces[p].within;
            if (offer_.parts[p].kind != Kind::field || offer_.parts[p].items || one == none ||
                offer_.parts[one].kind != Kind::one_of || p == one + 1)
                continue;
            others[offer_.problem.pieces[one].within].push_back(offer_.parts[p].field);
        }
        for (const auto& [piece, fields] : others) {
            auto& all = fields_of(offer_.parts[piece]);
            for (std::size_t i = fields.size(); i-- > 0;)
                all.erase(all.begin() + static_cast<std::ptrdiff_t>(fields[i]));
        }
    }

    std::vector<model::Field>& fields_of(const Part& part) {
        if (part.section == none) return all_.heading;
        model::Entry& entry = all_.sections[part.section].entries[part.entry];
        return part.further == none ? entry.fields : entry.further[part.further].fields;
    }

    double height(std::size_t p, const Measures& measures, const Tightest& tightest) {
        const Part& part = offer_.parts[p];
        switch (part.kind) {
        case Kind::heading:
            return measures.top;
        case Kind::section:
            return measures.sections[part.section].heading;
        case Kind::position:
            return height_of_head(part, measures);
        case Kind::bullet:
            return height_of_bullet(part, measures);
        case Kind::field:
            return is_length(p) ? height_of_length(p, measures, tightest) : 0;
        case Kind::bullets:
        case Kind::one_of:
            return 0;
        }
        return 0;
    }

    const PositionHeights* find(const Part& part, const Measures& measures) const {
        const auto& positions = measures.sections[part.section].positions;
        const std::size_t number = first_positions_[part.section][part.entry] +
                                   (part.further == none ? 0 : part.further + 1);
        return number < positions.size() ? &positions[number] : nullptr;
    }

    double height_of_bullet(const Part& part, const Measures& measures) {
        const PositionHeights* heights = find(part, measures);
        std::vector<std::size_t>& before = bullets_before_[&position_of(all_, part)];
        if (before.empty()) before = counted_bullets(position_of(all_, part));
        const std::size_t number = before[part.bullet];
        return heights && number < heights->bullets.size() ? heights->bullets[number] : 0;
    }

    // Of the first level, before each.
    static std::vector<std::size_t> counted_bullets(const model::Entry& position) {
        std::vector<std::size_t> before{0};
        for (const model::Bullet& bullet : position.bullets)
            before.push_back(before.back() + (bullet.level == 1 ? 1 : 0));
        return before;
    }

    // It stands below another line of its entry, and was composed as the first.
    double height_of_length(std::size_t p, const Measures& measures,
                            const Tightest& tightest) const {
        const auto section = lengths_.find(p);
        if (section == lengths_.end()) return 0;
        const auto& positions = measures.sections[section->second].positions;
        if (positions.empty()) return 0;
        return positions.front().head - tightest.gap(theme::GapName::entry) +
               tightest.gap(theme::GapName::line);
    }

    double height_of_head(const Part& part, const Measures& measures) const {
        const PositionHeights* heights = find(part, measures);
        return heights ? heights->head : 0;
    }

    // The head of a position was composed with its lists whole.
    void take_off_lists() {
        auto& pieces = offer_.problem.pieces;
        for (const auto& [length, section] : lengths_) {
            const std::size_t one = pieces[length].within;
            if (length + 1 < pieces.size() && pieces[length + 1].within == one) continue;
            Piece& position = pieces[pieces[one].within];
            position.height = std::max<std::int64_t>(0, position.height - pieces[length].height);
        }
    }

    Offer& offer_;
    model::Resume all_;                          // with a section more for each length of a list
    std::map<std::size_t, std::size_t> lengths_; // that section, by piece
    std::vector<std::vector<std::size_t>> first_positions_; // of its section's entries
    std::map<const model::Entry*, std::vector<std::size_t>> bullets_before_;
};

// Of lengths that are as high, the one with most items; the others are no use.
void take_out_short_lengths(Offer& offer) {
    Offer left;
    left.problem.terms = std::move(offer.problem.terms);
    left.problem.capacity = offer.problem.capacity;
    std::vector<std::size_t> now(offer.parts.size(), none);
    for (std::size_t p = 0; p < offer.parts.size(); ++p) {
        Piece& piece = offer.problem.pieces[p];
        const bool beaten = offer.parts[p].items && p + 1 < offer.parts.size() &&
                            offer.problem.pieces[p + 1].within == piece.within &&
                            offer.problem.pieces[p + 1].height == piece.height;
        if (beaten) continue;
        now[p] = left.parts.size();
        if (piece.within != none) piece.within = now[piece.within];
        left.problem.pieces.push_back(std::move(piece));
        left.parts.push_back(std::move(offer.parts[p]));
    }
    offer = std::move(left);
}

}

bool set_heights(Offer& offer, const model::Resume& resume, const theme::Theme& theme,
                 const Compose& compose) {
    HeightSetter setter(offer, resume);
    const auto composition = compose(setter.with_lengths());
    if (!composition) return false;
    const Tightest tightest(*composition, theme, resume.settings);
    setter.set(measure(setter.with_lengths(), *composition, tightest), tightest);
    take_out_short_lengths(offer);
    return true;
}

double room_left(const composition::Composition& composition, const theme::Theme& theme,
                 const model::Settings& settings) {
    const Tightest tightest(composition, theme, settings);
    const auto pages = static_cast<std::size_t>(std::max(*settings.pages, 1));
    double left = static_cast<double>(pages) * tightest.room();
    for (const fit::Column& column : tightest.columns) {
        const double beyond = fit::height_beyond(column, tightest.setting, pages);
        const std::vector<std::size_t> begins = fit::full_page_begins(column, tightest.setting);
        if (beyond > 0 || begins.empty()) {
            left = std::min(left, -beyond);
            continue;
        }
        const fit::PageHeights heights(column, tightest.setting);
        const double last = heights.height(begins.back(), column.lines.size());
        const auto whole_pages = static_cast<double>(pages - begins.size());
        left = std::min(left, (whole_pages + 1) * tightest.room() - last);
    }
    return left;
}

}
