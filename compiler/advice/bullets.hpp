// Every bullet of the selected résumé with its reading: read once for a proof, and looked at by all
// of its checks.
#pragma once

#include "compiler/advice/texts.hpp"
#include "compiler/english/language.hpp"
#include "compiler/stages/model/resume.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace quoin::advice {

// One position, project or activity. `head` holds the employer and place of a further position at
// the same employer; it is `entry` itself for all others.
struct Position {
    const model::Section* section = nullptr;
    const model::Entry* head = nullptr;
    const model::Entry* entry = nullptr;

    // In the entry, else in its head.
    const model::Field* find(trade::FieldName name) const;
};

struct WordedBullet {
    Position position;
    const TextInResume& part; // its text
    const model::Bullet* bullet = nullptr;
    const std::string& text; // plain
    english::BulletReading reading;

    std::string_view words(english::Extent extent) const;
    Place place(english::Extent extent) const;
};

// In the order of the résumé; an entry's stand together.
std::vector<WordedBullet> read_bullets(const model::Resume& resume, const TextsRead& texts,
                                       const english::Language& language);

}
