#include "compiler/tailoring/left_out.hpp"

#include <algorithm>
#include <variant>

namespace quoin::tailoring {

namespace {

using Kind = Part::Kind;
using Why = LeftOut::Why;

class Reasons {
public:
    Reasons(const model::Resume& resume, const Offer& offer, const Taken& taken,
            const Demand& demand)
        : resume_(resume), offer_(offer), taken_(taken), demand_(demand),
          shown_by_(demand.size(), none) {
        for (std::size_t p = 0; p < taken.size(); ++p)
            if (taken[p])
                for (const std::size_t term : offer.problem.pieces[p].shows)
                    note(term, p);
    }

    std::vector<LeftOut> run() {
        std::vector<LeftOut> all;
        for (std::size_t p = 0; p < taken_.size(); ++p) {
            const Part& part = offer_.parts[p];
            if (taken_[p] && part.items && is_shorter(p))
                all.push_back({p, part.items->empty() ? Why::list_is_gone : Why::list_is_shorter});
            else if (!taken_[p] && is_whole(p))
                all.push_back(reason(p));
        }
        return all;
    }

private:
    // A bullet tells more than a list does.
    void note(std::size_t term, std::size_t piece) {
        std::size_t& by = shown_by_[term / 2];
        if (by == none || (term % 2 == 1 && offer_.parts[by].kind != Kind::bullet)) by = piece;
    }

    std::size_t within(std::size_t p) const { return offer_.problem.pieces[p].within; }

    // Not a part of what is left out itself, and more than a way to have something.
    bool is_whole(std::size_t p) const {
        const Part& part = offer_.parts[p];
        if (part.kind == Kind::bullets || part.items) return false;
        if (part.kind == Kind::one_of) return part.field != none && is_there(within(p));
        const std::size_t above = within(p);
        const bool wording = above != none && offer_.parts[above].kind == Kind::one_of;
        return is_there(wording && !taken_[above] ? within(above) : above);
    }

    bool is_there(std::size_t p) const { return p == none || taken_[p]; }

    bool is_shorter(std::size_t p) const {
        const auto& field = position_of(resume_, offer_.parts[p]).fields[offer_.parts[p].field];
        return offer_.parts[p].items->size() <
               std::get<std::vector<model::Text>>(field.value).size();
    }

    bool is_below(std::size_t p, std::size_t above) const {
        while (p != none && p != above)
            p = within(p);
        return p == above;
    }

    LeftOut reason(std::size_t piece) const {
        const std::size_t above = within(piece);
        if (above != none && offer_.parts[above].kind == Kind::one_of && taken_[above])
            return {piece, Why::another_wording};
        std::size_t already = none; // the heaviest that is shown elsewhere
        std::vector<bool> shows(demand_.size());
        for (std::size_t p = piece; p < offer_.parts.size() && is_below(p, piece); ++p)
            for (const std::size_t term : offer_.problem.pieces[p].shows)
                shows[term / 2] = true;
        for (std::size_t t = 0; t < demand_.size(); ++t) {
            if (!shows[t]) continue;
            if (shown_by_[t] == none) return {piece, Why::no_room, demand_[t].words};
            if (already == none) already = t;
        }
        if (already == none) return {piece, Why::shows_nothing};
        return {piece, Why::shown_already, demand_[already].words,
                place_of(resume_, offer_.parts[shown_by_[already]])};
    }

    const model::Resume& resume_;
    const Offer& offer_;
    const Taken& taken_;
    const Demand& demand_;
    std::vector<std::size_t> shown_by_; // a piece, by what is asked for
};

}

std::vector<LeftOut> left_out(const model::Resume& resume, const Offer& offer, const Taken& taken,
                              const Demand& demand) {
    return Reasons(resume, offer, taken, demand).run();
}

Place place_of(const model::Resume& resume, const Part& part) {
    if (part.section == none)
        return part.field == none ? Place{} : resume.heading[part.field].label_place;
    if (part.entry == none) return resume.sections[part.section].place;
    const model::Entry& position = position_of(resume, part);
    if (part.bullet != none) return position.bullets[part.bullet].place;
    return part.field == none ? position.place : position.fields[part.field].label_place;
}

}
