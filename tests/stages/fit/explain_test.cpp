// The proof of a fit, to the letter, and each of its statements held against the fit itself.
#include "compiler/commands/set/explain_report.hpp"

#include "compiler/stages/fit/column.hpp"
#include "compiler/stages/fit/explain.hpp"
#include "compiler/stages/fit/page_breaks.hpp"
#include "compiler/stages/lines/paragraph_lines.hpp"
#include "tests/stages/fit/fit_reference.hpp"
#include "tests/synthetic.hpp"

#include <doctest/doctest.h>

#include <string>
#include <utility>
#include <variant>

namespace explain_test {

using quoin::composition::Composition;
using quoin::fit::Explanation;
using quoin::fit::Fit;
using quoin::fit::Quantity;
using quoin::synthetic::add_paragraph;
using quoin::synthetic::resume;
using quoin::synthetic::theme;
using quoin::theme::GapName;

namespace {

quoin::model::Settings settings_for(int pages) {
    quoin::model::Settings settings;
    settings.pages.value = pages;
    return settings;
}

Explanation explained(const Composition& composition, const quoin::theme::Theme& theme,
                      const quoin::model::Settings& settings) {
    const Fit fit = std::get<Fit>(quoin::fit::fit(composition, theme, settings));
    return quoin::fit::explain(composition, theme, settings, fit);
}

std::string reported(const Explanation& explanation, const Composition& composition) {
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    const auto file = sources.add("draft.resume", "name: A\n", diagnostics);
    return quoin::commands::explain_report(explanation, composition, sources, *file);
}

// Every quantity fixed but one.
quoin::theme::Theme stiff_theme() {
    quoin::theme::Theme stiff = theme();
    for (quoin::theme::Preference* each :
         {&stiff.size, &stiff.side_margin, &stiff.top_margin, &stiff.bottom_margin, &stiff.leading})
        *each = {each->preferred, each->preferred, each->preferred};
    for (quoin::theme::Preference& gap : stiff.gaps)
        gap = {gap.preferred, gap.preferred, gap.preferred};
    return stiff;
}

Composition lines_of_text(int lines) {
    Composition composition;
    for (int i = 0; i < lines; ++i)
        add_paragraph(composition, "nnnn nnnn", i == 0 ? GapName::none : GapName::line);
    return composition;
}

}

TEST_CASE("all as preferred: room left, nothing binds") {
    const Composition composition = lines_of_text(10);
    quoin::theme::Theme stiff = stiff_theme();
    const Explanation at = explained(composition, stiff, settings_for(1));
    CHECK(at.pages == 1);
    CHECK_FALSE(at.height_binds);
    CHECK_FALSE(at.next_better);
    CHECK(at.preferred_missing == 0);
    // 792 − 57 − 60, less an ascent of 0.7, a descent of 0.2, and nine steps of 1.26 + 0.05 em
    CHECK(at.room == doctest::Approx(675 - 11 * (0.9 + 9 * 1.31)));
    CHECK(reported(at, composition) == "draft.resume: 1 page, set as the theme prefers it\n"
                                       "                 set      preferred   allowed\n"
                                       "  size           11       11          11..11 pt\n"
                                       "  leading        1.26     1.26        1.26..1.26\n"
                                       "  side margins   0.889    0.889       0.889..0.889 in\n"
                                       "  top margin     0.792    0.792       0.792..0.792 in\n"
                                       "  bottom margin  0.833    0.833       0.833..0.833 in\n"
                                       "  gaps           100 %    100 %\n"
                                       "  room left at the foot: 535.4 pt (38.6 lines)\n");
}

TEST_CASE("the leading alone gives: what it lacks is worked by hand") {
    const Composition composition = lines_of_text(48);
    quoin::theme::Theme stiff = stiff_theme();
    stiff.leading = theme().leading;
    const Explanation at = explained(composition, stiff, settings_for(1));
    // 47 steps of leading + 0.05 em and 0.9 em fill 675 pt at 11 pt
    const double leading = (675.0 / 11 - 0.9) / 47 - 0.05;
    const auto which = static_cast<std::size_t>(Quantity::leading);
    CHECK(at.chosen[which].value == doctest::Approx(leading));
    CHECK(at.height_binds);
    CHECK_FALSE(at.measure_binds);
    CHECK(at.room < 0.001);
    REQUIRE(at.next_better);
    CHECK(at.next_better->quantity == Quantity::leading);
    CHECK(at.next_better->value == doctest::Approx(1.24));
    CHECK(at.next_better->missing == doctest::Approx((1.24 - leading) * 47 * 11).epsilon(1e-4));
    CHECK(at.preferred_missing == doctest::Approx((1.26 - leading) * 47 * 11).epsilon(1e-4));
    CHECK(reported(at, composition) ==
          "draft.resume: 1 page, the most comfortable setting that holds it\n"
          "                 set      preferred   allowed\n"
          "  size           11       11          11..11 pt\n"
          "  leading        1.236    1.26        1.15..1.32\n"
          "  side margins   0.889    0.889       0.889..0.889 in\n"
          "  top margin     0.792    0.792       0.792..0.792 in\n"
          "  bottom margin  0.833    0.833       0.833..0.833 in\n"
          "  gaps           100 %    100 %\n"
          "  what binds: the height of the page\n"
          "  a leading of 1.24, all else the same, lacks 1.8 pt (0.1 lines) of height\n"
          "  the preferred setting lacks 12.2 pt (0.9 lines) of height\n"
          "  room left at the foot: none\n");
}

TEST_CASE("what the report says is so: the step does not fit, and with what it lacks it does") {
    int tight = 0;
    for (unsigned seed = 0; seed < 40; ++seed) {
        CAPTURE(seed);
        const int pages = seed % 5 == 0 ? 2 : 1;
        const Composition composition = resume(seed, pages == 2 ? 7 : 3 + seed % 2, 5 + seed % 3);
        const auto result = quoin::fit::fit(composition, theme(), settings_for(pages));
        if (!std::holds_alternative<Fit>(result)) continue;
        const Fit& fit = std::get<Fit>(result);
        const Explanation at = quoin::fit::explain(composition, theme(), settings_for(pages), fit);
        CHECK(at.pages == fit.page_begins.size());
        if (at.preferred_missing == 0) continue;
        ++tight;
        CHECK((at.height_binds || at.measure_binds));
        if (!at.next_better) { // where lines get longer at once, any one step may be free
            CHECK((at.measure_binds || at.pages > 1));
            continue;
        }
        CHECK(at.next_better->missing > 0);
        if (at.next_better->quantity != Quantity::size || at.pages > 1) continue;
        quoin::fit::PageSetting step = fit.setting;
        step.size = at.next_better->value;
        CHECK(step.size > fit.setting.size);
        CHECK(step.size <= fit.setting.size + 0.1 + 1e-9);
        for (std::size_t i = 0; i < quoin::theme::gap_count; ++i)
            step.gaps[i] = std::min(step.gaps[i], theme().gaps[i].preferred);
        const auto lines = quoin::fit_reference::LineCounts(composition).at(step);
        CHECK(-quoin::fit_reference::left_at_foot(lines, 0, lines.size(), step) ==
              doctest::Approx(at.next_better->missing).epsilon(1e-5));
    }
    CHECK(tight > 8);
}

TEST_CASE("a last line of one short word is named with its place") {
    Composition composition = lines_of_text(2);
    const std::string full(145, 'n'); // 43.5 em of 44
    add_paragraph(composition, full + " nn", GapName::line);
    composition.paragraphs.back().place = {0, 1, 7, 1};
    add_paragraph(composition, "nn nn", GapName::line); // of one line
    const Explanation at = explained(composition, stiff_theme(), settings_for(1));
    REQUIRE(at.lone_words.size() == 1);
    CHECK(at.lone_words[0].paragraph == 2);
    const std::string report = reported(at, composition);
    CHECK(report.ends_with("\n  draft.resume:1: the last line is one short word, 'nn'\n"));
}

TEST_CASE("a last page that is too empty is a warning") {
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    const auto file = sources.add("draft.resume", "name: A\n", diagnostics);
    struct Case {
        int lines;
        std::string text;
    };
    const Case cases[] = {
        {20, ""},
        {36, "the second page is only 11 % full; fill it to a third at least, or cut and set "
             "'pages: 1'"},
        {50, ""},
    };
    for (const Case& each : cases) {
        const int lines = each.lines;
        CAPTURE(lines);
        quoin::stages::Typeset typeset;
        typeset.theme = stiff_theme();
        typeset.resume.settings = settings_for(3);
        for (int i = 0; i < lines; ++i) // each an entry: free to move
            add_paragraph(typeset.composition, "nnnn", i == 0 ? GapName::none : GapName::entry);
        // what stands first holds together, so that the break cannot move up
        for (int i = 0; i + 1 < 32 && i + 1 < lines; ++i)
            typeset.composition.paragraphs[static_cast<std::size_t>(i)].keep_with_next = true;
        typeset.fit = quoin::fit::fit(typeset.composition, typeset.theme, typeset.resume.settings);
        quoin::Diagnostics found;
        quoin::commands::warn_of_thin_page(typeset, std::get<Fit>(typeset.fit), *file, found);
        REQUIRE(found.all().size() == (each.text.empty() ? 0 : 1));
        if (!each.text.empty()) CHECK(found.all()[0].text == each.text);
    }
}

} // namespace explain_test
