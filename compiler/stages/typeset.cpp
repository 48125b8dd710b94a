#include "compiler/stages/typeset.hpp"

#include "compiler/base/data_places.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/whole_file_place.hpp"
#include "compiler/stages/composition/hyphenation.hpp"
#include "compiler/stages/composition/shaped_text.hpp"
#include "compiler/stages/fit/side_choice.hpp"
#include "compiler/stages/messages.hpp"
#include "compiler/stages/model/build.hpp"
#include "compiler/stages/selection/select.hpp"

#include <algorithm>
#include <functional>
#include <tuple>
#include <utility>

namespace quoin::stages {

namespace {

// A mistyped tag would quietly leave out all that is tagged, so it is worth a word.
void warn_of_unused_tags(const model::Resume& resume, const Choices& choices, std::uint32_t file,
                         Diagnostics& diagnostics) {
    const std::vector<std::string> used = selection::tags_of(resume);
    const std::vector<std::string_view> candidates(used.begin(), used.end());
    for (const std::string& tag : choices.tags) {
        if (is_one_of(tag, used)) continue;
        diagnostics.warning(whole_file(file),
                            fill<messages::nothing_tagged>(tag, did_you_mean(tag, candidates)));
    }
}

struct Arranged {
    composition::Composition composition;
    std::variant<fit::Fit, fit::Overflow> fit;

    // How much room it has, the more the better: whether it fits, whether what stands at the right
    // edge does so in one line with what it belongs to, how tight it is.
    auto room() const {
        const auto* fitted = std::get_if<fit::Fit>(&fit);
        return std::tuple(fitted != nullptr, fitted && has_fills_in_line(*fitted),
                          fitted ? -fitted->tightness : 0.0);
    }
    bool is_comfortable() const { return room() >= std::tuple(true, true, -fit::comfortable); }
    std::size_t pages() const { // none if it is too long
        const auto* fitted = std::get_if<fit::Fit>(&fit);
        return fitted ? fitted->pages() : 0;
    }
    // Than one that is named after it.
    bool is_better_than(const Arranged& other) const {
        const bool both = pages() > 0 && other.pages() > 0;
        if (both && pages() != other.pages()) return pages() < other.pages();
        return !other.is_comfortable() && room() >= other.room();
    }

private:
    bool has_fills_in_line(const fit::Fit& fitted) const {
        for (std::size_t p = 0; p < fitted.lines.size(); ++p)
            if (composition.paragraphs[p].fill_run && fitted.lines[p].size() > 1) return false;
        return true;
    }
};

// Of each at least a line: bullets, groups of skills, entries.
std::size_t fewest_lines(const model::Resume& resume) {
    std::size_t lines = 0;
    for (const model::Section& section : resume.sections)
        for (const model::Entry& entry : section.entries)
            lines += 1 + entry.bullets.size() +
                     static_cast<std::size_t>(std::ranges::count(
                         entry.fields, trade::FieldName::group, &model::Field::name));
    return lines;
}

// No page holds so many, in columns of the smallest text either: what serves it best need not be
// looked for.
bool is_far_too_long(const model::Resume& resume) {
    constexpr std::size_t most_on_a_page = 1000;
    const auto pages = static_cast<std::size_t>(std::max(*resume.settings.pages, 1));
    return fewest_lines(resume) > most_on_a_page * pages;
}

bool has_side(const composition::SidePlan& plan) {
    return std::ranges::find(plan.at_side, true) != plan.at_side.end();
}

using Compose =
    std::function<std::optional<composition::Composition>(const composition::SidePlan* plan)>;

// Of two columns, with what the page is best off with at the side, and then of one, unless the
// writer asks for the side; else as it is. None if a character is in no font.
std::vector<composition::Composition>
in_columns(const model::Resume& resume, const theme::Theme& theme, const Compose& compose_by) {
    std::vector<composition::Composition> found;
    const auto add = [&](std::optional<composition::Composition> composition) {
        if (composition) found.push_back(*std::move(composition));
    };
    const composition::SidePlan widest = composition::widest_plan(resume, theme);
    if (!has_side(widest) || is_far_too_long(resume)) {
        add(compose_by(nullptr));
        return found;
    }
    const composition::SidePlan none{std::vector<bool>(widest.at_side.size()), widest.width};
    auto main = compose_by(&none), side = compose_by(&widest);
    if (!main || !side) return found;
    fit::SideOffer offer{*main, *side, widest.at_side, none.at_side};
    for (std::size_t s = 0; s < offer.must.size(); ++s)
        offer.must[s] = resume.sections[s].side;
    const composition::SidePlan best = fit::best_side(offer, theme, resume.settings);
    if (has_side(best)) add(compose_by(&best));
    if (offer.must == none.at_side) add(std::move(main));
    return found;
}

// Of two columns where that is comfortable, or no tighter than one.
std::optional<Arranged> in_way(const model::Resume& resume, const theme::Theme& theme,
                               const Compose& compose_by) {
    std::optional<Arranged> best;
    for (composition::Composition& composition : in_columns(resume, theme, compose_by)) {
        if (best && best->is_comfortable()) break;
        auto fitted = fit::fit(composition, theme, resume.settings);
        Arranged arranged{std::move(composition), std::move(fitted)};
        if (!best || arranged.is_better_than(*best)) best = std::move(arranged);
    }
    return best;
}

// All entries in one of the theme's ways, on as few pages as any takes: the last named that is
// comfortable, else the one with the most room, of equals the first named.
std::optional<Arranged> in_best_way(const model::Resume& resume, const theme::Theme& theme,
                                    const std::filesystem::path& folder, fonts::Fonts& fonts,
                                    Diagnostics& diagnostics) {
    std::optional<Arranged> best;
    composition::ShapedTexts known;
    const bool one_way = is_far_too_long(resume);
    const std::size_t ways = one_way ? 1 : theme.ways.size();
    for (std::size_t way = std::max<std::size_t>(ways, 1); way-- > 0;) {
        auto arranged = in_way(resume, theme, [&](const composition::SidePlan* plan) {
            return compose(resume, theme, fonts, diagnostics,
                           &composition::english_hyphenation(folder), way, plan,
                           one_way ? nullptr : &known);
        });
        if (!arranged) return std::nullopt;
        if (arranged->is_comfortable() && arranged->pages() == 1) return arranged;
        if (!best || arranged->is_better_than(*best)) best = std::move(arranged);
    }
    return best;
}

}

std::optional<model::Resume> selected_resume(Sources& sources, std::uint32_t file,
                                             const Choices& choices,
                                             const std::filesystem::path& folder,
                                             Diagnostics& diagnostics) {
    auto resume = model::build_resume(sources, file, page_words_in(folder), diagnostics);
    if (!resume) return std::nullopt;
    warn_of_unused_tags(*resume, choices, file, diagnostics);
    if (choices.paper) resume->settings.paper.value = *choices.paper;
    return selection::select(*resume, choices.tags);
}

std::optional<theme::Theme> theme_for(const model::Resume& resume, const Choices& choices,
                                      Sources& sources, std::uint32_t file,
                                      const std::filesystem::path& folder,
                                      Diagnostics& diagnostics) {
    const std::filesystem::path themes = themes_in(folder);
    if (choices.theme)
        return theme::read_theme(sources, themes, *choices.theme, "", whole_file(file),
                                 diagnostics);
    const auto& setting = resume.settings.theme;
    return theme::read_theme(sources, themes, setting->empty() ? theme::house_theme : *setting,
                             sources.file(file).path.parent_path(), setting.place, diagnostics);
}

std::optional<Typeset> typeset_in(model::Resume resume, const theme::Theme& theme,
                                  const std::filesystem::path& folder, fonts::Fonts& fonts,
                                  Diagnostics& diagnostics) {
    auto arranged = in_best_way(resume, theme, folder, fonts, diagnostics);
    if (!arranged) return std::nullopt;
    return Typeset{std::move(resume), theme, std::move(arranged->composition),
                   std::move(arranged->fit)};
}

std::optional<Typeset> typeset_selected(model::Resume resume, Sources& sources, std::uint32_t file,
                                        const Choices& choices, const std::filesystem::path& folder,
                                        fonts::Fonts& fonts, Diagnostics& diagnostics) {
    const auto theme = theme_for(resume, choices, sources, file, folder, diagnostics);
    if (!theme) return std::nullopt;
    return typeset_in(std::move(resume), *theme, folder, fonts, diagnostics);
}

std::optional<Typeset> typeset(Sources& sources, std::uint32_t file, const Choices& choices,
                               const std::filesystem::path& folder, fonts::Fonts& fonts,
                               Diagnostics& diagnostics) {
    auto resume = selected_resume(sources, file, choices, folder, diagnostics);
    if (!resume) return std::nullopt;
    return typeset_selected(std::move(*resume), sources, file, choices, folder, fonts, diagnostics);
}

fit::Fit fit_or_draft(const Typeset& typeset) {
    if (const auto* fit = std::get_if<fit::Fit>(&typeset.fit)) return *fit;
    return fit::draft_fit(typeset.composition, typeset.theme, typeset.resume.settings);
}

pages::Pages make_pages(const Typeset& typeset, const fit::Fit& fit) {
    pages::Pages pages = pages::make_pages(typeset.composition, fit);
    if (std::holds_alternative<fit::Overflow>(typeset.fit))
        mark_end(pages, fit.setting, static_cast<std::size_t>(*typeset.resume.settings.pages));
    return pages;
}

}
