// Which bullets the wording checks look at, and when the work of each was.
#include "compiler/advice/bullet_wording.hpp"

#include "compiler/advice/date_order.hpp"
#include "compiler/base/lists.hpp"

namespace quoin::advice {

BulletsRead bullets_under(const ProofContext& context, std::initializer_list<trade::Holds> kinds) {
    BulletsRead some;
    for (const WordedBullet& bullet : context.bullets)
        if (is_one_of(bullet.position.section->holds, kinds)) some.emplace_back(bullet);
    return some;
}

english::Extent extent_of(const english::Tokens& tokens, std::size_t first, std::size_t last) {
    const std::size_t begin = tokens[first].extent.offset;
    const english::Extent& end = tokens[last].extent;
    return {begin, end.offset + end.length - begin};
}

WhenDone when_done(const model::Entry& entry, const ProofContext& context) {
    const model::DateRange* dates = dates_in(entry.find(trade::FieldName::dates));
    if (!dates) return WhenDone::unknown;
    if (!dates->end) return WhenDone::current;
    if (ends_far_ahead(*dates, context.today)) return WhenDone::unknown;
    if (is_over(*dates->end, context.today)) return WhenDone::ended;
    const bool begun = dates->start && is_over(*dates->start, context.today);
    const bool goes_on = begun && surely_before(context.today, *dates->end);
    return goes_on ? WhenDone::current : WhenDone::unknown;
}

}
