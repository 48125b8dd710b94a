// The text of one paragraph shaped into runs, with the places where its lines may end.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/composition/glosses.hpp"
#include "compiler/stages/composition/hyphenation.hpp"
#include "compiler/stages/composition/line_text.hpp"
#include "compiler/stages/composition/theme_faces.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <unordered_map>
#include <vector>

namespace quoin::composition {

struct RunIcon {
    std::string name;     // empty: none
    bool in_slot = false; // in the middle of its square, not flush with its left edge
};

struct ShapedText {
    std::vector<Run> runs;
    std::vector<std::optional<std::uint32_t>> links; // one a run: index into LineText::links
    std::vector<RunIcon> icons;                      // one a run
    std::optional<std::uint32_t> fill;               // the run of a fill's white
    std::vector<std::optional<std::uint32_t>> spans; // one a run: index into `glossed`
    std::vector<GlossedRange> glossed;
    std::vector<BreakPoint> breaks;
    std::vector<std::uint32_t> hyphen_glyphs; // one a run, if a break asks for one
    std::vector<Origin> origins;
};

// All that hangs on the text, where theme, fonts, language and hyphenation are the same.
struct AskedText {
    LineText text;
    theme::StyleName style{};
    double size = 1; // a ratio of the text size

    bool operator==(const AskedText&) const = default;
};

struct AskedTextHash {
    std::size_t operator()(const AskedText& asked) const;
};

// What has been shaped for one arrangement of a page, for the others: most of their texts are the
// same.
struct ShapedTexts : std::unordered_map<AskedText, ShapedText, AskedTextHash> {};

class TextShaper {
public:
    // Words are divided if there is a `hyphenation`.
    TextShaper(const theme::Theme& theme, fonts::Fonts& fonts, const model::Settings& settings,
               Diagnostics& diagnostics, const Hyphenation* hyphenation, ShapedTexts* known)
        : theme_(theme), faces_(theme, fonts, diagnostics), language_(*settings.language),
          glosses_(settings.glosses, language_), diagnostics_(diagnostics),
          hyphenation_(hyphenation), known_(known) {}

    // `size` is a ratio of the text size. A character that is in no face is reported, once.
    ShapedText shape(const LineText& text, theme::StyleName style, double size);

private:
    struct Segment;
    struct Segmented;
    struct Missing;

    ShapedText shaped_anew(const LineText& text, theme::StyleName style, double size);
    Segmented segment(const LineText& text, const theme::Style& style);
    bool is_english() const;
    theme::Letters letters_of(const TextPiece& piece, const theme::Style& style) const;
    Run shaped_run(const Segment& part, const Segmented& parts, const theme::Style& style) const;
    void add_piece(const TextPiece& piece, const theme::Style& style, Segmented& out);
    void check_direction(std::string_view cluster, Place place, Segmented& out);
    static std::size_t end_of_words(std::string_view text, std::size_t at);
    void report(Missing& missing);

    const theme::Theme& theme_;
    ThemeFaces faces_;
    std::string language_;
    GlossedWords glosses_;
    Diagnostics& diagnostics_;
    const Hyphenation* hyphenation_;
    ShapedTexts* known_;
    std::set<std::string, std::less<>> missing_;
};

}
