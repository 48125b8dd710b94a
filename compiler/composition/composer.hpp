// Builds the composition: the structure tree and its paragraphs, in reading order.
#pragma once

#include "compiler/composition/composition.hpp"
#include "compiler/composition/line_text.hpp"
#include "compiler/composition/shaped_text.hpp"
#include "compiler/composition/sheet.hpp"
#include "compiler/model/resume.hpp"
#include "compiler/source/diagnostics.hpp"
#include "compiler/theme/theme.hpp"

#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace quoin {

class Composer {
public:
    Composer(const Resume& resume, const Theme& theme, Fonts& fonts, Diagnostics& diagnostics,
             const Hyphenation* hyphenation);

    Composition run();                   // the résumé's
    Composition run(const Sheet& sheet); // the sheet's; of the résumé, the settings

private:
    // heading.cpp
    void add_heading();
    void add_running_head();

    // sections.cpp
    bool is_side(const Section& section) const;
    ColumnSpan span_of(Region region) const;
    void add_section(const Section& section);
    void add_entry(const Entry& entry, const Form& form, bool further, std::uint32_t section,
                   GapName gap);
    void add_bullets(std::span<const Bullet> bullets, std::uint32_t section, GapName gap);
    // Gives the LBody.
    std::uint32_t add_bullet(const Bullet& bullet, std::uint32_t list, int level, GapName gap);

    // sheet.cpp
    void add_remarks(const RemarkGroup& group, std::uint32_t section);

    // paragraphs.cpp
    std::uint32_t add_element(StructureType type, std::uint32_t parent);
    Paragraph& add_paragraph(const LineText& text, StyleName style, GapName gap,
                             std::uint32_t element);
    Paragraph make_paragraph(const LineText& text, StyleName style, std::uint32_t element);
    void add_label(Paragraph& paragraph, std::string_view sign, int level, std::uint32_t element);
    std::uint32_t add_span(const Gloss& gloss, std::uint32_t parent);
    void place_runs(Paragraph& paragraph, const ShapedText& shaped, const LineText& text);
    std::uint32_t add_icon(const std::string& name, const Style& style);
    std::string link_contents(const std::string& uri, const std::string& words) const;
    double size_of(StyleName style) const;

    const Resume& resume_;
    const Theme& theme_;
    TextShaper shaper_;
    std::string name_;
    Composition out_;
    std::uint32_t entries_ = 0;
    Region region_{};         // of what is being added
    bool in_heading_ = false; // its links are the writer's own
};

}
