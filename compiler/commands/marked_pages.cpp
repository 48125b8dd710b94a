#include "compiler/commands/marked_pages.hpp"

#include "compiler/stages/pdf/pdf.hpp"

#include <stdexcept>
#include <utility>

namespace quoin::commands {

namespace {

// The sheet is as the theme likes it, whatever the page had to give up to be one.
model::Settings sheet_settings(const model::Settings& resume) {
    model::Settings settings;
    settings.paper = resume.paper;
    settings.language = resume.language;
    return settings;
}

void append_pages(pages::Pages& pages, pages::Pages more, std::uint32_t paragraphs) {
    for (pages::Page& page : more.pages) {
        for (pages::PlacedRun& run : page.runs)
            if (!is_artifact(run)) run.paragraph += paragraphs;
        pages.pages.push_back(std::move(page));
    }
}

}

std::string marked_pdf(MarkedPages marked, fonts::Fonts& fonts, std::optional<std::int64_t> time) {
    place_flags(marked.notes, marked.pages, marked.side_margin);
    const model::Settings settings = sheet_settings(marked.settings);
    auto sheet = compose_sheet(marked.sheet, settings, marked.theme, fonts);
    if (!sheet) throw std::runtime_error("the theme's fonts cannot set the list of what is marked");
    sheet->running_head = marked.composition.running_head; // the name, and the page's number
    pages::Pages sheet_pages = pages::make_pages(
        *sheet, fit::preferred_fit(*sheet, marked.theme, settings), marked.pages.pages.size());

    composition::Composition whole = marked.composition;
    const auto paragraphs = static_cast<std::uint32_t>(whole.paragraphs.size());
    append(whole, std::move(*sheet));
    append_pages(marked.pages, std::move(sheet_pages), paragraphs);
    whole.title = std::move(marked.title);
    return pdf::write_pdf(whole, marked.pages, time, marked.notes);
}

}
