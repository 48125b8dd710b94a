// The order of the whole: heading, sections, running head.
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

Composer::Composer(const model::Resume& resume, const theme::Theme& theme, fonts::Fonts& fonts,
                   Diagnostics& diagnostics, const Hyphenation* hyphenation, std::size_t way)
    : resume_(resume), theme_(theme), way_(way),
      shaper_(theme, fonts, resume.settings, diagnostics,
              divides_words(resume.settings, theme) ? hyphenation : nullptr),
      name_(name_in_heading(resume)) {}

Composition Composer::run() {
    add_element(StructureType::document, 0);
    out_.character = character_width();
    add_heading();
    const bool two_columns = std::ranges::any_of(
        resume_.sections, [this](const model::Section& section) { return is_side(section); });
    for (const bool side : {false, true}) { // one whole column after the other
        region_ = !two_columns ? Region::whole : side ? Region::side : Region::main;
        for (const model::Section& section : resume_.sections)
            if (is_side(section) == side) add_section(section);
    }
    add_running_head();
    out_.title = name_ + ", " + theme_.words.resume;
    out_.author = name_;
    out_.language = *resume_.settings.language;
    return std::move(out_);
}

std::optional<Composition> compose(const model::Resume& resume, const theme::Theme& theme,
                                   fonts::Fonts& fonts, Diagnostics& diagnostics,
                                   const Hyphenation* hyphenation, std::size_t way) {
    const std::size_t errors_before = diagnostics.count(Severity::error);
    Composition composition = Composer(resume, theme, fonts, diagnostics, hyphenation, way).run();
    if (diagnostics.count(Severity::error) != errors_before) return std::nullopt;
    return composition;
}

}
