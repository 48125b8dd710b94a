#include "compiler/stages/page_state.hpp"

#include "compiler/stages/fit/explain.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <variant>

namespace quoin::stages {

namespace {

std::string with_count(std::size_t count, std::string_view what) {
    return fmt::format("{} {}{}", count, what, count == 1 ? "" : "s");
}

// That the foot of the last page has room for.
std::size_t free_lines(const Typeset& typeset, const fit::Fit& fit) {
    constexpr double trace = 0.01; // of a line
    const std::vector<double> fullness = fit::page_fullness(typeset.composition, fit);
    const fit::PageSetting& setting = fit.setting;
    const double room = setting.paper_height - setting.top_margin - setting.bottom_margin;
    const double left = fullness.empty() ? room : (1 - fullness.back()) * room;
    return static_cast<std::size_t>(std::max(0.0, left / (setting.size * setting.leading) + trace));
}

}

std::string page_state(const Typeset& typeset) {
    if (const auto* fit = std::get_if<fit::Fit>(&typeset.fit))
        return fmt::format("{}, {:.3g} pt, {} free", with_count(fit->pages(), "page"),
                           fit->setting.size, with_count(free_lines(typeset, *fit), "line"));
    const auto& overflow = std::get<fit::Overflow>(typeset.fit);
    return fmt::format(
        "{} too long for {}", with_count(static_cast<std::size_t>(overflow.lines_too_many), "line"),
        with_count(static_cast<std::size_t>(*typeset.resume.settings.pages), "page"));
}

}
