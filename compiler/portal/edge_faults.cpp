// Dates flush right, far from what they date.
#include "compiler/portal/faults.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

namespace quoin::portal {

namespace {

constexpr double same_baseline = 2;    // pt
constexpr double least_white = 1.2;    // of the line's height, before a date that stands apart
constexpr std::size_t least_dates = 3; // at one edge: fewer may be chance

struct EdgeDate {
    std::string text;
    double left = 0, right = 0, height = 0;
    bool is_whole_line = false;
};

// The date that a line ends with, at its place.
std::optional<EdgeDate> date_at_end(const ReadLine& line) {
    const std::string text = line.text();
    const auto dates = find_dates(text);
    if (!dates || dates->end != text.size()) return std::nullopt;
    std::size_t begin = 0; // of the word
    for (std::size_t w = 0; w < line.words.size(); ++w) {
        const ReadWord& word = line.words[w];
        if (begin == dates->begin) {
            const bool apart = w > 0 && word.box.left - line.words[w - 1].box.right >
                                            least_white * line.box.height();
            if (w > 0 && !apart) return std::nullopt;
            return EdgeDate{dates->text, word.box.left, line.box.right, line.box.height(), w == 0};
        }
        begin += word.text.size() + 1;
    }
    return std::nullopt;
}

using Lines = std::vector<const ReadLine*>;

// The lines of a page, those of one baseline beside each other from left to right.
Lines by_baseline(const Reading& reading, std::size_t page) {
    Lines lines;
    for (const ReadLine& line : reading.lines)
        if (line.page == page) lines.push_back(&line);
    std::ranges::stable_sort(lines, {}, [](const ReadLine* line) { return line->box.middle(); });
    for (auto begin = lines.begin(); begin != lines.end();) {
        const auto end = std::find_if(begin, lines.end(), [&](const ReadLine* line) {
            return line->box.middle() - (*begin)->box.middle() > same_baseline;
        });
        std::stable_sort(begin, end, [](const ReadLine* a, const ReadLine* b) {
            return a->box.left < b->box.left;
        });
        begin = end;
    }
    return lines;
}

// Those that white parts from what stands left of them, by whole points of their right edges.
// A line of its own that stands beside another.
bool is_apart(const EdgeDate& date, const ReadLine& line, const ReadLine& before) {
    return line.box.middle() - before.box.middle() <= same_baseline &&
           date.left - before.box.right > least_white * date.height;
}

std::map<long, std::vector<std::string>> dates_by_edge(const Lines& lines) {
    std::map<long, std::vector<std::string>> edges;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const auto date = date_at_end(*lines[i]);
        if (!date) continue;
        if (!date->is_whole_line || (i > 0 && is_apart(*date, *lines[i], *lines[i - 1])))
            edges[std::lround(date->right)].push_back(date->text);
    }
    return edges;
}

}

void check_edges(const Evidence& evidence, ScanFaults& faults) {
    std::vector<std::string> apart;
    for (std::size_t page = 0; page < evidence.by_place.pages.size(); ++page)
        for (const auto& [edge, dates] : dates_by_edge(by_baseline(evidence.by_place, page)))
            if (dates.size() >= least_dates) apart.insert(apart.end(), dates.begin(), dates.end());
    if (!apart.empty()) report<messages::dates_apart>(faults, apart.size(), list_of(apart));
}

}
