// The order of the whole: heading, sections, what further pages open with.
#include "compiler/stages/composition/composition.hpp"

#include "compiler/stages/composition/composer.hpp"

#include <algorithm>

namespace quoin::composition {

namespace {

bool divides_words(const model::Settings& settings, const theme::Theme& theme) {
    return settings.hyphenate.stated() ? *settings.hyphenate : theme.hyphenate;
}

std::string name_in_heading(const model::Resume& resume) {
    const model::Field* field = resume.find(trade::FieldName::name);
    const model::Text* text = field ? std::get_if<model::Text>(&field->value) : nullptr;
    return text ? text->plain() : std::string();
}

}

SidePlan widest_plan(const model::Resume& resume, const theme::Theme& theme) {
    SidePlan plan{{}, theme.side_width.preferred};
    for (const model::Section& section : resume.sections) {
        const auto& kinds = theme.side_sections;
        const bool may = section.side || std::ranges::find(kinds, section.holds) != kinds.end();
        plan.at_side.push_back(theme.two_columns && may);
    }
    return plan;
}

Composer::Composer(const model::Resume& resume, const theme::Theme& theme, fonts::Fonts& fonts,
                   Diagnostics& diagnostics, const Hyphenation* hyphenation, std::size_t way,
                   const SidePlan* plan, ShapedTexts* known)
    : resume_(resume), theme_(theme), way_(way), plan_(plan ? *plan : widest_plan(resume, theme)),
      shaper_(theme, fonts, resume.settings, diagnostics,
              divides_words(resume.settings, theme) ? hyphenation : nullptr, known),
      name_(name_in_heading(resume)), body_indent_(theme.body_indent) {}

Composition Composer::run() {
    add_element(StructureType::document, 0);
    out_.character = character_width();
    if (theme_.margin_headings) make_room_for_headings();
    add_heading();
    const bool two_columns = std::ranges::find(plan_.at_side, true) != plan_.at_side.end();
    for (const bool side : {false, true}) { // one whole column after the other
        region_ = !two_columns ? Region::whole : side ? Region::side : Region::main;
        for (std::size_t section = 0; section < resume_.sections.size(); ++section) {
            if (plan_.at_side[section] != side) continue;
            section_ = static_cast<std::uint32_t>(section + 1);
            add_section(resume_.sections[section]);
        }
    }
    add_running_head();
    add_continued_headings();
    out_.title = name_ + ", " + resume_.words.resume;
    out_.author = name_;
    out_.language = *resume_.settings.language;
    return std::move(out_);
}

std::optional<Composition> compose(const model::Resume& resume, const theme::Theme& theme,
                                   fonts::Fonts& fonts, Diagnostics& diagnostics,
                                   const Hyphenation* hyphenation, std::size_t way,
                                   const SidePlan* plan, ShapedTexts* known) {
    const std::size_t errors_before = diagnostics.count(Severity::error);
    Composition composition =
        Composer(resume, theme, fonts, diagnostics, hyphenation, way, plan, known).run();
    if (diagnostics.count(Severity::error) != errors_before) return std::nullopt;
    return composition;
}

}
