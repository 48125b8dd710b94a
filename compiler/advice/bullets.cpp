#include "compiler/advice/bullets.hpp"

#include "compiler/advice/walk.hpp"

#include <algorithm>

namespace quoin::advice {

std::string_view WordedBullet::words(english::Extent extent) const {
    return std::string_view(text).substr(extent.offset, extent.length);
}

Place WordedBullet::place(english::Extent extent) const {
    return bullet->text.place(extent.offset, extent.length);
}

std::vector<WordedBullet> read_bullets(const model::Resume& resume, const TextsRead& texts,
                                       const english::Language& language) {
    using enum trade::Holds;
    std::vector<WordedBullet> all;
    auto part = texts.begin();
    for (const Position& position :
         positions(resume, {education, experience, projects, activities, honors, other}))
        for (const model::Bullet& bullet : position.entry->bullets) {
            part = std::ranges::find(part, texts.end(), &bullet, &TextInResume::bullet);
            all.push_back(
                {position, *part, &bullet, part->plain, language.read_bullet(part->sentence)});
        }
    return all;
}

}
