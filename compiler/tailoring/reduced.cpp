// The résumé that a choice leaves.
#include "compiler/matching/rank.hpp"
#include "compiler/tailoring/parts.hpp"

#include <algorithm>
#include <map>
#include <utility>
#include <variant>

namespace quoin::tailoring {

namespace {

using Kind = Part::Kind;

std::int64_t shown_worth(const Problem& problem, std::size_t piece) {
    std::int64_t worth = 0;
    for (const std::size_t term : problem.pieces[piece].shows)
        worth += problem.terms[term].first;
    return worth;
}

class Reduction {
public:
    Reduction(const model::Resume& resume, const Offer& offer, const Taken& taken)
        : resume_(resume), offer_(offer), taken_(taken) {
        for (std::size_t p = 0; p < offer.parts.size(); ++p)
            if (offer.problem.pieces[p].within != none)
                below_[offer.problem.pieces[p].within].push_back(p);
    }

    model::Resume run() {
        model::Resume left = resume_;
        left.sections.clear();
        for (std::size_t p = 0; p < offer_.parts.size(); ++p) {
            if (!taken_[p]) continue;
            const Part& part = offer_.parts[p];
            if (part.kind == Kind::heading) left.heading = fields(resume_.heading, p);
            if (part.kind == Kind::section) left.sections.push_back(section(p));
        }
        return left;
    }

private:
    model::Section section(std::size_t p) {
        model::Section left = resume_.sections[offer_.parts[p].section];
        left.entries.clear();
        for (const std::size_t part : below_[p])
            if (taken_[part]) left.entries.push_back(position(part));
        return left;
    }

    model::Entry position(std::size_t p) {
        model::Entry left = position_of(resume_, offer_.parts[p]);
        const std::vector<model::Bullet> all = std::move(left.bullets);
        left.fields = fields(left.fields, p);
        left.bullets.clear();
        left.further.clear();
        for (const std::size_t bullet : bullets_in_order(offer_, taken_, p)) {
            const Part& part = offer_.parts[bullet];
            for (std::size_t b = part.bullet; b < part.past; ++b)
                left.bullets.push_back(all[b]);
        }
        for (const std::size_t part : below_[p])
            if (taken_[part] && offer_.parts[part].kind == Kind::position)
                left.further.push_back(position(part));
        return left;
    }

    // Those that are no pieces of their own, and of these the ones taken.
    std::vector<model::Field> fields(const std::vector<model::Field>& all, std::size_t p) {
        std::map<std::size_t, const Part*> lengths; // by field; null: none of it
        collect_fields(p, lengths);
        std::vector<model::Field> left;
        for (std::size_t f = 0; f < all.size(); ++f) {
            const auto found = lengths.find(f);
            if (found != lengths.end() && !found->second) continue;
            left.push_back(all[f]);
            if (found == lengths.end() || !found->second->items) continue;
            const auto& items = std::get<std::vector<model::Text>>(all[f].value);
            std::vector<model::Text> some;
            for (const std::size_t item : *found->second->items)
                some.push_back(items[item]);
            left.back().value = std::move(some);
        }
        return left;
    }

    void collect_fields(std::size_t p, std::map<std::size_t, const Part*>& lengths) {
        for (const std::size_t below : below_[p]) {
            const Part& part = offer_.parts[below];
            if (part.kind == Kind::one_of) collect_fields(below, lengths);
            if (part.kind != Kind::field) continue;
            const Part*& length = lengths.try_emplace(part.field, nullptr).first->second;
            const bool any = !part.items || !part.items->empty();
            if (taken_[below] && any) length = &part;
        }
    }

    const model::Resume& resume_;
    const Offer& offer_;
    const Taken& taken_;
    std::map<std::size_t, std::vector<std::size_t>> below_;
};

}

model::Resume reduced(const model::Resume& resume, const Offer& offer, const Taken& taken) {
    return Reduction(resume, offer, taken).run();
}

std::vector<std::size_t> bullets_in_order(const Offer& offer, const Taken& taken,
                                          std::size_t position) {
    std::vector<std::size_t> bullets;
    for (std::size_t p = position; p < offer.parts.size(); ++p) {
        const Part &part = offer.parts[p], &of = offer.parts[position];
        if (part.section != of.section || part.entry != of.entry) break;
        if (taken[p] && part.kind == Kind::bullet && part.further == of.further)
            bullets.push_back(p);
    }
    std::int64_t best = 0;
    for (const std::size_t bullet : bullets)
        best = std::max(best, shown_worth(offer.problem, bullet));
    std::stable_partition(bullets.begin(), bullets.end(), [&](std::size_t bullet) {
        return matching::serves(static_cast<double>(shown_worth(offer.problem, bullet)),
                                static_cast<double>(best));
    });
    return bullets;
}

}
