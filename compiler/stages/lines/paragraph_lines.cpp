// Stops are numbered from the paragraph's begin to its end; a line goes from one stop to another.
#include "compiler/stages/lines/paragraph_lines.hpp"

#include "compiler/base/counted_work.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string_view>

#include <hb.h>

namespace quoin::lines {

namespace {

Line::Position skip_empty_runs(const composition::Paragraph& paragraph, Line::Position at) {
    while (at.run < paragraph.runs.size() && at.glyph >= paragraph.runs[at.run].glyphs.size())
        at = {at.run + 1, 0};
    return at;
}

// A space stretches by a third (common practice); where a line would need more, the paragraph is
// better ragged.
constexpr double most_stretch = 1.0 / 3;       // of a space
constexpr double tolerance = most_stretch * 2; // of word_glue

// Where the column goes on beyond the most room, nothing tells where lines are to end: they may end
// a little before it, all alike.
constexpr double least_room_share = 0.9, room_share_step = 0.01;

// To break into exactly so many lines takes time with their square; no résumé has such a paragraph.
constexpr std::size_t most_lines_to_count = 40;

bool is_before(Line::Position a, Line::Position b) {
    return a.run != b.run ? a.run < b.run : a.glyph < b.glyph;
}

// Em of the text size.
double hyphen_width(const composition::Paragraph& paragraph, std::uint32_t run_index) {
    if (run_index >= paragraph.hyphen_glyphs.size()) return 0;
    const composition::Run& run = paragraph.runs[run_index];
    return run.size *
           hb_font_get_glyph_h_advance(run.face->hb_font(), paragraph.hyphen_glyphs[run_index]) /
           run.face->units_per_em();
}

// A ligature or a base with its marks stays whole.
bool begins_cluster(const composition::Run& run, std::uint32_t glyph) {
    if (glyph == 0) return true;
    const fonts::Glyph& after = run.glyphs[glyph];
    return after.text_length > 0 && after.text_begin != run.glyphs[glyph - 1].text_begin;
}

double column_of(const composition::Paragraph& paragraph, double measure) {
    return paragraph.span.width(measure) - paragraph.indent;
}

Item box(double width) {
    Item item;
    item.kind = Item::Kind::box;
    item.width = width;
    return item;
}

// Word spaces give as the paper's sample has it: 6 units, stretch 3, shrink 2.
Item word_glue(double width) {
    Item item;
    item.kind = Item::Kind::glue;
    item.width = width;
    item.stretch = width / 2;
    item.shrink = width / 3;
    return item;
}

Item penalty(double penalty, double width = 0, bool flagged = false) {
    Item item;
    item.kind = Item::Kind::penalty;
    item.penalty = penalty;
    item.width = width;
    item.flagged = flagged;
    return item;
}

Item finishing_glue() {
    Item item;
    item.kind = Item::Kind::glue;
    item.stretch = 1000;
    return item;
}

}

bool is_space(const composition::Run& run, const fonts::Glyph& glyph) {
    const std::string_view text = std::string_view(run.text).substr(
        std::min<std::size_t>(glyph.text_begin, run.text.size()), glyph.text_length);
    return text == " " || text == "\u00A0";
}

double advance(const composition::Run& run, const fonts::Glyph& glyph) {
    return run.size *
           (glyph.advance / static_cast<double>(run.face->units_per_em()) + run.tracking);
}

MeasuredParagraph::MeasuredParagraph(const composition::Paragraph& paragraph, double narrowest)
    : paragraph_(paragraph) {
    add_stops();
    add_word_stops(std::min(column_of(paragraph, narrowest), paragraph.most_room));
    stops_.front().at_next.width = paragraph.turn_over; // the first line has so much more room
}

void MeasuredParagraph::add_stops() {
    struct Passed {
        Line::Position end;
        Sums at_end;
    };
    Stop stop;
    stop.end = stop.next = skip_empty_runs(paragraph_, {paragraph_.label_runs, 0});
    stops_.reserve(paragraph_.breaks.size() + 2);
    stops_.push_back(stop);
    auto next_break = paragraph_.breaks.begin();
    std::vector<Passed> passed{{stop.end, stop.at_end}}; // after each glyph
    std::size_t glyphs = 1;
    for (const composition::Run& run : paragraph_.runs)
        glyphs += run.glyphs.size();
    passed.reserve(glyphs);
    while (stop.next.run < paragraph_.runs.size()) {
        pass_glyph(stop);
        passed.push_back({stop.end, stop.at_end});
        while (next_break != paragraph_.breaks.end() &&
               is_before({next_break->run, next_break->glyph}, stop.end))
            ++next_break;
        if (next_break == paragraph_.breaks.end() ||
            is_before(stop.end, {next_break->run, next_break->glyph}) ||
            next_break->penalty >= infinite_penalty || stop.next.run >= paragraph_.runs.size())
            continue;
        stops_.push_back(stop);
        stops_.back().penalty = next_break->penalty;
        stops_.back().hyphen = next_break->hyphen;
        if (next_break->left_out > 0 && next_break->left_out < passed.size()) {
            const Passed& kept = passed[passed.size() - 1 - next_break->left_out];
            stops_.back().end = kept.end;
            stops_.back().at_end = kept.at_end;
        }
        if (next_break->hyphen) stops_.back().hyphen_width = hyphen_width(paragraph_, stop.end.run);
    }
    stop.penalty = -infinite_penalty;
    stops_.push_back(stop);
}

void MeasuredParagraph::pass_glyph(Stop& stop) const {
    const composition::Run& run = paragraph_.runs[stop.next.run];
    const fonts::Glyph& glyph = run.glyphs[stop.next.glyph];
    stop.at_next.width += advance(run, glyph);
    if (is_space(run, glyph)) {
        ++stop.at_next.spaces;
        stop.at_next.space_width += advance(run, glyph);
    } else {
        stop.at_end = stop.at_next;
        stop.at_end.width -= run.tracking * run.size; // none after a line's last glyph
    }
    stop.end = {stop.next.run, stop.next.glyph + 1};
    stop.next = skip_empty_runs(paragraph_, stop.end);
}

void MeasuredParagraph::add_word_stops(double narrowest) {
    std::vector<Stop> stops;
    stops.reserve(stops_.size());
    stops.push_back(stops_.front());
    for (std::size_t i = 1; i < stops_.size(); ++i) {
        const double word_width = width(i - 1, i);
        if (word_width > narrowest) {
            Stop stop = stops_[i - 1];
            stop.penalty = stop.hyphen_width = 0;
            stop.hyphen = false;
            stop.word = stops.size() - 1;
            stop.word_width = word_width;
            pass_glyph(stop);
            for (; is_before(stop.next, stops_[i].end); pass_glyph(stop))
                if (begins_cluster(paragraph_.runs[stop.next.run], stop.next.glyph))
                    stops.push_back(stop);
        }
        stops.push_back(stops_[i]);
    }
    stops_ = std::move(stops);
}

double MeasuredParagraph::width(std::size_t from, std::size_t to) const {
    return std::max(0.0, stops_[to].at_end.width - stops_[from].at_next.width) +
           stops_[to].hyphen_width;
}

// Whether a line may end at `to`, its width apart.
bool MeasuredParagraph::is_open(std::size_t from, std::size_t to, double room) const {
    return stops_[to].word_width == 0 || (stops_[to].word_width > room && from >= stops_[to].word);
}

bool MeasuredParagraph::is_forced(std::size_t stop) const {
    return stops_[stop].penalty <= -infinite_penalty;
}

// Calls `visit` with each stop where a line from `from` may end; with the nearest, if none fits.
template<typename Visit>
void MeasuredParagraph::visit_ends(std::size_t from, double room, Visit visit) const {
    bool any = false;
    std::size_t to = from + 1;
    for (; to < stops_.size(); ++to) {
        if (any && stops_[to].at_end.width - stops_[from].at_next.width > room) break;
        if (!is_open(from, to, room)) continue;
        if (!any || width(from, to) <= room) visit(to);
        any = true;
        if (is_forced(to)) break;
    }
    count_work(Work::line_ends, to - from);
}

int MeasuredParagraph::count(double room) const {
    int lines = 0;
    for (std::size_t at = 0; at + 1 < stops_.size(); ++lines)
        visit_ends(at, room, [&](std::size_t to) { at = to; });
    return lines;
}

// What the page's measure leaves for the text.
double MeasuredParagraph::room_in(double measure) const {
    const double column = column_of(paragraph_, measure);
    if (column <= paragraph_.most_room) return column;
    return !paragraph_.in_margin && count(column) == 1 ? column : paragraph_.most_room;
}

int MeasuredParagraph::line_count(double measure) const {
    return count(room_in(measure));
}

double MeasuredParagraph::cost(std::size_t from, std::size_t to, double room) const {
    if (to + 1 < stops_.size()) {
        if (is_forced(to)) return 0;
        double penalty = stops_[to].penalty / 10;
        if (room <= 0) return penalty;
        if (!stops_[to].hyphen) penalty *= std::sqrt(std::max(1.0, wide_measure / room));
        const double shortfall = std::max(0.0, room - width(from, to)) / room;
        return 100 * shortfall * shortfall + penalty;
    }
    return from == 0 ? 0 : last_line_cost(from, room);
}

bool MeasuredParagraph::is_lone_word(std::size_t from) const {
    return stops_.back().at_end.spaces == stops_[from].at_next.spaces;
}

double MeasuredParagraph::last_line_cost(std::size_t from, double room) const {
    const double quarter = room / 4, line = width(from, stops_.size() - 1);
    if (line < quarter && is_lone_word(from)) return runt_cost;
    const double wanted = quarter * std::sqrt(std::max(1.0, wide_measure / room));
    return line < wanted ? short_cost * (1 - line / wanted) : 0;
}

bool MeasuredParagraph::leaves_runt(const std::vector<std::size_t>& ends, double room) const {
    return ends.size() > 1 && last_line_cost(ends[ends.size() - 2], room) >= runt_cost;
}

// The breaking of fewest lines and, among those, of least cost.
std::vector<std::size_t> MeasuredParagraph::ragged(double room) const {
    struct Best {
        int lines = std::numeric_limits<int>::max();
        double cost = 0;
        std::size_t from = 0;
    };
    std::vector<Best> best(stops_.size());
    best.front().lines = 0;
    for (std::size_t from = 0; from + 1 < stops_.size(); ++from) {
        if (best[from].lines == std::numeric_limits<int>::max()) continue;
        visit_ends(from, room, [&](std::size_t to) {
            const Best found{best[from].lines + 1, best[from].cost + cost(from, to, room), from};
            if (found.lines < best[to].lines ||
                (found.lines == best[to].lines && found.cost < best[to].cost))
                best[to] = found;
        });
    }
    std::vector<std::size_t> ends;
    for (std::size_t at = stops_.size() - 1; at > 0; at = best[at].from)
        ends.push_back(at);
    std::reverse(ends.begin(), ends.end());
    return ends;
}

// Empty if a word is overlong or a line would have to stretch too far.
std::vector<std::size_t> MeasuredParagraph::justified(double room) const {
    std::vector<Item> items;
    std::vector<std::size_t> stop_of_item; // 0: a line's end at no stop
    std::size_t from = 0;
    for (std::size_t to = 1; to < stops_.size(); ++to) {
        if (stops_[to].word_width > room) return {};
        if (stops_[to].word_width > 0) continue;
        add_items(items, from, to, room);
        stop_of_item.resize(items.size());
        stop_of_item[items.size() - (to + 1 < stops_.size() ? 2 : 1)] = to;
        from = to;
    }
    const auto wanted = static_cast<std::size_t>(count(room));
    BreakingRules rules;
    rules.tolerance = tolerance;
    Breaking breaking = break_justified(items, room, rules);
    if (breaking.breaks.size() != wanted && wanted > most_lines_to_count) return {};
    if (breaking.breaks.size() != wanted) {
        rules.lines = wanted;
        breaking = break_justified(items, room, rules);
    }
    std::vector<std::size_t> ends;
    for (const Break& end : breaking.breaks)
        ends.push_back(stop_of_item[end.item]);
    return ends;
}

// What stands between two stops, then the break at the second with the spaces it would drop.
void MeasuredParagraph::add_items(std::vector<Item>& items, std::size_t from, std::size_t to,
                                  double room) const {
    const Stop& end = stops_[to];
    const double inner = end.at_end.space_width - stops_[from].at_next.space_width;
    items.push_back(box(end.at_end.width - stops_[from].at_next.width - inner));
    if (inner > 0) {
        items.push_back(penalty(infinite_penalty));
        items.push_back(word_glue(inner));
        items.push_back(box(0));
    }
    if (to + 1 == stops_.size()) {
        items.push_back(penalty(infinite_penalty));
        items.push_back(finishing_glue());
        items.push_back(penalty(-infinite_penalty, 0, true));
        return;
    }
    if (is_forced(to)) items.push_back(finishing_glue());
    items.push_back(
        penalty(end.penalty + 10 * last_line_cost(to, room), end.hyphen_width, end.hyphen));
    items.push_back(word_glue(end.at_next.space_width - end.at_end.space_width));
    items.back().width = end.at_next.width - end.at_end.width; // tracking too, that does not give
}

MeasuredParagraph::Ends MeasuredParagraph::best_ends(double room) const {
    if (paragraph_.align == theme::Align::justified && !paragraph_.fill_run) {
        const auto wanted = static_cast<std::size_t>(count(room));
        const double least = room < paragraph_.most_room ? 1 : least_room_share;
        for (double share = 1; share >= least; share -= room_share_step) {
            Ends ends{justified(share * room), true, share * room};
            if (ends.stops.size() == wanted && !leaves_runt(ends.stops, ends.room)) return ends;
        }
    }
    return {ragged(room), false, room};
}

std::vector<Line> MeasuredParagraph::lines(double measure) const {
    const Ends ends = best_ends(room_in(measure));
    std::vector<Line> lines;
    std::size_t from = 0;
    for (const std::size_t to : ends.stops) {
        Line line{stops_[from].next, stops_[to].end, width(from, to), 0, stops_[to].hyphen};
        const std::size_t spaces = stops_[to].at_end.spaces > stops_[from].at_next.spaces
                                       ? stops_[to].at_end.spaces - stops_[from].at_next.spaces
                                       : 0;
        if (ends.justified && spaces > 0 && (!is_forced(to) || line.width > ends.room))
            line.word_space = (ends.room - line.width) / static_cast<double>(spaces);
        if (from == 0) line.width += paragraph_.turn_over;
        lines.push_back(line);
        from = to;
    }
    return lines;
}

}
