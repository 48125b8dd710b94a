#include "compiler/stages/glance/glance.hpp"

#include "compiler/base/phrases.hpp"
#include "compiler/stages/lines/paragraph_lines.hpp"
#include "compiler/stages/pages/text_areas.hpp"

#include <hb.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <string_view>
#include <utility>

namespace quoin::glance {

namespace {

// --- what the model weighs

constexpr double size_power = 2;         // twice as large stands out four times as much
constexpr double of_bold = 2;            // against regular
constexpr double of_white = 1;           // added by an empty line above
constexpr double lost_at_foot = 0.8;     // of what it would weigh at the top
constexpr double lost_by_page = 0.7;     // with each page before its own
constexpr double later_on_line = 0.9;    // for each look before it on its line
constexpr double drawn_along = 0.97;     // of what stands before it on its line
constexpr double in_list = 0.7;          // of that, an item of a list after its first
constexpr double under_name = 0.1;       // of the line above, which it belongs to: the name,
constexpr double under_title = 0.95;     // a heading or an entry's title,
constexpr double under_text = 0.57;      // or what stands under these
constexpr double read_on = 0.4;          // running text after its first words
constexpr std::size_t words_at_once = 3; // of running text, where it begins
constexpr double usual_step = 1.3;       // of the text's size, from line to line

constexpr std::array<std::string_view, 6> separators = {", ", "; ", " · ", " | ", " • ", " — "};

// --- lines of the pages

struct PlacedLine { // of one paragraph
    std::size_t page = 0;
    std::vector<std::size_t> placed; // of the page's runs, without the label
    double y = 0;                    // pt
};

bool is_shown_text(const composition::Composition& composition, const pages::PlacedRun& placed) {
    if (is_artifact(placed)) return false;
    const composition::Paragraph& paragraph = composition.paragraphs.at(placed.paragraph);
    return placed.run >= paragraph.label_runs && !paragraph.runs[placed.run].icon;
}

std::vector<PlacedLine> lines_of(const composition::Composition& composition,
                                 const pages::Pages& pages) {
    std::vector<PlacedLine> lines;
    for (std::size_t page = 0; page < pages.pages.size(); ++page) {
        const auto& runs = pages.pages[page].runs;
        for (std::size_t i = 0; i < runs.size(); ++i) {
            if (!is_shown_text(composition, runs[i])) continue;
            const bool goes_on = !lines.empty() && lines.back().page == page &&
                                 lines.back().y == runs[i].y &&
                                 runs[lines.back().placed.back()].paragraph == runs[i].paragraph;
            if (!goes_on) lines.push_back({page, {}, runs[i].y});
            lines.back().placed.push_back(i);
        }
    }
    return lines;
}

double text_size(const pages::Pages& pages) { // pt, that of most glyphs
    std::map<double, std::size_t> glyphs;
    for (const pages::Page& page : pages.pages)
        for (const pages::PlacedRun& placed : page.runs)
            glyphs[placed.size] += placed.end - placed.begin;
    const auto most =
        std::ranges::max_element(glyphs, {}, [](const auto& each) { return each.second; });
    return most == glyphs.end() ? 1 : most->first;
}

bool is_bold(const fonts::Face& face) {
    constexpr float least = 600; // on the scale of OpenType's usWeightClass
    return hb_style_get_value(face.hb_font(), HB_STYLE_TAG_WEIGHT) >= least;
}

// --- where the eye stops

struct Bytes {
    std::size_t begin = 0, end = 0;
    bool listed = false; // an item of a list, after its first
};

std::vector<Bytes> parted(std::string_view text, Bytes bytes) {
    std::vector<Bytes> parts;
    bool listed = false;
    while (bytes.begin < bytes.end) {
        std::size_t end = bytes.end, next = bytes.end;
        for (const std::string_view sign : separators)
            if (const std::size_t at = text.find(sign, bytes.begin); at < end) {
                end = at;
                next = std::min(bytes.end, at + sign.size());
            }
        parts.push_back({bytes.begin, end, listed});
        listed = end < bytes.end && text[end] == ';';
        bytes.begin = next;
    }
    return parts;
}

// The first words, and all the others.
std::vector<Bytes> opening_and_rest(std::string_view text, Bytes bytes) {
    std::size_t at = bytes.begin;
    for (std::size_t words = 0; words < words_at_once && at < bytes.end; ++words) {
        at = std::min(text.find_first_not_of(' ', at), bytes.end);
        at = std::min(text.find(' ', at), bytes.end);
    }
    if (at >= bytes.end) return {bytes};
    return {{bytes.begin, at}, {at, bytes.end}};
}

// Bullets, and what has more words between two signs than a title or a degree.
bool is_running_text(const composition::Paragraph& paragraph) {
    constexpr std::size_t most = 8;
    if (paragraph.style == theme::StyleName::bullet) return true;
    if (paragraph.style != theme::StyleName::text) return false;
    std::string text;
    for (const composition::Run& run : paragraph.runs)
        text += run.text;
    return std::ranges::any_of(parted(text, {0, text.size()}), [&](const Bytes& bytes) {
        return word_count(std::string_view(text).substr(bytes.begin, bytes.end - bytes.begin)) >
               most;
    });
}

// --- looks

class LookMaker {
public:
    LookMaker(const composition::Composition& composition, const pages::Pages& pages)
        : composition_(composition), pages_(pages), text_size_(text_size(pages)) {
        for (const composition::Paragraph& paragraph : composition.paragraphs)
            running_.push_back(glance::is_running_text(paragraph));
    }

    std::vector<Look> run() {
        const PlacedLine* above = nullptr;
        const std::vector<PlacedLine> lines = lines_of(composition_, pages_);
        for (const PlacedLine& line : lines) {
            add(line, above);
            above = &line;
        }
        std::ranges::stable_sort(looks_, std::ranges::greater{}, &Look::weight);
        double read = 0; // words
        for (Look& look : looks_) {
            read += static_cast<double>(look.words);
            look.at = read * 60 / words_a_minute;
        }
        return std::move(looks_);
    }

private:
    const pages::PlacedRun& first_of(const PlacedLine& line) const {
        return pages_.pages[line.page].runs[line.placed.front()];
    }
    const composition::Paragraph& paragraph_of(const PlacedLine& line) const {
        return composition_.paragraphs[first_of(line).paragraph];
    }
    bool opens_paragraph(const PlacedLine& line) const {
        const pages::PlacedRun& first = first_of(line);
        return first.begin == 0 && first.run == paragraph_of(line).label_runs;
    }
    bool is_running_text(const PlacedLine& line) const {
        return running_[first_of(line).paragraph];
    }

    // By nearness: the lines of one entry, and what stands under a heading.
    bool belongs_to(const PlacedLine& line, const PlacedLine* above) const {
        if (above == nullptr || above->page != line.page || is_running_text(line)) return false;
        const composition::Paragraph &one = paragraph_of(*above), &other = paragraph_of(line);
        return one.style == theme::StyleName::section || one.style == theme::StyleName::name ||
               (one.entry == other.entry && !is_running_text(*above));
    }

    // What a line gets of the one above.
    double drawn_by(const PlacedLine* above, const PlacedLine& line) const {
        if (!belongs_to(line, above)) return 0;
        const composition::Paragraph& one = paragraph_of(*above);
        if (&one == &paragraph_of(line)) return drawn_along * looks_.back().weight;
        switch (one.style) {
        case theme::StyleName::name:
            return under_name * weight_above_;
        case theme::StyleName::section:
        case theme::StyleName::title:
            return under_title * weight_above_;
        default:
            return under_text * weight_above_;
        }
    }

    double white_above(const PlacedLine& line, const PlacedLine* above) const { // in lines
        if (above == nullptr || above->page != line.page) return 1;
        const double step = (above->y - line.y) / text_size_ / usual_step;
        return std::clamp(step - 1, 0.0, 1.0);
    }

    double by_place(const PlacedLine& line) const {
        const double down = 1 - line.y / pages_.height;
        return (1 - lost_at_foot * down) * std::pow(1 - lost_by_page, line.page);
    }

    double by_look(const pages::PlacedRun& placed) const {
        const composition::Run& run = composition_.paragraphs[placed.paragraph].runs[placed.run];
        return std::pow(placed.size / text_size_, size_power) * (is_bold(*run.face) ? of_bold : 1);
    }

    void add(const PlacedLine& line, const PlacedLine* above) {
        const bool running = is_running_text(line), opens = opens_paragraph(line);
        const double place = by_place(line);
        double along = drawn_by(above, line);
        double share = opens ? 1 + of_white * white_above(line, above) : 1;
        for (const std::size_t index : line.placed)
            for (const Bytes& bytes : parts_of(line, index, running && opens)) {
                const pages::PlacedRun& placed = pages_.pages[line.page].runs[index];
                const bool first = along == 0 || share >= 1;
                if (running && !(opens && first)) share = read_on;
                if (bytes.listed) along *= in_list;
                const double weight = std::max(along, share * place * by_look(placed));
                if (!add(line, index, bytes, weight)) continue;
                if (first && opens) weight_above_ = weight;
                along = running ? 0 : drawn_along * weight;
                share = running ? read_on : std::min(share, 1.0) * later_on_line;
            }
    }

    std::vector<Bytes> parts_of(const PlacedLine& line, std::size_t index, bool opens) const {
        const pages::PlacedRun& placed = pages_.pages[line.page].runs[index];
        const composition::Run& run = composition_.paragraphs[placed.paragraph].runs[placed.run];
        const Bytes all{run.glyphs[placed.begin].text_begin, placed.end < run.glyphs.size()
                                                                 ? run.glyphs[placed.end].text_begin
                                                                 : run.text.size()};
        if (!is_running_text(line)) return parted(run.text, all);
        if (opens && index == line.placed.front()) return opening_and_rest(run.text, all);
        return {all};
    }

    // False if there is no word in it.
    bool add(const PlacedLine& line, std::size_t index, Bytes bytes, double weight) {
        const pages::PlacedRun& placed = pages_.pages[line.page].runs[index];
        const composition::Paragraph& paragraph = composition_.paragraphs[placed.paragraph];
        const composition::Run& run = paragraph.runs[placed.run];
        std::string text = run.text.substr(bytes.begin, bytes.end - bytes.begin);
        text.erase(text.find_last_not_of(" ,;") + 1);
        text.erase(0, std::min(text.find_first_not_of(" ,;"), text.size()));
        const std::size_t words = word_count(text);
        if (words == 0) return false;
        const std::size_t before = pages::text_begins(paragraph)[placed.run];
        looks_.push_back({.page = line.page,
                          .placed = index,
                          .run_begin = bytes.begin,
                          .run_end = bytes.end,
                          .paragraph = placed.paragraph,
                          .begin = before + bytes.begin,
                          .end = before + bytes.end,
                          .text = std::move(text),
                          .words = words,
                          .weight = weight});
        return true;
    }

    const composition::Composition& composition_;
    const pages::Pages& pages_;
    const double text_size_;
    std::vector<bool> running_; // a paragraph each
    double weight_above_ = 0;   // of the first look of the line before
    std::vector<Look> looks_;
};

// --- greyed

// The glyphs of a placed run as pieces that follow each other, each all read or all not.
void part_run(const composition::Composition& composition, const pages::PlacedRun& placed,
              const std::vector<Bytes>& read, std::vector<pages::PlacedRun>& pieces) {
    const composition::Run& run = composition.paragraphs[placed.paragraph].runs[placed.run];
    double x = placed.x;
    pages::PlacedRun piece = placed;
    piece.hyphen = false;
    for (std::uint32_t g = placed.begin; g < placed.end; ++g) {
        const fonts::Glyph& glyph = run.glyphs[g];
        const bool pale = std::ranges::none_of(read, [&](const Bytes& bytes) {
            return glyph.text_begin >= bytes.begin && glyph.text_begin < bytes.end;
        });
        if (g > piece.begin && pale != piece.pale) {
            piece.end = g;
            piece.width = x - piece.x;
            pieces.push_back(piece);
            piece.begin = g;
            piece.x = x;
        }
        piece.pale = pale;
        x += lines::advance(run, glyph) * placed.size / run.size +
             (lines::is_space(run, glyph) ? placed.word_space : 0);
    }
    piece.end = placed.end;
    piece.width = placed.x + placed.width - piece.x;
    piece.hyphen = placed.hyphen;
    pieces.push_back(piece);
}

}

std::vector<Look> looks(const composition::Composition& composition, const pages::Pages& pages) {
    return LookMaker(composition, pages).run();
}

double reached_at(const std::vector<Look>& looks, std::uint32_t paragraph, std::size_t begin,
                  std::size_t end) {
    double last = never;
    for (const Look& look : looks)
        if (look.paragraph == paragraph && look.begin < end && begin < look.end)
            last = last == never ? look.at : std::max(last, look.at);
    return last;
}

pages::Pages greyed(const std::vector<Look>& looks, const composition::Composition& composition,
                    pages::Pages pages, double seconds) {
    std::map<std::pair<std::size_t, std::size_t>, std::vector<Bytes>> read;
    for (const Look& look : looks)
        if (look.at <= seconds)
            read[{look.page, look.placed}].push_back({look.run_begin, look.run_end});
    for (std::size_t page = 0; page < pages.pages.size(); ++page) {
        pages::Page& made = pages.pages[page];
        std::vector<pages::PlacedRun> pieces;
        for (std::size_t i = 0; i < made.runs.size(); ++i) {
            if (is_shown_text(composition, made.runs[i])) {
                part_run(composition, made.runs[i], read[{page, i}], pieces);
            } else {
                pieces.push_back(made.runs[i]);
                pieces.back().pale = true;
            }
        }
        made.runs = std::move(pieces);
        for (pages::PlacedRule& rule : made.rules)
            rule.colour = pages::pale_colour;
        for (pages::PlacedIcon& icon : made.icons)
            icon.pale = true;
    }
    return pages;
}

}
