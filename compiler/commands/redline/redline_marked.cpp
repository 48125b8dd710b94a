// The marked redline: the new page with what is gone in its place, for an adviser to hand over.
#include "compiler/commands/redline/redline_report.hpp"

#include "compiler/advice/walk.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/commands/marked_pages.hpp"
#include "compiler/redlining/marked_resume.hpp"
#include "compiler/stages/composition/printed_words.hpp"
#include "compiler/stages/pages/text_areas.hpp"

#include <fmt/format.h>

#include <utility>

namespace quoin::commands {

namespace {

// White figures stand on it at 7 to 1 and more.
constexpr theme::Colour redline_flag{0x35, 0x3f, 0x6e};

// As places of the page that shows both have it; line 0: it is not printed.
Place place_on_page(const redlining::Change& change, std::uint32_t old_files) {
    if (change.new_place.line != 0) return change.new_place;
    Place place = change.old_place;
    place.file += old_files;
    return place;
}

std::optional<pages::Note> redline_note(const redlining::Change& change, std::size_t number,
                                        const Place& place,
                                        const composition::Composition& composition,
                                        const pages::TextAreas& text_areas) {
    if (place.line == 0) return std::nullopt;
    for (const composition::TextBytes& words : composition::printed_words(place, composition)) {
        const auto areas = text_areas.of(words.paragraph, words.begin, words.end);
        if (areas.empty()) continue;
        pages::Note note;
        note.page = areas.front().page;
        note.element = composition.paragraphs[words.paragraph].element;
        note.number = std::to_string(number);
        note.subject = name_of(change.kind);
        note.full = fmt::format("{}, {}", number, change_sentence(change));
        note.brief = note.full;
        note.flag_colour = redline_flag;
        note.beside = areas.front();
        return note;
    }
    return std::nullopt;
}

std::vector<pages::Note> redline_notes(const Redline& redline, std::uint32_t old_files,
                                       const composition::Composition& composition,
                                       const pages::Pages& pages) {
    const pages::TextAreas text_areas(composition, pages);
    std::vector<pages::Note> notes;
    for (std::size_t number = 1; const redlining::Change& change : redline.changes) {
        if (auto note = redline_note(change, number, place_on_page(change, old_files), composition,
                                     text_areas))
            notes.push_back(*std::move(note));
        ++number;
    }
    return notes;
}

void add_finding_remarks(composition::RemarkGroup& group,
                         const std::vector<const advice::Finding*>& findings,
                         std::string_view how) {
    for (const advice::Finding* finding : findings)
        group.remarks.push_back({"–",
                                 fmt::format("{}, {}:", how, finding->check),
                                 capitalised(finding->text) + '.',
                                 {}});
}

composition::Sheet redline_sheet(const Redline& redline) {
    composition::Sheet sheet{"Redline", {}, {}};
    const std::size_t count = redline.changes.size();
    sheet.opening.push_back(
        (count == 0 ? "No changes" : capitalised(advice::counted(count, "change", "changes"))) +
        " since the older draft. What is new is underlined, what is gone is struck through; each "
        "number is that of a flag in the margin.");
    for (std::size_t number = 1; const redlining::Change& change : redline.changes) {
        std::string heading = headed_by(change);
        if (sheet.groups.empty() || sheet.groups.back().title != heading)
            sheet.groups.push_back({std::move(heading), {}});
        sheet.groups.back().remarks.push_back(
            {std::to_string(number++), {}, capitalised(change_sentence(change)) + '.', {}});
    }
    composition::RemarkGroup findings{"Findings", {}};
    add_finding_remarks(findings, redline.findings.mended, "Mended");
    add_finding_remarks(findings, redline.findings.fresh, "New");
    sheet.groups.push_back(std::move(findings));
    sheet.groups.push_back(
        {"Page",
         {{"–", "Before:", page_state_words(page_state(*redline.drafts.before.read)) + '.', {}},
          {"–", "Now:", page_state_words(page_state(*redline.drafts.after.read)) + '.', {}}}});
    return sheet;
}

// On as few pages as hold both, or, where that is more than are allowed, as the theme likes it.
fit::Fit fit_of_both(const stages::Typeset& both) {
    if (const auto* fit = std::get_if<fit::Fit>(&both.fit)) return *fit;
    return fit::preferred_fit(both.composition, both.theme, both.resume.settings);
}

}

std::optional<std::string> marked_redline(const Redline& redline, const ProofTools& tools,
                                          std::optional<std::int64_t> time) {
    const Proofread& after = *redline.drafts.after.read;
    if (!redline.compared() || !after.typeset) return std::nullopt;
    const auto old_files = static_cast<std::uint32_t>(after.sources.size());
    Diagnostics at_both; // at places of which no one source has all
    const auto both = stages::typeset_in(redlining::marked_resume(redline.alignment, old_files),
                                         after.typeset->theme, tools.data, tools.fonts, at_both);
    if (!both) return std::nullopt;
    const fit::Fit fit = fit_of_both(*both);
    pages::Pages pages = pages::make_pages(both->composition, fit);
    std::vector<pages::Note> notes = redline_notes(redline, old_files, both->composition, pages);
    return marked_pdf({both->composition, both->theme, both->resume.settings, std::move(pages),
                       std::move(notes), fit.setting.side_margin, redline_sheet(redline),
                       after.typeset->composition.title + ", redline"},
                      tools.fonts, time);
}

}
