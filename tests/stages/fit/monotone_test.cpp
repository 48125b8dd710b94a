// A page with less text is never set smaller or closer than one with more: lines are taken from and
// added to every sample in every theme one by one. Where the number of pages changes, the setting
// starts anew. And what comfort.hpp promises of lines, margins and gaps holds on each of them.
#include "compiler/stages/fit/comfort.hpp"
#include "compiler/stages/fit/fit.hpp"
#include "tests/every_page.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace {

using namespace quoin;

// Never more of anything than `roomier` has.
void check_no_reversal(const fit::PageSetting& at, const fit::PageSetting& roomier) {
    constexpr double rounding = 1e-6;
    CHECK(at.size <= roomier.size + rounding);
    CHECK(at.leading <= roomier.leading + rounding);
    CHECK(at.side_margin <= roomier.side_margin + rounding);
    CHECK(at.top_margin <= roomier.top_margin + rounding);
    CHECK(at.bottom_margin <= roomier.bottom_margin + rounding);
    for (std::size_t i = 0; i < theme::gap_count; ++i)
        CHECK(at.gaps[i] <= roomier.gaps[i] + rounding);
}

void check_promises(const fit::PageSetting& at, const fit::SettingChoices& choices,
                    double characters) {
    constexpr double rounding = 1e-6;
    CHECK(at.top_margin >= 0.75 * at.side_margin - rounding);
    CHECK(at.leading >= fit::least_leading(characters * full_measure(at)) - rounding);
    const bool size_has_given = at.size <= choices.size.preferred - 0.3 + rounding;
    const bool size_is_stiff = choices.size.preferred - choices.size.least < 0.3;
    for (std::size_t i = 0; i < theme::gap_count; ++i)
        if (!size_has_given && !size_is_stiff)
            CHECK(at.gaps[i] >= 0.6 * choices.gaps[i].preferred - rounding);
}

std::optional<std::size_t> last_bullet(const composition::Composition& composition) {
    const auto& all = composition.paragraphs;
    for (std::size_t i = all.size(); i-- > 0;)
        if (all[i].gap == theme::GapName::bullet && all[i].region != composition::Region::side)
            return i;
    return std::nullopt;
}

// From as many lines as still fit down to the sample's own and on, until no bullet is left to take.
std::vector<composition::Composition> fewer_and_fewer(const stages::Typeset& set) {
    std::vector<composition::Composition> all{set.composition};
    composition::Composition more = set.composition;
    const auto bullet = last_bullet(more);
    if (!bullet) return all;
    for (int i = 0; i < 6; ++i) {
        more.paragraphs.insert(more.paragraphs.begin() + static_cast<std::ptrdiff_t>(*bullet),
                               more.paragraphs[*bullet]);
        all.insert(all.begin(), more);
    }
    composition::Composition fewer = set.composition;
    while (const auto last = last_bullet(fewer)) {
        fewer.paragraphs.erase(fewer.paragraphs.begin() + static_cast<std::ptrdiff_t>(*last));
        all.push_back(fewer);
    }
    return all;
}

}

TEST_CASE("less text is never set smaller or closer") {
    int steps = 0, opened = 0;
    every_page::each([&](const stages::Typeset& set, const std::string&) {
        const double characters = fit::characters_in_em(set.composition);
        const auto choices = fit::choices_of(set.theme, set.resume.settings, characters);
        std::optional<fit::Fit> before; // of more text
        for (const composition::Composition& each : fewer_and_fewer(set)) {
            const auto result = fit::fit(each, set.theme, set.resume.settings);
            const auto* at = std::get_if<fit::Fit>(&result);
            if (at == nullptr) continue;
            check_promises(at->setting, choices, characters);
            if (before && before->page_begins.size() == 1 && at->page_begins.size() == 1) {
                check_no_reversal(before->setting, at->setting);
                ++steps;
            }
            opened += at->tightness < 0;
            before = *at;
        }
    });
    CHECK(steps > 500);
    CHECK(opened > 100);
}

TEST_CASE("prose of several lines is set to 88 characters a line at most") {
    every_page::each([](const stages::Typeset& set, const std::string&) {
        const auto* fit = std::get_if<fit::Fit>(&set.fit);
        if (fit == nullptr) return;
        for (std::size_t p = 0; p < fit->lines.size(); ++p)
            for (const lines::Line& line : fit->lines[p])
                if (set.composition.paragraphs[p].style == theme::StyleName::text &&
                    fit->lines[p].size() > 1)
                    CHECK(line.width <= 88 * set.composition.character + 1e-9);
    });
}
