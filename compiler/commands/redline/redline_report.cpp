#include "compiler/commands/redline/redline_report.hpp"

#include "compiler/stages/fit/explain.hpp"

#include <fmt/format.h>

#include <cmath>
#include <utility>

namespace quoin::commands {

std::optional<PageState> page_state(const Proofread& one) {
    if (!one.typeset) return std::nullopt;
    const stages::Typeset& typeset = *one.typeset;
    PageState state;
    state.allowed = static_cast<std::size_t>(*typeset.resume.settings.pages);
    const fit::Fit fit = fit_or_draft(typeset);
    const fit::Explanation explained =
        explain(typeset.composition, typeset.theme, typeset.resume.settings, fit);
    state.pages = explained.pages;
    state.size = fit.setting.size;
    if (const auto* overflow = std::get_if<fit::Overflow>(&typeset.fit))
        state.lines_over = overflow->lines_too_many;
    else
        state.lines_free = std::floor(10 * explained.room / explained.line + 0.01) / 10;
    return state;
}

std::string page_state_words(const std::optional<PageState>& page) {
    if (!page) return "no page can be made";
    if (page->lines_over > 0)
        return fmt::format("{} {} too long for {} {}", page->lines_over,
                           page->lines_over == 1 ? "line" : "lines", page->allowed,
                           page->allowed == 1 ? "page" : "pages");
    return fmt::format("{} {} at {:.1f} pt, {}", page->pages, page->pages == 1 ? "page" : "pages",
                       page->size,
                       page->lines_free == 0 ? "no line free"
                                             : fmt::format("{:.1f} lines free", page->lines_free));
}

Redline redline_of(ComparedDrafts drafts) {
    Redline redline;
    redline.drafts = std::move(drafts);
    if (!redline.compared()) return redline;
    const Proofread& before = *redline.drafts.before.read;
    const Proofread& after = *redline.drafts.after.read;
    redline.alignment = redlining::align(*before.resume, *after.resume);
    redline.changes = redlining::redline(redline.alignment);
    redline.findings = finding_changes(redline.alignment, before.proof, after.proof);
    return redline;
}

}
