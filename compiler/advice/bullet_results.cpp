// Whether an entry measures anything, and whether its bullets tell what came of the work.
#include "compiler/advice/bullet_wording.hpp"

#include "compiler/advice/date_order.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/lists.hpp"

#include <algorithm>

namespace quoin::advice {

namespace {

using enum trade::Holds;
using Opening = english::BulletReading::Opening;

bool tells_outcome(const WordedBullet& bullet) {
    if (bullet.reading.has_figure) return true;
    return std::ranges::any_of(bullet.part.words, [&](const WordAt& word) {
        return is_one_of(bullet.part.small(word), List::outcomes);
    });
}

// A clause of its own, or one in -ing, mostly tells what came of it.
bool has_second_clause(const WordedBullet& bullet) {
    const std::size_t comma = bullet.text.find(", ");
    if (bullet.text.find(';') != std::string::npos) return true;
    return comma != std::string::npos && bullet.text.find("ing ", comma) != std::string::npos;
}

bool is_task(const WordedBullet& bullet) {
    const Opening opening = bullet.reading.opening;
    const bool verb = opening == Opening::past_verb || opening == Opening::present_verb ||
                      opening == Opening::either_tense;
    return verb && bullet.bullet->level == 1 && !tells_outcome(bullet) &&
           !has_second_clause(bullet);
}

// Inner bullets tell what the one above does not.
bool has_inner(const model::Entry& entry, const model::Bullet& bullet) {
    const auto next = static_cast<std::size_t>(&bullet - entry.bullets.data()) + 1;
    return next < entry.bullets.size() && entry.bullets[next].level > bullet.level;
}

// Nothing is done yet that could be counted.
bool is_to_come(const model::Entry& entry, const ProofContext& context) {
    const model::DateRange* dates = dates_in(entry.find(trade::FieldName::dates));
    return dates != nullptr && is_incoming(*dates, context.today);
}

bool has_figure(const model::Entry& entry, const ProofContext& context) {
    return std::ranges::any_of(context.bullets, [&](const WordedBullet& bullet) {
        return bullet.position.entry == &entry && bullet.reading.has_figure;
    });
}

// An activity of a line or two may be told without.
bool is_minor(const Position& position) {
    return position.section->holds == activities && position.entry->bullets.size() < 2;
}

void report_tasks(const model::Entry& entry, const std::vector<Place>& places,
                  std::vector<Finding>& findings) {
    if (places.size() == 1)
        report<messages::one_task>(findings, places.front(), called(entry));
    else
        report<messages::some_tasks>(findings, places.front(),
                                     counted(places.size(), "bullet", "bullets"), called(entry),
                                     lines_listed(places));
}

}

void no_figure(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Position& position : positions(context.resume, {experience, projects, activities})) {
        const model::Entry& entry = *position.entry;
        if (entry.bullets.empty() || is_to_come(entry, context)) continue;
        if (has_figure(entry, context) || is_minor(position)) continue;
        report<messages::no_figure>(findings, place_of(entry), called(entry));
    }
}

void task_without_result(const ProofContext& context, std::vector<Finding>& findings) {
    const auto bullets = bullets_under(context, {experience, projects});
    for (auto first = bullets.begin(); first != bullets.end();) { // an entry's stand together
        const model::Entry& entry = *first->get().position.entry;
        const auto past = std::find_if(first, bullets.end(), [&](const WordedBullet& bullet) {
            return bullet.position.entry != &entry;
        });
        std::vector<Place> places;
        for (; first != past; ++first)
            if (const WordedBullet& one = *first; is_task(one) && !has_inner(entry, *one.bullet))
                places.push_back(one.bullet->place);
        const bool one_of_many = places.size() == 1 && entry.bullets.size() > 2;
        if (!places.empty() && !one_of_many) report_tasks(entry, places, findings);
    }
}

}
