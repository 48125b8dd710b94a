// Bullets read, with the places of what was read in them.
#include "compiler/advice/bullet_wording.hpp"

#include "compiler/advice/date_order.hpp"

namespace quoin::advice {

namespace {

// An address that a link shows is no wording of the writer's either.
std::vector<english::Extent> titles_in(const model::Text& text) {
    std::vector<english::Extent> titles;
    std::size_t offset = 0;
    bool all = true;
    for (const model::Span& span : text.spans) {
        if (span.marks.emphasis) titles.push_back({offset, span.text.size()});
        all &= span.marks.emphasis;
        offset += span.text.size();
    }
    if (all) titles.clear();
    return titles;
}

}

std::string_view WordedBullet::words(english::Extent extent) const {
    return std::string_view(text).substr(extent.offset, extent.length);
}

Place WordedBullet::place(english::Extent extent) const {
    return bullet->text.place(extent.offset, extent.length);
}

english::BulletReading read_wording(const model::Text& text, const english::Language& language) {
    return language.read_bullet(text.plain(), titles_in(text));
}

std::vector<WordedBullet> worded_bullets(const ProofContext& context,
                                         std::initializer_list<trade::Holds> kinds) {
    std::vector<WordedBullet> all;
    for (const Position& position : positions(context.resume, kinds))
        for (const model::Bullet& bullet : position.entry->bullets)
            all.push_back({position, &bullet, bullet.text.plain(),
                           read_wording(bullet.text, context.language)});
    return all;
}

WhenDone when_done(const model::Entry& entry, const ProofContext& context) {
    const model::DateRange* dates = dates_in(entry.find(trade::FieldName::dates));
    if (!dates) return WhenDone::unknown;
    if (!dates->end) return WhenDone::current;
    if (is_over(*dates->end, context.today)) return WhenDone::ended;
    const bool begun = dates->start && is_over(*dates->start, context.today);
    const bool goes_on = begun && surely_before(context.today, *dates->end);
    return goes_on ? WhenDone::current : WhenDone::unknown;
}

}
