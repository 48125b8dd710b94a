// Builds the composition: the structure tree and its paragraphs, in reading order.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/composition/line_text.hpp"
#include "compiler/stages/composition/shaped_text.hpp"
#include "compiler/stages/composition/sheet.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace quoin::composition {

class Composer {
public:
    Composer(const model::Resume& resume, const theme::Theme& theme, fonts::Fonts& fonts,
             Diagnostics& diagnostics, const Hyphenation* hyphenation, std::size_t way = 0,
             const SidePlan* plan = nullptr, ShapedTexts* known = nullptr);

    Composition run();                   // the résumé's
    Composition run(const Sheet& sheet); // the sheet's; of the résumé, the settings

private:
    // heading.cpp
    void add_heading();
    void add_running_head();

    // sections.cpp
    void add_section(const model::Section& section);
    void add_continued_headings();
    Paragraph continued_heading(const model::Text* title);
    void join_list(std::size_t paragraph);
    void set_in_columns(std::size_t first);
    bool is_numbered(const model::Section& section) const;
    void add_numbered_entry(const model::Entry& entry, const theme::Form& form, std::uint32_t list,
                            int number, theme::GapName gap);
    void add_entry(const model::Entry& entry, const theme::Form& form, bool further,
                   std::uint32_t section, theme::GapName gap);
    void add_bullets(std::span<const model::Bullet> bullets, std::uint32_t section,
                     theme::GapName gap);
    // Gives the LBody.
    std::uint32_t add_bullet(const model::Bullet& bullet, std::uint32_t list, int level,
                             theme::GapName gap);

    // sheet.cpp
    void add_remarks(const RemarkGroup& group, std::uint32_t section);

    // paragraphs.cpp
    std::uint32_t add_element(StructureType type, std::uint32_t parent);
    Paragraph& add_paragraph(const LineText& text, theme::StyleName style, theme::GapName gap,
                             std::uint32_t element);
    Paragraph make_paragraph(const LineText& text, theme::StyleName style, std::uint32_t element);
    void shrink(Paragraph& paragraph, const theme::Style& style) const;
    void add_label(Paragraph& paragraph, std::string_view sign, int level, std::uint32_t element);
    std::uint32_t add_revision(model::Revised revised, std::uint32_t parent);
    std::uint32_t add_span(const model::Gloss& gloss, std::uint32_t parent);
    void place_runs(Paragraph& paragraph, const ShapedText& shaped, const LineText& text);
    double character_width();
    void make_room_for_headings();
    std::uint32_t add_icon(const RunIcon& icon, const theme::Style& style);
    std::string link_contents(const std::string& uri, const std::string& words) const;
    double size_of(theme::StyleName style) const;
    DatesAs dates_as() const { return {*resume_.settings.dates_as, resume_.words}; }

    const model::Resume& resume_;
    const theme::Theme& theme_;
    std::size_t way_; // of the theme's, that entries are arranged in
    SidePlan plan_;
    TextShaper shaper_;
    std::string name_;
    Composition out_;
    std::uint32_t entries_ = 0, lists_ = 0, blocks_ = 0;
    double body_indent_; // the theme's, or what headings in the margin need
    Region region_{};    // of what is being added
    std::uint32_t section_ = 0;
    bool in_heading_ = false; // its links are the writer's own
};

}
