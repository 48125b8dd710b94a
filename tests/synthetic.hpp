// Compositions made without shaping: a glyph a character, of widths that the tests choose.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/fonts/fonts.hpp"

#include <cmath>
#include <cstdint>
#include <random>
#include <string>
#include <string_view>

#include <hb.h>

namespace quoin::synthetic {

inline const fonts::Face& face() {
    static const fonts::Face face(QUOIN_DATA_FOLDER
                                  "/fonts/opentype/linux-libertine/LinLibertine_R.otf");
    return face;
}

inline double em_width(char letter) {
    return letter == ' ' ? 0.25 : 0.3 + 0.04 * (letter % 11);
}

inline std::uint32_t hyphen_glyph() {
    hb_codepoint_t glyph = 0;
    hb_font_get_nominal_glyph(face().hb_font(), '-', &glyph);
    return glyph;
}

inline composition::Run& add_run(composition::Paragraph& paragraph, double size = 1,
                                 double tracking = 0) {
    composition::Run& run = paragraph.runs.emplace_back();
    run.face = &face();
    run.size = size;
    run.tracking = tracking;
    paragraph.hyphen_glyphs.push_back(hyphen_glyph());
    return run;
}

// Lines may end after spaces; at `|`, with a hyphen; `^` starts a larger, tracked run or ends it;
// `~` is a space that does not break.
inline composition::Paragraph paragraph(std::string_view text) {
    composition::Paragraph result;
    result.ascent = 0.7;
    result.descent = 0.2;
    bool plain = true;
    add_run(result);
    for (const char letter : text) {
        composition::Run& run = result.runs.back();
        const auto size = static_cast<std::uint32_t>(run.glyphs.size());
        const auto run_index = static_cast<std::uint32_t>(result.runs.size() - 1);
        if (letter == '^') {
            plain = !plain;
            add_run(result, plain ? 1 : 1.2, plain ? 0 : 0.03);
        } else if (letter == '|') {
            result.breaks.push_back({run_index, size, 50, true});
        } else {
            const std::string_view character =
                letter == '~' ? "\u00A0" : std::string_view(&letter, 1);
            const double width = letter == '~' ? em_width(' ') : em_width(letter);
            fonts::Glyph glyph;
            glyph.id = 1;
            glyph.advance = static_cast<std::int32_t>(std::lround(width * face().units_per_em()));
            glyph.text_begin = static_cast<std::uint32_t>(run.text.size());
            glyph.text_length = static_cast<std::uint32_t>(character.size());
            run.glyphs.push_back(glyph);
            run.text += character;
            if (letter == ' ') result.breaks.push_back({run_index, size + 1, 0, false});
        }
    }
    return result;
}

inline std::string words(std::mt19937& random, std::size_t count, bool marks = false) {
    std::string text;
    for (std::size_t i = 0; i < count; ++i) {
        if (i > 0) text += marks && random() % 9 == 0 ? '~' : ' ';
        if (marks && random() % 6 == 0) text += '^';
        const std::size_t letters = 1 + random() % 9;
        for (std::size_t j = 0; j < letters; ++j) {
            if (marks && j > 1 && random() % 8 == 0) text += '|';
            text += static_cast<char>('a' + random() % 26);
        }
    }
    return text;
}

// A name, a line of contact, and sections of a ruled heading, entries and bullets.
inline void add_paragraph(composition::Composition& composition, std::string_view text,
                          theme::GapName gap, double size = 1) {
    composition::Paragraph added = paragraph(text);
    added.gap = gap;
    added.size = size;
    for (composition::Run& run : added.runs)
        run.size *= size;
    added.ascent *= size;
    added.descent *= size;
    composition.paragraphs.push_back(added);
}

inline void add_section(composition::Composition& composition, std::mt19937& random,
                        std::size_t bullets) {
    add_paragraph(composition, words(random, 1 + random() % 2), theme::GapName::section, 1.2);
    composition::Paragraph& heading = composition.paragraphs.back();
    heading.keep_with_next = true;
    heading.rule = theme::RuleAt::below;
    heading.rule_thickness = 0.5;
    heading.rule_gap = 0.15;
    for (std::size_t i = 0; i < bullets; ++i) {
        if (i % 4 == 0) {
            add_paragraph(composition, words(random, 4 + random() % 9),
                          i == 0 ? theme::GapName::heading : theme::GapName::entry);
            composition.paragraphs.back().keep_with_next = true;
        }
        add_paragraph(composition, words(random, 6 + random() % 28, true), theme::GapName::bullet);
        composition.paragraphs.back().indent = 1;
    }
}

inline composition::Composition resume(unsigned seed, std::size_t sections, std::size_t bullets) {
    std::mt19937 random(seed);
    composition::Composition composition;
    add_paragraph(composition, words(random, 2), theme::GapName::none, 2.1);
    add_paragraph(composition, words(random, 8), theme::GapName::contact);
    for (composition::Paragraph& paragraph : composition.paragraphs)
        paragraph.align = theme::Align::centre;
    for (std::size_t i = 0; i < sections; ++i)
        add_section(composition, random, bullets);
    return composition;
}

inline theme::Theme theme() {
    theme::Theme theme;
    theme.size = {10, 11, 12};
    theme.side_margin = {36, 64, 72};
    theme.top_margin = {36, 57, 72};
    theme.bottom_margin = {36, 60, 72};
    theme.leading = {1.15, 1.26, 1.32};
    theme.gaps = {theme::Preference{0, 0, 0},
                  {0, 0.1, 0.3},
                  {0.1, 0.25, 0.5},
                  {0.5, 1, 1.4},
                  {0.2, 0.4, 0.6},
                  {0.25, 0.6, 0.8},
                  {0, 0.05, 0.15},
                  {0, 0.1, 0.2}};
    return theme;
}

}
