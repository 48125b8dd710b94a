// From a résumé and what is asked of it to pieces with worths.
#include "compiler/tailoring/parts.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/trade/limits.hpp"
#include "compiler/trade/schools.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <tuple>
#include <utility>
#include <variant>

namespace quoin::tailoring {

namespace {

using Kind = Part::Kind;

// Of the heaviest term's first showing, anywhere and in a bullet; a second is worth a part of it.
constexpr double anywhere = 700, in_a_bullet = 300, second_showing = 0.3;

// What a piece is worth that shows nothing that is asked for: so much that the page is filled, and
// of two such the later entry, and the bullet with a figure or that the writer has put first, are
// there first.
constexpr std::int64_t of_a_bullet = 8, of_a_figure = 6, of_the_first = 4, of_an_item = 5,
                       of_an_entry = 16;

std::string plain(const model::Entry& entry, trade::FieldName name) {
    const model::Field* field = entry.find(name);
    const auto* text = field ? std::get_if<model::Text>(&field->value) : nullptr;
    return text ? text->plain() : std::string();
}

bool is_before_college(const model::Entry& entry) {
    return trade::is_before_college(plain(entry, trade::FieldName::school),
                                    plain(entry, trade::FieldName::degree));
}

const std::vector<model::Text>* items_of(const model::Field& field) {
    return std::get_if<std::vector<model::Text>>(&field.value);
}

bool may_repeat(trade::FieldName name) {
    const trade::Word* word = trade::find_word(trade::label_of(name));
    return !word || word->repeats; // a group has no label of its own
}

// `{lab}` below `{!lab}`, or above it: the same for two builds.
bool are_wordings(const model::Bullet& a, const model::Bullet& b) {
    return a.level == 1 && b.level == 1 && !a.tags.empty() && a.tags.only == b.tags.except &&
           a.tags.except == b.tags.only;
}

class Offering {
public:
    Offering(const model::Resume& resume, const Demand& demand)
        : resume_(resume), demand_(demand) {}

    Offer run() {
        add_terms();
        const std::size_t heading = add({.kind = Kind::heading}, none, true);
        add_wordings(resume_.heading, heading, {});
        for (std::size_t s = 0; s < resume_.sections.size(); ++s)
            add_section(s);
        must_with_what_holds_it();
        add_showings();
        return std::move(offer_);
    }

private:
    Piece& piece(std::size_t index) { return offer_.problem.pieces[index]; }

    std::size_t add(Part part, std::size_t within, bool must, std::int64_t worth = 0) {
        Piece added;
        added.within = within;
        added.must = must;
        added.worth = worth;
        offer_.problem.pieces.push_back(std::move(added));
        offer_.parts.push_back(std::move(part));
        return offer_.parts.size() - 1;
    }

    void bound(std::size_t index, std::size_t least, std::size_t most) {
        piece(index).least = least;
        piece(index).most = most;
    }

    // Two for each that is asked for: that it is shown at all, and that a bullet shows it.
    void add_terms() {
        double heaviest = 0;
        for (const Asked& asked : demand_)
            heaviest = std::max(heaviest, asked.weight);
        for (const Asked& asked : demand_)
            for (const double share : {anywhere, in_a_bullet}) {
                const double worth = heaviest > 0 ? share * asked.weight / heaviest : 0;
                offer_.problem.terms.push_back(
                    {std::llround(worth), std::llround(second_showing * worth)});
            }
    }

    void add_section(std::size_t s) {
        const model::Section& section = resume_.sections[s];
        const bool education = section.holds == trade::Holds::education;
        if (section.entries.empty()) return;
        const std::size_t added =
            add({.kind = Kind::section, .section = s}, none, education || section.tags.keep);
        bound(added, 1, none);
        const bool all_before = std::ranges::all_of(section.entries, is_before_college);
        for (std::size_t e = 0; e < section.entries.size(); ++e) {
            const model::Entry& entry = section.entries[e];
            // beside a college, a high school is the first to go (common practice)
            const bool must = education && (all_before || !is_before_college(entry));
            add_position(entry, {.kind = Kind::position, .section = s, .entry = e}, added, must);
        }
    }

    void add_position(const model::Entry& position, const Part& part, std::size_t within,
                      bool must) {
        const std::size_t newer = part.further == none ? part.entry : part.further + 1;
        const auto worth = of_an_entry / static_cast<std::int64_t>(newer + 1);
        const std::size_t added = add(part, within, must || position.tags.keep, worth);
        add_wordings(position.fields, added, part);
        add_lists(position.fields, added, part);
        add_bullets(position, added, part);
        for (std::size_t f = 0; f < position.further.size(); ++f) {
            Part further = part;
            further.further = f;
            add_position(position.further[f], further, added, false);
        }
    }

    static Part at(const Part& position, Kind kind) {
        Part part = position;
        part.kind = kind;
        return part;
    }

    // Of a label that stands again with other tags, one line is taken.
    void add_wordings(const std::vector<model::Field>& fields, std::size_t within,
                      const Part& position) {
        std::map<trade::FieldName, std::vector<std::size_t>> lines;
        for (std::size_t f = 0; f < fields.size(); ++f)
            if (!fields[f].tags.empty() && !may_repeat(fields[f].name))
                lines[fields[f].name].push_back(f);
        for (const auto& [name, wordings] : lines) {
            if (wordings.size() < 2) continue;
            const std::size_t one = add(at(position, Kind::one_of), within, true);
            bound(one, 1, 1);
            for (const std::size_t field : wordings) {
                Part wording = at(position, Kind::field);
                wording.field = field;
                governed_.push_back(wording);
                add(wording, one, false, field == wordings.front() ? 1 : 0);
            }
        }
    }

    void add_lists(const std::vector<model::Field>& fields, std::size_t within,
                   const Part& position) {
        bool any_group = false;
        for (std::size_t f = 0; f < fields.size(); ++f) {
            Part part = at(position, Kind::field);
            part.field = f;
            if (is_governed(part)) continue;
            const bool group = fields[f].name == trade::FieldName::group;
            const bool paragraph = fields[f].name == trade::FieldName::text;
            any_group = any_group || group || paragraph;
            if (paragraph)
                add(part, within, fields[f].tags.keep, of_an_entry);
            else if (items_of(fields[f]))
                add_lengths(fields[f], part, within, group);
            else
                continue;
            governed_.push_back(part);
        }
        if (any_group) bound(within, 1, none);
    }

    // As many as there are items: those that are worth least go first.
    void add_lengths(const model::Field& field, Part part, std::size_t within, bool group) {
        const std::size_t all = items_of(field)->size();
        std::vector<std::size_t> ranked(all);
        std::iota(ranked.begin(), ranked.end(), std::size_t{0});
        std::ranges::stable_sort(ranked, [&](std::size_t a, std::size_t b) {
            return weight_at(part, a) > weight_at(part, b);
        });
        const std::size_t one = add(at(part, Kind::one_of), within, !group || field.tags.keep);
        bound(one, 1, 1);
        const std::size_t least = field.tags.keep ? all : group ? 1 : 0;
        for (std::size_t count = least; count <= all; ++count) {
            part.items = std::vector<std::size_t>(
                ranked.begin(), ranked.begin() + static_cast<std::ptrdiff_t>(count));
            std::ranges::sort(*part.items);
            add(part, one, false, of_an_item * static_cast<std::int64_t>(count));
        }
    }

    double weight_at(const Part& list, std::size_t item) const {
        double weight = 0;
        for (const Asked& asked : demand_)
            for (const Spot& spot : asked.spots)
                if (is_at(list, spot) && spot.field == list.field && spot.item == item)
                    weight += asked.weight;
        return weight;
    }

    void add_bullets(const model::Entry& position, std::size_t within, const Part& part) {
        if (position.bullets.empty()) return;
        const std::size_t all = add(at(part, Kind::bullets), within, true);
        std::size_t count = 0, kept = 0;
        for (std::size_t b = 0; b < position.bullets.size(); ++count) {
            const std::size_t past = past_inner(position, b);
            const bool twice = past < position.bullets.size() && past == b + 1 &&
                               are_wordings(position.bullets[b], position.bullets[past]);
            std::size_t under = all;
            if (twice) {
                under = add(at(part, Kind::one_of), all, false);
                bound(under, 1, 1);
            }
            if (add_bullet(position, part, under, b)) ++kept;
            b = past;
            if (!twice) continue;
            add_bullet(position, part, under, b);
            b = past_inner(position, b);
        }
        bound(all, std::min<std::size_t>(trade::least_bullets, count),
              std::max<std::size_t>(trade::most_bullets, kept));
    }

    static std::size_t past_inner(const model::Entry& position, std::size_t bullet) {
        std::size_t past = bullet + 1;
        while (past < position.bullets.size() && position.bullets[past].level > 1)
            ++past;
        return past;
    }

    bool add_bullet(const model::Entry& position, const Part& of, std::size_t within,
                    std::size_t b) {
        Part part = at(of, Kind::bullet);
        part.bullet = b;
        part.past = past_inner(position, b);
        const model::Bullet& bullet = position.bullets[b];
        const bool figure = std::ranges::any_of(bullet.text.plain(), is_figure);
        const auto later = static_cast<std::int64_t>(b);
        add(part, within, bullet.tags.keep,
            of_a_bullet + (figure ? of_a_figure : 0) +
                std::max<std::int64_t>(0, of_the_first - later));
        return bullet.tags.keep;
    }

    // What must be there has what it is a part of there.
    void must_with_what_holds_it() {
        for (std::size_t p = offer_.parts.size(); p-- > 0;) {
            const Kind kind = offer_.parts[p].kind;
            const bool kept = kind == Kind::section || kind == Kind::position
                                  ? piece(p).must
                                  : piece(p).must && is_tagged_to_keep(p);
            if (kept && piece(p).within != none) keep_all_above(p);
        }
    }

    bool is_tagged_to_keep(std::size_t p) const {
        const Part& part = offer_.parts[p];
        if (part.section == none) return false;
        const model::Entry& position = position_of(resume_, part);
        if (part.kind == Kind::bullet) return position.bullets[part.bullet].tags.keep;
        return part.field != none && position.fields[part.field].tags.keep;
    }

    void keep_all_above(std::size_t p) {
        for (std::size_t above = piece(p).within; above != none; above = piece(above).within)
            piece(above).must = true;
    }

    static bool is_at(const Part& part, const Spot& spot) {
        return part.section == spot.section && part.entry == spot.entry &&
               part.further == spot.further;
    }

    bool is_governed(const Part& part) const {
        return std::ranges::any_of(governed_, [&](const Part& other) {
            return std::tie(other.section, other.entry, other.further, other.field) ==
                   std::tie(part.section, part.entry, part.further, part.field);
        });
    }

    bool shows(const Part& part, const Spot& spot) const {
        if (!is_at(part, spot)) return false;
        switch (part.kind) {
        case Kind::bullet:
            return spot.bullet != none && part.bullet <= spot.bullet && spot.bullet < part.past;
        case Kind::field:
            if (spot.field != part.field) return false;
            if (!part.items) return true;
            return spot.item == none ? !part.items->empty()
                                     : std::ranges::binary_search(*part.items, spot.item);
        case Kind::heading:
        case Kind::section:
        case Kind::position: {
            Part field = part;
            field.field = spot.field;
            return spot.bullet == none && (spot.field == none || !is_governed(field));
        }
        case Kind::bullets:
        case Kind::one_of:
            return false;
        }
        return false;
    }

    void add_showings() {
        for (std::size_t p = 0; p < offer_.parts.size(); ++p)
            for (std::size_t t = 0; t < demand_.size(); ++t) {
                const bool any = std::ranges::any_of(demand_[t].spots, [&](const Spot& spot) {
                    return shows(offer_.parts[p], spot);
                });
                if (!any) continue;
                piece(p).shows.push_back(2 * t);
                if (offer_.parts[p].kind == Kind::bullet) piece(p).shows.push_back(2 * t + 1);
            }
    }

    const model::Resume& resume_;
    const Demand& demand_;
    Offer offer_;
    std::vector<Part> governed_; // fields that are pieces of their own
};

}

const model::Entry& position_of(const model::Resume& resume, const Part& part) {
    const model::Entry& entry = resume.sections[part.section].entries[part.entry];
    return part.further == none ? entry : entry.further[part.further];
}

Offer offer_of(const model::Resume& resume, const Demand& demand) {
    return Offering(resume, demand).run();
}

}
