// The one place where the words for an overflow are chosen.
#include "compiler/stages/overflow_report.hpp"

#include "compiler/base/utf8.hpp"
#include "compiler/base/whole_file_place.hpp"
#include "compiler/stages/fit/comfort.hpp"
#include "compiler/stages/messages.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::stages {

namespace {

constexpr std::size_t most_quoted = 48; // characters

std::string number_of(std::size_t count, std::string_view one, std::string_view several) {
    return fmt::format("{} {}", count, count == 1 ? one : several);
}

std::string lines_counted(int count) {
    return number_of(static_cast<std::size_t>(count), "line", "lines");
}

std::string characters_counted(std::size_t count) {
    return number_of(count, "character", "characters");
}

std::vector<std::size_t> character_begins(std::string_view text) {
    std::vector<std::size_t> begins;
    for (std::size_t at = 0; at < text.size(); at += first_character(text.substr(at)).length)
        begins.push_back(at);
    return begins;
}

// A long text by its first and last words.
std::string ends_quoted(const std::string& text) {
    const std::vector<std::size_t> begins = character_begins(text);
    if (begins.size() <= most_quoted) return '\'' + text + '\'';
    std::size_t head = text.rfind(' ', begins[most_quoted / 2]);
    std::size_t tail = text.find(' ', begins[begins.size() - most_quoted / 2]);
    if (head == std::string::npos) head = begins[most_quoted / 2];
    if (tail == std::string::npos) tail = begins[begins.size() - most_quoted / 2];
    return '\'' + text.substr(0, head) + " … " + text.substr(text.find_first_not_of(' ', tail)) +
           '\'';
}

std::string smallest(const Typeset& typeset) {
    const fit::PageSetting least = least_setting(fit::choices_of(
        typeset.theme, typeset.resume.settings, fit::characters_in_em(typeset.composition)));
    const std::string size = fmt::format("{} pt", least.size);
    if (least.side_margin != least.top_margin || least.side_margin != least.bottom_margin)
        return fill<messages::with_smallest_margins>(size);
    return fill<messages::with_margins>(size, least.side_margin / theme::points_per_inch);
}

std::string too_long(int lines_too_many, const Typeset& typeset, bool draft) {
    const auto pages = static_cast<std::size_t>(*typeset.resume.settings.pages);
    return fill<messages::page_too_long>(
        lines_counted(lines_too_many), number_of(pages, "page", "pages"), smallest(typeset),
        draft ? fill<messages::set_as_draft>() : fill<messages::nothing_written>());
}

std::string piece_text(const fit::Cut& cut, const composition::Paragraph& paragraph) {
    if (cut.kind == fit::Cut::Kind::entry)
        return fill<messages::cut_high_school>(lines_counted(cut.lines));
    return fill<messages::cut_bullet>(paragraph.bullet, lines_counted(cut.lines));
}

std::string words_text(const fit::Cut& cut) {
    const std::string saved = saved_by(cut.characters, cut.lines);
    if (cut.kind == fit::Cut::Kind::bullet) return fill<messages::whole_bullet>(saved);
    std::string text = fill<messages::say_words>(saved, ends_quoted(cut.words));
    if (cut.words == cut.last_lines || character_begins(cut.last_lines).size() > most_quoted)
        return text;
    return text + fill<messages::last_lines_hold>(
                      cut.lines == 1 ? "line holds" : lines_counted(cut.lines) + " hold",
                      ends_quoted(cut.last_lines));
}

// What the words come to together, said above them.
std::string sum_text(const fit::Cuts& cuts, std::size_t shown, int pages) {
    std::size_t all = 0;
    for (const fit::Cut& cut : cuts.words)
        all += cut.characters;
    const std::string_view lead = cuts.either           ? "or, instead of that, "
                                  : cuts.pieces.empty() ? ""
                                                        : "then ";
    const std::string text = fill<messages::fewest_words>(
        lead, pages == 1 ? "the page" : "its pages", characters_counted(all),
        number_of(cuts.words.size(), "place", "places"));
    if (shown == cuts.words.size()) return text;
    return text + fill<messages::cheapest_follow>(shown);
}

void note_limits(const fit::Cuts& cuts, const Place& whole, Diagnostics& report) {
    if (!cuts.all_tried)
        report.note(whole, fill<messages::not_all_tried>());
    else if (!cuts.enough)
        report.note(whole, fill<messages::words_will_not_do>());
}

}

std::string saved_by(std::size_t characters, int lines) {
    return fill<messages::characters_save>(characters_counted(characters),
                                           characters == 1 ? "saves" : "save",
                                           lines == 1 ? "a line" : lines_counted(lines));
}

Diagnostics overflow_report(int lines_too_many, const fit::Cuts& cuts, const Typeset& typeset,
                            std::uint32_t file, bool draft) {
    Diagnostics report;
    const Place whole = whole_file(file);
    const std::string text = too_long(lines_too_many, typeset, draft);
    if (draft)
        report.warning(whole, text);
    else
        report.error(whole, text);
    const auto& paragraphs = typeset.composition.paragraphs;
    const std::size_t pieces = std::min(cuts.pieces.size(), most_notes);
    for (const fit::Cut& cut : std::span(cuts.pieces).first(pieces))
        report.note(cut.places.front(), piece_text(cut, paragraphs[cut.paragraph]));
    if (cuts.pieces.size() > pieces)
        report.note(whole, fill<messages::more_like_these>(cuts.pieces.size() - pieces));
    const std::size_t words = std::min(cuts.words.size(), most_notes - pieces);
    if (!cuts.words.empty() && cuts.words.size() + pieces > 1)
        report.note(whole, sum_text(cuts, words, *typeset.resume.settings.pages));
    for (const fit::Cut& cut : std::span(cuts.words).first(words))
        report.note(cut.places.front(), words_text(cut));
    note_limits(cuts, whole, report);
    return report;
}

fit::Cuts cheapest_cuts_of(const Typeset& typeset) {
    return fit::cheapest_cuts(typeset.composition, typeset.theme, typeset.resume.settings);
}

}
