// A theme: how each thing looks. Sizes are ratios of the text size and gaps are in em of it, so
// that a page can be fitted by changing the text size alone.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/stages/theme/measures.hpp"
#include "compiler/trade/limits.hpp"

#include <array>
#include <cstdint>
#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace quoin::theme {

using trade::points_per_inch;
constexpr double least_text = trade::size_bounds.least; // pt, in any style

struct Preference { // `10.6 (10..12)`: a preferred value and its bounds
    double least = 0;
    double preferred = 0;
    double most = 0;
};

struct Colour { // sRGB
    std::uint8_t red = 0, green = 0, blue = 0;

    bool operator==(const Colour&) const = default;
};

enum class Align { left, centre, right, justified };
enum class Caps { none, small, all };
enum class Figures { lining, oldstyle };
enum class RuleAt { none, above, below };

// What a style is for. Every paragraph on the page has one of these.
enum class StyleName { text, name, headline, contact, section, title, line, bullet, running_head };
constexpr std::size_t style_count = 9;

// How letters and figures are drawn, where the family has them.
struct Letters {
    Caps caps = Caps::none;
    Figures figures = Figures::lining;
    bool ligatures = true;

    bool operator==(const Letters&) const = default;
};

using Places = std::map<std::string, Place, std::less<>>; // of settings, by their labels

struct Style {
    double size = 1;       // ratio of the text size
    double least_size = 0; // to which a line too long for the page shrinks; 0: it does not
    std::string family;    // none: the theme's
    bool bold = false;
    bool italic = false;
    Letters letters;
    double tracking = 0; // em of its own size; at most 1/12, beyond which readers split words
    Colour colour;
    Align align = Align::left;
    double indent = 0;       // em of the text size, that all lines are set in by
    double turn_over = 0;    // em of the text size, that lines after the first are set in by
    double most_measure = 0; // characters that a line holds at most; 0: what the column holds
    RuleAt rule = RuleAt::none;
    double rule_thickness = 0.5; // pt
    double rule_length = 0;      // em of the text size, from the margin; 0: the column's width
    double rule_gap = 0.2;       // em, from the rule to the text's nearest edge
    Colour rule_colour;
    std::optional<Colour> icon_colour; // none: that of the text
    // What is in the theme's accent, whose colour is known when all is read.
    bool accent = false, rule_accent = false, icon_accent = false;
    Places places;
};

struct FieldLetters { // of one field, wherever it is printed: what it has other than its style
    std::optional<Caps> caps;
    std::optional<Figures> figures;
    std::optional<bool> ligatures;
    Places places;

    Letters on(Letters letters) const {
        return {caps.value_or(letters.caps), figures.value_or(letters.figures),
                ligatures.value_or(letters.ligatures)};
    }
};

// One step of an icon's outline, in a square of 100 by 100, x to the right and y down.
struct PathStep {
    enum class Kind { move, line, curve, close };
    Kind kind = Kind::close;
    std::array<double, 6> at{}; // move, line: x, y; curve: two control points, then its end
};
using Path = std::vector<PathStep>; // filled by the even-odd rule

// Gaps open above a paragraph; the first paragraph on a page has none.
enum class GapName { none, header, contact, section, heading, entry, line, bullet };
constexpr std::size_t gap_count = 8;

// A pattern says how the fields of a heading or an entry stand on one line:
//   *{role}*[, /{employer}/][, {place}][, {dates}]
// `{field}` is a field's value; `[…]` is printed only if every field in it has a value, and once
// for each value of a repeated field; `*…*` and `/…/` are strong and emphasis; a separator left
// over at the line's start is dropped; anything else is printed as it stands. `{label}` is the
// label of a skills group; `{page}`, for running heads alone, the page's number; `{courses-word}`
// what a page says by itself in the résumé's language; `{phone-icon}` the drawing of that name,
// where the theme draws icons; `{fill}` the white that sends what follows it to the right edge.
struct PatternPiece {
    enum class Kind { literal, field, label, page, word, icon, fill, group };
    Kind kind = Kind::literal;
    std::string literal;             // literal; the name of a word or an icon
    trade::FieldName field{};        // field; `label` is the label of a skills group
    model::Marks marks;              // literal, field, label, page, word
    std::vector<PatternPiece> group; // group

    bool is_name() const { return kind == Kind::field || kind == Kind::label; }
};

struct PatternLine {
    StyleName style{};              // also what it is: a title line is a heading of the structure
    bool further = false;           // only for the further positions of an entry
    bool each = false;              // set once for each value of its one field
    std::optional<std::size_t> way; // of Theme::ways, the one that it belongs to; none: to each
    std::vector<PatternPiece> pieces;
    Place place;

    bool fills() const;
};

struct Form { // how the heading or one kind of entry is arranged, bullets after the lines
    std::vector<PatternLine> lines;
};

struct Theme : Measures {
    std::string name;
    std::string use; // one line: what it is for
    std::string family;
    std::vector<std::string> fallback;               // families, tried in order for a missing glyph
    std::vector<std::filesystem::path> family_files; // of the system, tried after all families
    Place family_files_place;
    Place family_place;
    std::vector<Place> fallback_places;
    Preference size;                                   // pt
    Preference side_margin, top_margin, bottom_margin; // pt
    Preference leading;                                // ratio of a line's size
    Preference side_width{1.0 / 3, 1.0 / 3, 1.0 / 3};  // of the two columns' width together
    std::array<Preference, gap_count> gaps{};          // em of the text size
    std::array<Style, style_count> styles;
    std::string bullet = "•", inner_bullet = "–"; // first and second level
    std::vector<trade::Holds>
        side_sections;                  // set in the narrow column beside those that ask for it
    std::vector<trade::Holds> numbered; // kinds whose entries have numbers before them
    int skill_columns = 1;              // that the lines of sections of groups are shared out over
    std::optional<Colour> accent;
    std::map<trade::FieldName, FieldLetters> fields;
    std::map<std::string, Path, std::less<>> icons;
    // How entries may be arranged, the closest first: a page has all its entries in one way.
    std::vector<std::string> ways;
    Form heading;
    std::map<trade::Holds, Form> forms;
    std::vector<std::filesystem::path> files; // read for it

    const Style& style(StyleName which) const { return styles[static_cast<std::size_t>(which)]; }
    const Preference& gap(GapName which) const { return gaps[static_cast<std::size_t>(which)]; }
};

// `name` is a theme in `folder` or, if it holds a `/` or ends in `.theme`, a path from
// `from_folder`. `asked_at` is where a fault in the name itself is reported.
std::optional<Theme> read_theme(Sources& sources, const std::filesystem::path& folder,
                                const std::string& name, const std::filesystem::path& from_folder,
                                Place asked_at, Diagnostics& diagnostics);

// The theme in a file that is read already. One that it is based on is looked for in the same way.
std::optional<Theme> read_theme(Sources& sources, std::uint32_t file,
                                const std::filesystem::path& folder, Diagnostics& diagnostics);

// The names of the themes in a folder, in alphabetical order.
std::vector<std::string> theme_names(const std::filesystem::path& folder);

constexpr const char* house_theme = "turnstone";

}
