// Two columns side by side, and whether they are read one after the other or across.
#include "compiler/portal/faults.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>

namespace quoin::portal {

namespace {

constexpr std::size_t least_lines = 8; // on each side, without a line that crosses
constexpr double least_words = 3;      // a line on each side: dates and labels have fewer
constexpr double gutter_slack = 3;     // pt
constexpr std::size_t most_turns = 3;  // from column to column: over, back for a foot, and over

struct TwoColumns {
    std::size_t page = 0;
    double gutter = 0, top = 0, bottom = 0; // pt; the right column begins at the gutter
    std::size_t left_lines = 0, right_lines = 0;
    bool titled = false; // sections stand in both, in whatever short lines
};

using Lines = std::vector<const ReadLine*>;

bool has_year(const ReadLine& line) {
    return find_dates(line.text()).has_value();
}

bool holds_prose(std::size_t lines, std::size_t words) {
    return lines >= least_lines &&
           static_cast<double>(words) >= least_words * static_cast<double>(lines);
}

struct Side {
    std::size_t lines = 0, words = 0, dates = 0, titles = 0;

    // Sections with what belongs to them; titles and dates by themselves are a margin's.
    bool holds_sections() const {
        return titles > 0 && lines >= least_lines / 2 && 2 * (titles + dates) <= lines;
    }
};

// A stretch of the page that no line crosses at the gutter, if it holds two columns: of prose, or
// of sections each.
std::optional<TwoColumns> columns_in(const Lines& stretch, double gutter) {
    TwoColumns columns{stretch.front()->page, gutter, stretch.front()->box.top, 0, 0, 0};
    Side left, right;
    for (const ReadLine* line : stretch) {
        Side& side = line->box.left > gutter - gutter_slack ? right : left;
        ++side.lines;
        side.words += line->words.size();
        side.dates += has_year(*line);
        side.titles += is_usual_title(line->text());
        columns.bottom = std::max(columns.bottom, line->box.bottom);
    }
    columns.left_lines = left.lines;
    columns.right_lines = right.lines;
    const bool prose = holds_prose(left.lines, left.words) &&
                       holds_prose(right.lines, right.words) && 2 * right.dates <= right.lines;
    columns.titled = !prose && left.holds_sections() && right.holds_sections();
    return prose || columns.titled ? std::optional(columns) : std::nullopt;
}

bool crosses(const ReadLine& line, double gutter) {
    return line.box.left < gutter - gutter_slack && line.box.right > gutter - gutter_slack;
}

bool is_better(const TwoColumns& found, const TwoColumns& best) {
    if (found.titled != best.titled) return best.titled;
    return found.right_lines > best.right_lines;
}

std::optional<TwoColumns> columns_at(const Lines& by_height, double gutter) {
    Lines stretch;
    std::optional<TwoColumns> best;
    const auto end_stretch = [&] {
        if (stretch.size() >= 2 * least_lines)
            if (const auto found = columns_in(stretch, gutter);
                found && (!best || is_better(*found, *best)))
                best = found;
        stretch.clear();
    };
    for (const ReadLine* line : by_height)
        if (crosses(*line, gutter))
            end_stretch();
        else
            stretch.push_back(line);
    end_stretch();
    return best;
}

// Where many lines begin, away from the left margin.
std::vector<double> gutters_of(const Lines& lines, double page_width) {
    constexpr std::size_t most = 4;
    std::map<long, std::size_t> counts; // by whole pt
    for (const ReadLine* line : lines)
        if (line->box.left > 0.25 * page_width) ++counts[std::lround(line->box.left)];
    std::vector<std::pair<std::size_t, long>> often;
    for (const auto& [left, count] : counts)
        if (count >= least_lines / 2) often.emplace_back(count, left);
    std::ranges::sort(often, std::greater());
    std::vector<double> gutters;
    for (std::size_t i = 0; i < std::min(most, often.size()); ++i)
        gutters.push_back(static_cast<double>(often[i].second));
    return gutters;
}

std::optional<TwoColumns> columns_on(const Reading& reading, std::size_t page) {
    Lines lines;
    for (const ReadLine& line : reading.lines)
        if (line.page == page) lines.push_back(&line);
    std::ranges::stable_sort(lines, {}, [](const ReadLine* line) { return line->box.top; });
    std::optional<TwoColumns> best;
    for (const double gutter : gutters_of(lines, reading.pages[page].width))
        if (const auto found = columns_at(lines, gutter);
            found && (!best || is_better(*found, *best)))
            best = found;
    return best;
}

bool stands_in(const ReadLine& line, const TwoColumns& columns) {
    return line.page == columns.page && line.box.top >= columns.top - gutter_slack &&
           line.box.bottom <= columns.bottom + gutter_slack;
}

// How often the reading goes from one column to the other.
std::size_t crossings(const Reading& reading, const TwoColumns& columns) {
    std::size_t count = 0;
    std::optional<bool> before;
    for (const ReadLine& line : reading.lines) {
        if (!stands_in(line, columns)) continue;
        for (const ReadWord& word : line.words) {
            const bool right = word.box.left > columns.gutter - gutter_slack;
            count += before && *before != right;
            before = right;
        }
    }
    return count;
}

}

void check_columns(const Evidence& evidence, ScanFaults& faults) {
    for (std::size_t page = 0; page < evidence.by_place.pages.size(); ++page) {
        const auto columns = columns_on(evidence.by_place, page);
        if (!columns) continue;
        const std::size_t fewer = std::min(columns->left_lines, columns->right_lines);
        // a section is torn apart wherever the reading leaves its column and comes back
        const std::size_t bearable = columns->titled ? most_turns : fewer - 1;
        if (std::max(crossings(evidence.by_place, *columns),
                     crossings(evidence.by_file, *columns)) > bearable)
            report<messages::interleaved_columns>(faults).page = page + 1;
        else if (!columns->titled)
            report<messages::two_columns>(faults).page = page + 1;
    }
}

}
