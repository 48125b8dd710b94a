#include "compiler/stages/typeset.hpp"

#include "compiler/base/data_places.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/whole_file_place.hpp"
#include "compiler/stages/composition/hyphenation.hpp"
#include "compiler/stages/composition/shaped_text.hpp"
#include "compiler/stages/fit/side_choice.hpp"
#include "compiler/stages/messages.hpp"
#include "compiler/stages/model/build.hpp"
#include "compiler/stages/pages/reading_order.hpp"
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
    bool in_order = true; // read so by programs that go by places

    // How good it is: whether it fits, whether it is read in order, whether what stands at the
    // right edge does so in one line with what it belongs to, how much room it has.
    auto worth() const {
        const auto* fitted = std::get_if<fit::Fit>(&fit);
        return std::tuple(fitted != nullptr, in_order, fitted && has_fills_in_line(*fitted),
                          fitted ? -fitted->tightness : 0.0);
    }
    bool is_comfortable() const {
        return worth() >= std::tuple(true, true, true, -fit::comfortable);
    }
    std::size_t pages() const { // none if it is too long
        const auto* fitted = std::get_if<fit::Fit>(&fit);
        return fitted ? fitted->pages() : 0;
    }
    // Than one that is named after it.
    bool is_better_than(const Arranged& other) const {
        const bool both = pages() > 0 && other.pages() > 0 && in_order == other.in_order;
        if (both && pages() != other.pages()) return pages() < other.pages();
        return !other.is_comfortable() && worth() >= other.worth();
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

Arranged arranged(composition::Composition composition, const theme::Theme& theme,
                  const model::Settings& settings) {
    auto fitted = fit::fit(composition, theme, settings);
    return {std::move(composition), std::move(fitted)};
}

// Of what does not fit nothing is asked.
bool is_in_order(const Arranged& two) {
    const auto* fitted = std::get_if<fit::Fit>(&two.fit);
    return !fitted ||
           pages::columns_read_whole(two.composition, pages::make_pages(two.composition, *fitted));
}

// With what the page is best off with at the side, at the first width that is read in order. None
// if nothing is to stand there.
std::optional<Arranged> in_two_columns(const fit::SideOffer& offer, const theme::Theme& theme,
                                       const model::Settings& settings, const Compose& compose_by) {
    std::optional<Arranged> best;
    fit::SideChoice choice(offer, theme, settings);
    while (!best || !best->in_order) {
        const auto plan = choice.next();
        if (!plan || !has_side(*plan)) break;
        auto composition = compose_by(&*plan);
        if (!composition) break;
        Arranged next = arranged(*std::move(composition), theme, settings);
        next.in_order = is_in_order(next);
        if (!best || next.is_better_than(*best)) best = std::move(next);
    }
    return best;
}

// Of two columns where that is comfortable, or no tighter than one, and read in order; or as the
// writer asks. None if a character is in no font.
std::optional<Arranged> in_way(const model::Resume& resume, const theme::Theme& theme,
                               const Compose& compose_by) {
    const composition::SidePlan widest = composition::widest_plan(resume, theme);
    const bool may_be_two = has_side(widest) && !is_far_too_long(resume);
    const composition::SidePlan none{std::vector<bool>(widest.at_side.size()), widest.width};
    auto main = compose_by(may_be_two ? &none : nullptr);
    if (!main) return std::nullopt;
    if (!may_be_two) return arranged(*std::move(main), theme, resume.settings);
    const auto side = compose_by(&widest);
    if (!side) return std::nullopt;
    fit::SideOffer offer{*main, *side, widest.at_side, none.at_side};
    for (std::size_t s = 0; s < offer.must.size(); ++s)
        offer.must[s] = resume.sections[s].side;
    auto two = in_two_columns(offer, theme, resume.settings, compose_by);
    if (offer.must != none.at_side || (two && two->is_comfortable())) return two;
    Arranged one = arranged(*std::move(main), theme, resume.settings);
    return two && !one.is_better_than(*two) ? std::move(two) : std::move(one);
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
