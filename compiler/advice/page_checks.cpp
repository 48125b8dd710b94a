// Checks of the page as `set` makes it: its lines, its room, its look.
#include "compiler/advice/check.hpp"
#include "compiler/advice/first_look.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/little_words.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/stages/fit/shorten.hpp"
#include "compiler/stages/lines/paragraph_lines.hpp"
#include "compiler/stages/pages/pages.hpp"
#include "compiler/stages/theme/values.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <set>

namespace quoin::advice {

namespace {

constexpr double hair = 0.005; // pt: what rounding may add

const fit::Fit* fit_of(const ProofContext& context) {
    return context.typeset ? std::get_if<fit::Fit>(&context.typeset->fit) : nullptr;
}

Place name_place(const ProofContext& context) {
    const model::Field* name = context.resume.find(trade::FieldName::name);
    return name ? name->place : Place{};
}

bool is_read_through(theme::StyleName style) {
    return style == theme::StyleName::text || style == theme::StyleName::line ||
           style == theme::StyleName::bullet || style == theme::StyleName::contact ||
           style == theme::StyleName::title;
}

bool is_within(double value, double least, double most) {
    return value >= least - hair && value <= most + hair;
}

// Of the running text as a whole, by bounds that an office has narrowed.
void size_of_office(const ProofContext& context, const fit::Fit& fit,
                    std::vector<Finding>& findings) {
    const auto [least, most] = std::pair(context.limits().least_size, context.limits().most_size);
    if (is_within(fit.setting.size, least, most)) return;
    Finding& finding =
        report<messages::size_of_office>(findings, name_place(context), fit.setting.size);
    finding.suggestion = fill<messages::ask_for>(fmt::format("size: {:.3g}..{:.3g}", least, most));
    judged_by(context, &office::Limits::least_size, finding);
}

void text_size(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr double least = trade::size_bounds.least, most = trade::size_bounds.most;
    const fit::Fit* fit = fit_of(context);
    if (!fit) return;
    if (context.rules().set_by(&office::Limits::least_size))
        size_of_office(context, *fit, findings);
    std::set<theme::StyleName> told;
    for (const composition::Paragraph& paragraph : context.typeset->composition.paragraphs) {
        const double size = fit->setting.size * paragraph.size;
        if (!is_read_through(paragraph.style) || told.contains(paragraph.style)) continue;
        if (is_within(size, least, most)) continue;
        told.insert(paragraph.style);
        report<messages::text_size>(findings, paragraph.place, size);
    }
}

void margin_width(const ProofContext& context, std::vector<Finding>& findings) {
    const auto [least, most] =
        std::pair(context.limits().least_margin, context.limits().most_margin);
    const fit::Fit* fit = fit_of(context);
    if (!fit) return;
    const fit::PageSetting& setting = fit->setting;
    for (const double margin : {setting.side_margin, setting.top_margin, setting.bottom_margin}) {
        const double inches = margin / theme::points_per_inch;
        if (is_within(margin, least * theme::points_per_inch, most * theme::points_per_inch))
            continue;
        Finding& finding = report<messages::margin_width>(findings, name_place(context), inches);
        if (context.rules().set_by(&office::Limits::least_margin))
            finding.suggestion =
                fill<messages::ask_for>(fmt::format("margins: {:.3g}..{:.3g}", least, most));
        judged_by(context, &office::Limits::least_margin, finding);
        return;
    }
}

std::string how_many_lines(int lines) {
    return counted(static_cast<std::size_t>(lines), "line", "lines");
}

void page_count(const ProofContext& context, std::vector<Finding>& findings) {
    if (!context.typeset) return;
    const model::Settings& settings = context.resume.settings;
    const std::string allowed = counted(static_cast<std::size_t>(*settings.pages), "page", "pages");
    if (const auto* overflow = std::get_if<fit::Overflow>(&context.typeset->fit)) {
        report<messages::too_long>(findings, name_place(context),
                                   how_many_lines(overflow->lines_too_many), allowed);
        return;
    }
    const auto most = static_cast<std::size_t>(context.limits().most_pages);
    if (most == 0 && !is_student(*settings.stage)) return;
    const std::size_t pages =
        pages::make_pages(context.typeset->composition, *fit_of(context)).pages.size();
    const Place place = settings.pages.stated() ? settings.pages.place : name_place(context);
    const std::string taken = counted(pages, "page", "pages");
    if (most == 0 && pages > 1) report<messages::many_pages>(findings, place, taken);
    if (most == 0 || pages <= most) return;
    Finding& finding = report<messages::pages_of_office>(findings, place, taken);
    finding.suggestion = fill<messages::bring_to>(counted(most, "page", "pages"));
    judged_by(context, &office::Limits::most_pages, finding);
}

void page_fill(const ProofContext& context, std::vector<Finding>& findings) {
    const double enough = context.limits().page_filled / 100;
    const fit::Fit* fit = fit_of(context);
    if (!fit) return;
    const fit::Fit preferred =
        fit::preferred_fit(context.typeset->composition, context.typeset->theme,
                           context.resume.settings); // not opened into the room there is
    const pages::Pages pages = pages::make_pages(context.typeset->composition, preferred);
    if (pages.pages.size() != 1 || pages.pages.front().runs.empty()) return;
    double lowest = pages.height;
    for (const pages::PlacedRun& run : pages.pages.front().runs)
        lowest = std::min(lowest, run.y);
    const fit::PageSetting& setting = preferred.setting;
    const double room = pages.height - setting.top_margin - setting.bottom_margin;
    const double filled = (pages.height - setting.top_margin - lowest) / room;
    if (filled >= enough) return;
    judged_by(context, &office::Limits::page_filled,
              report<messages::page_fill>(findings, name_place(context), std::floor(filled * 100)));
}

void first_look(const ProofContext& context, std::vector<Finding>& findings) {
    const fit::Fit* fit = fit_of(context);
    if (!fit) return;
    const composition::Composition& composition = context.typeset->composition;
    const auto looks = glance::looks(composition, make_pages(*context.typeset, *fit));
    std::vector<std::string_view> missed;
    for (const Landmark& landmark : landmarks(context.resume, looks, composition))
        if (landmark.at != glance::never && landmark.at > context.limits().first_look)
            missed.push_back(landmark.what);
    if (missed.empty()) return;
    judged_by(context, &office::Limits::first_look,
              report<messages::not_at_a_glance>(findings, name_place(context),
                                                context.limits().first_look,
                                                joined(missed, " and ")));
}

// --- lines

struct SetBullet {
    const composition::Paragraph& paragraph;
    const std::vector<lines::Line>& lines;
};

void visit_set_bullets(const ProofContext& context,
                       const std::function<void(const SetBullet&)>& visit) {
    const fit::Fit* fit = fit_of(context);
    if (!fit) return;
    const auto& paragraphs = context.typeset->composition.paragraphs;
    for (std::size_t i = 0; i < paragraphs.size() && i < fit->lines.size(); ++i)
        if (paragraphs[i].style == theme::StyleName::bullet) visit({paragraphs[i], fit->lines[i]});
}

// From the beginning of one line to the paragraph's end.
std::string text_from(const SetBullet& bullet, std::size_t line) {
    const lines::Line::Position begin = bullet.lines[line].begin;
    std::string text;
    for (std::size_t r = begin.run; r < bullet.paragraph.runs.size(); ++r) {
        const composition::Run& run = bullet.paragraph.runs[r];
        std::size_t from = 0;
        if (r == begin.run)
            from = begin.glyph < run.glyphs.size() ? run.glyphs[begin.glyph].text_begin
                                                   : run.text.size();
        text += run.text.substr(std::min(from, run.text.size()));
    }
    text.erase(0, std::min(text.find_first_not_of(' '), text.size()));
    return text;
}

constexpr std::size_t short_word = 8; // characters, with its space

// Words that a bullet goes well without.
bool is_little_word(std::string_view word) {
    return is_one_of(word, List::little_words);
}

// Without these the rest is no English.
bool is_needed_word(std::string_view word) {
    return is_one_of(word, List::needed_words);
}

struct WordsOut {
    fit::TextRange range;
    std::string words;
    bool is_little = false; // it can go; whether another can is the writer's to know
};

// Short words, the little ones first and then by length; an article that is needed is none.
std::vector<WordsOut> short_cuts(const composition::Paragraph& paragraph) {
    const std::string text = fit::text_of(paragraph);
    const auto all = words_in(text);
    std::vector<WordsOut> cuts;
    for (const fit::TextRange range : fit::removable_runs(paragraph)) {
        std::string words = text.substr(range.begin, range.end - range.begin);
        const std::size_t signs = std::min(words.find_first_not_of(" ,;"), words.size());
        words.erase(0, signs);
        if (words.empty() || characters_in(words) >= short_word || is_needed_word(words)) continue;
        const auto word = std::ranges::find(all, range.begin + signs, &WordAt::offset);
        const bool little = word != all.end() && is_little_word(words);
        if (little && is_needed_article(all, static_cast<std::size_t>(word - all.begin())))
            continue;
        cuts.push_back({range, std::move(words), little});
    }
    std::ranges::stable_sort(cuts, {}, [](const WordsOut& cut) {
        return std::pair(!cut.is_little, characters_in(cut.words));
    });
    return cuts;
}

// The first cut that saves a line; none if it takes more than a short word or two.
std::optional<WordsOut> line_saving_cut(const SetBullet& bullet, double measure) {
    for (WordsOut& cut : short_cuts(bullet.paragraph)) {
        const composition::Paragraph shorter = without(bullet.paragraph, cut.range);
        if (lines::MeasuredParagraph(shorter, measure).line_count(measure) <
            static_cast<int>(bullet.lines.size()))
            return std::move(cut);
    }
    return std::nullopt;
}

// The line of the source that the bullet begins in, up to its end; its paragraph's place ends at
// the first mark or quotation.
Place first_line_of(const SetBullet& bullet, const ProofContext& context) {
    Place place = bullet.paragraph.place;
    if (place.line == 0 || place.column == 0 || place.file >= context.sources.size()) return place;
    std::string_view line = context.sources.file(place.file).line(place.line);
    line.remove_suffix(line.size() - (line.find_last_not_of(" \t") + 1));
    const auto before = static_cast<std::size_t>(place.column) - 1;
    if (line.size() > before) place.length = static_cast<std::uint32_t>(line.size() - before);
    return place;
}

// The line breaker never leaves a short word alone where it can bring others down beside it, so
// what is looked at is what the word costs, not where it stands; on a page with room to spare it
// costs nothing.
void one_word_over(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::size_t most_lines = 8; // beyond that, cutting a word is no help
    constexpr std::size_t most_told = 2;  // by then it is seen how
    constexpr double needed = 0.5;        // tightness, from which a page is helped by a line
    const fit::Fit* fit = fit_of(context);
    if (!fit || fit->tightness < 0) return;
    std::size_t told = 0;
    visit_set_bullets(context, [&](const SetBullet& bullet) {
        if (bullet.lines.size() < 2 || bullet.lines.size() > most_lines) return;
        const auto cut = line_saving_cut(bullet, full_measure(fit->setting));
        if (!cut || (!cut->is_little && fit->tightness < needed) || told == most_told) return;
        ++told;
        const std::size_t letters = characters_in(cut->words);
        const std::string last = text_from(bullet, bullet.lines.size() - 1);
        report<messages::one_word_over>(
            findings, first_line_of(bullet, context), counted(letters, "letter", "letters"),
            counted(bullet.lines.size() - 1, "line", "lines"), in_quotes(last))
            .suggestion = cut->is_little ? fill<messages::cut_word>(in_quotes(cut->words))
                                         : fill<messages::cut_some_word>();
    });
}

// What is judged is the bullet's length: in a column of two, what would take two lines across the
// page is not too long.
void two_lines(const ProofContext& context, std::vector<Finding>& findings) {
    const auto most = static_cast<std::size_t>(context.limits().bullet_lines);
    const fit::Fit* fit = fit_of(context);
    visit_set_bullets(context, [&](const SetBullet& bullet) {
        if (bullet.lines.size() <= most || bullet.paragraph.region == composition::Region::side)
            return;
        const double measure = full_measure(fit->setting);
        composition::Paragraph across = bullet.paragraph;
        across.span = {};
        if (lines::MeasuredParagraph(across, measure).line_count(measure) <= static_cast<int>(most))
            return;
        const std::string beyond = text_from(bullet, most);
        const std::size_t words = word_count(beyond);
        Finding& finding =
            report<messages::many_lines>(findings, first_line_of(bullet, context),
                                         counted(bullet.lines.size(), "line", "lines"));
        finding.suggestion = fill<messages::shorten>(
            counted(words, "word fewer makes", "words fewer make"), in_words(most));
        judged_by(context, &office::Limits::bullet_lines, finding);
    });
}

// --- look

void emphasis(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::size_t least_words = 40;
    const double most = context.limits().emphasis / 100;
    std::size_t words = 0, marked = 0;
    Place first;
    for (const TextInResume& part : context.texts) {
        if (!part.bullet && !(part.field && part.field->name == trade::FieldName::text)) continue;
        for (const model::Span& span : part.text.spans) {
            const std::size_t count = words_in(span.text).size();
            words += count;
            if (span.marks == model::Marks{} || count == 0) continue;
            if (marked == 0) first = span.place;
            marked += count;
        }
    }
    if (words < least_words || static_cast<double>(marked) <= most * static_cast<double>(words))
        return;
    judged_by(context, &office::Limits::emphasis,
              report<messages::emphasis>(findings, first, marked, words));
}

void two_columns(const ProofContext& context, std::vector<Finding>& findings) {
    if (!context.typeset || !context.typeset->theme.two_columns) return;
    const auto& paragraphs = context.typeset->composition.paragraphs;
    const auto side =
        std::ranges::find(paragraphs, composition::Region::side, &composition::Paragraph::region);
    if (side == paragraphs.end()) return;
    const auto& theme = context.resume.settings.theme;
    report<messages::two_columns>(findings, theme.stated() ? theme.place : side->place);
}

void contrast(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr double for_large = 3, for_text = 4.5, large = 18, large_bold = 14;
    const fit::Fit* fit = fit_of(context);
    if (!fit) return;
    std::set<theme::StyleName> told;
    for (const composition::Paragraph& paragraph : context.typeset->composition.paragraphs) {
        const bool bold = context.typeset->theme.style(paragraph.style).bold;
        for (const composition::Run& run : paragraph.runs) {
            const double size = fit->setting.size * run.size;
            const bool is_large = size >= (bold ? large_bold : large);
            const double ratio = contrast_on_white(run.colour);
            const double needed = is_large ? for_large : for_text;
            if (ratio >= needed || told.contains(paragraph.style)) continue;
            told.insert(paragraph.style);
            report<messages::contrast>(findings, paragraph.place, run.colour.red, run.colour.green,
                                       run.colour.blue, ratio)
                .suggestion = fill<messages::contrast_needed>(needed);
        }
    }
}

constexpr std::array page_table{
    Check{"text-size", Weight::must, "page",
          "Running text is set in 10 to 12 pt. A theme that goes under 10 pt is refused before; a "
          "style of it may still go over 12 pt.",
          "Smaller is skipped, larger looks like a page that had to be filled.", "common practice",
          "a theme that sets bullets at 1.3 of its 10.8 pt", "bullets at 10.8 pt", text_size},
    Check{"margins", Weight::must, "page",
          "Margins are 0.5 to 1 in. A setting or theme beyond that is refused before, and this is "
          "the second guard, on the page as it was made.",
          "Narrower ones are cut by some printers, wider ones waste the page.", "common practice",
          "a page made with margins of 0.3 in", "margins: 0.75", margin_width},
    Check{"length", Weight::must, "page",
          "The résumé fits its pages; for a student or recent graduate that is one, applications "
          "to graduate school aside.",
          "A reader gives it seven to ten seconds, and the second page gets none of them.",
          "common practice", "pages: 2, for an undergraduate", "pages: 1", page_count},
    Check{"page-fill", Weight::consider, "page", "A single page is at least two thirds full.",
          "An empty foot asks what else there is.", "common practice", "a page that ends half way",
          "a page that is full", page_fill},
    Check{"first-look", Weight::consider, "page",
          "By a model of how a page is taken in ('quoin glance' shows it), ten seconds reach the "
          "name, the latest role with employer and dates, and school, degree and its date.",
          "A first look decides whether there is a second one.",
          "rate of skimming: Carver, Journal of Reading 36, 1992, from memory; the rest common "
          "practice",
          "the degree far down, behind long titles of six jobs", "the degree high on the page",
          first_look, "The model is a guess at a usual reader, and promises nothing."},
    Check{
        "one-word-over", Weight::consider, "page",
        "No bullet takes a line more for one short word, in the layout that 'set' makes, on a page "
        "that needs the line.",
        "A line is room for another fact, and a word or two can nearly always go.",
        "common practice", "a bullet that would be on one line without 'daily'",
        "the same bullet on one line", one_word_over},
    Check{"two-lines", Weight::should, "page",
          "A bullet takes two lines at most, in the layout that 'set' makes; in a theme of two "
          "columns, two lines of the page's whole width.",
          "The third line is not read.", "common practice", "a bullet of three lines",
          "two bullets of two lines", two_lines},
    Check{"emphasis", Weight::should, "page",
          "At most a fifth of the words in bullets and prose are bold, italic or underlined.",
          "Where much stands out, nothing does.", "common practice",
          "- *Counted 212 eelgrass quadrats* at *9 sites*",
          "- Counted 212 eelgrass quadrats and cut entry time *18%*", emphasis},
    Check{"two-columns", Weight::consider, "page", "The page has one column.",
          "A portal that reads across mixes the lines of two.", "common practice",
          "a theme of two columns", "a theme of one column", two_columns},
    Check{"contrast", Weight::must, "page",
          "All text stands out from white paper by 4.5 to 1, large text by 3 to 1. A theme with a "
          "paler colour is refused before, and this is the second guard, on the page as it was "
          "made.",
          "Pale grey is lost in print, on a poor screen, and to weak eyes.",
          "Web Content Accessibility Guidelines 2.1, section 1.4.3",
          "a page made with text in #949494", "text in #595959", contrast},
};

}

std::span<const Check> page_checks() {
    return page_table;
}

}
