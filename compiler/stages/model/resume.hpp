// The résumé as typed data: what each thing is, not how it looks.
#pragma once

#include "compiler/base/place.hpp"
#include "compiler/stages/model/dates.hpp"
#include "compiler/stages/model/text.hpp"
#include "compiler/stages/page_words/words.hpp"
#include "compiler/trade/labels.hpp"
#include "compiler/trade/limits.hpp"

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace quoin::model {

// Pieces kept for, or left out of, the builds that ask for a tag.
struct Tags {
    std::vector<std::string> only;   // `{lab}`
    std::vector<std::string> except; // `{!lab}`
    bool keep = false;               // `{keep}`: whatever is chosen for a posting; no build asks

    bool empty() const { return only.empty() && except.empty(); } // taken by every build
    bool operator==(const Tags&) const = default;
};

struct Field {
    trade::FieldName name{};
    Text label; // groups only
    std::variant<Text, std::vector<Text>, DateRange>
        value; // items for honors, courses, activities, groups
    Tags tags;
    Place label_place;
    Place place; // of the value
};

struct Bullet {
    Text text;
    int level = 1; // 1 or 2
    Tags tags;
    Place place; // of the text
};

struct Entry {
    std::vector<Field> fields; // in source order
    std::vector<Bullet> bullets;
    std::vector<Entry> further; // experience only: further positions at the same employer
    Tags tags;
    Place place;

    const Field* find(trade::FieldName name) const; // the first; null if there is none
};

struct Section {
    Text title;
    trade::Holds holds = trade::Holds::other;
    bool side = false; // for the narrow column of a two-column theme
    std::vector<Entry> entries;
    Tags tags;
    Place place; // of the title
};

using trade::Interval; // a pinned setting has least == most

template<typename T>
struct Setting { // a value with the place it was set at; line 0 when it is the default
    T value{};
    Place place;

    const T* operator->() const { return &value; }
    const T& operator*() const { return value; }
    bool stated() const { return place.line != 0; }
};

struct Acceptance {
    std::string check;
    std::string reason;
    Place place;
};

// Words in another language than the résumé's, or an abbreviation: one of the two is stated.
struct Gloss {
    std::string words;
    std::string language;  // BCP 47
    std::string expansion; // what it is short for
};

struct Settings {
    Setting<trade::Stage> stage{trade::Stage::undergraduate, {}};
    Setting<int> pages{1, {}};
    Setting<std::string> theme; // empty: the house theme
    Setting<trade::Paper> paper{trade::Paper::letter, {}};
    Setting<Interval> size{trade::size_bounds, {}};      // pt
    Setting<Interval> margins{trade::margin_bounds, {}}; // inch
    Setting<trade::DateForm> dates_as{trade::DateForm::short_month, {}};
    Setting<std::string> language{"en-US", {}}; // BCP 47
    Setting<std::optional<Date>> updated;
    Setting<bool> hyphenate{false, {}};
    std::vector<std::string> words;
    std::vector<Acceptance> accept;
    std::vector<Gloss> glosses;
};

struct Resume {
    Settings settings;
    std::vector<Field> heading; // name, pronouns, headline, address, phone, email, link
    std::vector<Section> sections;
    page_words::Words words;                  // that a page in its language says by itself
    std::vector<std::filesystem::path> files; // all that were read, the first file first

    const Field* find(trade::FieldName name) const; // in the heading
};

}
