#include "compiler/advice/bullets.hpp"

#include "compiler/advice/walk.hpp"

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

std::vector<WordedBullet> read_bullets(const model::Resume& resume,
                                       const english::Language& language) {
    using enum trade::Holds;
    std::vector<WordedBullet> all;
    for (const Position& position :
         positions(resume, {education, experience, projects, activities, honors, other}))
        for (const model::Bullet& bullet : position.entry->bullets)
            all.push_back(
                {position, &bullet, bullet.text.plain(), read_wording(bullet.text, language)});
    return all;
}

}
