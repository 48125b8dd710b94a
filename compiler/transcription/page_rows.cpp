// Words to rows by how far they overlap in height.
#include "compiler/transcription/page_rows.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/transcription/list_marks.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>
#include <utility>

namespace quoin::transcription {

namespace {

constexpr double same_row = 0.55;   // of the lower word's height
constexpr double wider_space = 0.8; // of the height: a space that is no space between words

double overlap(const PlacedWord& a, const PlacedWord& b) {
    const double common = std::min(a.bottom, b.bottom) - std::max(a.top, b.top);
    return common / std::max(std::min(a.height(), b.height()), 0.1);
}

// `AWA R D S`: where capitals that are set apart are kerned, some come together.
bool are_capitals_apart(const std::vector<OldWord>& words) {
    constexpr double no_space = 0.17; // of the size: less than any space between words
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (!std::ranges::all_of(words[i].text, is_capital_letter)) return false;
        if (i > 0 && words[i].left - words[i - 1].right > no_space * words[i].size) return false;
    }
    return true;
}

// Where two letters are kerned they come as one word.
bool are_letters_apart(const std::vector<OldWord>& words) {
    const auto shorter_than = [](std::size_t most) {
        return [most](const OldWord& word) { return characters_in(word.text) <= most; };
    };
    const auto single = std::ranges::count_if(words, shorter_than(1));
    if (are_capitals_apart(words) && 2 * static_cast<std::size_t>(single) >= words.size())
        return true;
    return 3 * static_cast<std::size_t>(single) >= 2 * words.size() &&
           std::ranges::all_of(words, shorter_than(2));
}

}

void close_up(std::vector<OldWord>& words) {
    constexpr std::size_t fewest = 4;
    if (words.size() < fewest || !are_letters_apart(words)) return;
    std::vector<double> gaps;
    for (std::size_t i = 1; i < words.size(); ++i)
        gaps.push_back(words[i].left - words[i - 1].right);
    std::vector<double> sorted = gaps;
    std::ranges::sort(sorted);
    const double usual = sorted[sorted.size() / 2];
    std::vector<OldWord> closed = {words.front()};
    for (std::size_t i = 1; i < words.size(); ++i) {
        if (gaps[i - 1] > 1.6 * usual + 0.5) {
            closed.push_back(words[i]);
        } else {
            closed.back().text += words[i].text;
            closed.back().right = words[i].right;
        }
        closed.back().apart = false;
    }
    words = std::move(closed);
}

namespace {

// Small capitals: `E` and `DUCATION` at once beside it, in smaller letters, are a word.
bool goes_on_in_small_capitals(const OldWord& first, const OldWord& rest, double height) {
    return characters_in(first.text) == 1 && is_capital_letter(first.text.front()) &&
           first.size > 1.1 * rest.size && is_ascii_letter(rest.text.front()) &&
           std::abs(rest.left - first.right) < 0.06 * height;
}

// `Juror’` and `s` at once beside it: the sign is of another font, and its word comes in two.
bool goes_on_after_apostrophe(const OldWord& first, const OldWord& rest, double height) {
    constexpr std::array<std::string_view, 7> ends = {"d", "ll", "m", "re", "s", "t", "ve"};
    const bool apostrophe = first.text.ends_with("\u2019") || first.text.ends_with('\'');
    return apostrophe && characters_in(first.text) > 1 && rest.left - first.right < 0.17 * height &&
           is_one_of(trimmed(rest.text, ".,;:)"), ends);
}

// `SAP   *   rigging   *   welding`: white around stars between items is no column's.
void close_up_around_stars(std::vector<OldWord>& words) {
    const auto star = [](const OldWord& word) { return word.text == "*"; };
    if (words.size() < 2 || std::count_if(words.begin() + 1, words.end(), star) < 2) return;
    for (std::size_t i = 1; i < words.size(); ++i)
        if (star(words[i]) || star(words[i - 1])) words[i].apart = false;
}

OldLine line_of(std::vector<PlacedWord>& row, std::size_t page) {
    std::ranges::stable_sort(
        row, [](const PlacedWord& a, const PlacedWord& b) { return a.word.left < b.word.left; });
    OldLine line;
    line.page = page;
    line.top = row.front().top;
    line.bottom = row.front().bottom;
    for (PlacedWord& placed : row) {
        if (!line.words.empty())
            placed.word.apart =
                placed.word.left - line.words.back().right > wider_space * placed.height();
        line.top = std::min(line.top, placed.top);
        line.bottom = std::max(line.bottom, placed.bottom);
        if (!line.words.empty() &&
            (goes_on_in_small_capitals(line.words.back(), placed.word, placed.height()) ||
             goes_on_after_apostrophe(line.words.back(), placed.word, placed.height()))) {
            line.words.back().text += placed.word.text;
            line.words.back().right = placed.word.right;
            continue;
        }
        line.words.push_back(std::move(placed.word));
    }
    close_up(line.words);
    close_up_around_stars(line.words);
    return line;
}

// Items side by side, each with its sign, are lines of their own.
void add_items(OldLine line, std::vector<OldLine>& lines) {
    std::size_t begin = 0;
    const bool listed = is_list_mark(line.words.front().text);
    for (std::size_t i = 1; i < line.words.size() && listed; ++i) {
        if (!line.words[i].apart || !is_list_mark(line.words[i].text)) continue;
        OldLine item = line;
        item.words.assign(line.words.begin() + static_cast<std::ptrdiff_t>(begin),
                          line.words.begin() + static_cast<std::ptrdiff_t>(i));
        lines.push_back(std::move(item));
        begin = i;
    }
    line.words.erase(line.words.begin(), line.words.begin() + static_cast<std::ptrdiff_t>(begin));
    line.words.front().apart = false;
    lines.push_back(std::move(line));
}

}

std::vector<OldLine> rows_of(std::vector<PlacedWord> words, std::size_t page) {
    std::ranges::stable_sort(
        words, [](const PlacedWord& a, const PlacedWord& b) { return a.middle() < b.middle(); });
    std::vector<OldLine> lines;
    std::vector<PlacedWord> row;
    for (PlacedWord& word : words) {
        if (!row.empty() && overlap(row.back(), word) < same_row &&
            overlap(row.front(), word) < same_row) {
            add_items(line_of(row, page), lines);
            row.clear();
        }
        row.push_back(std::move(word));
    }
    if (!row.empty()) add_items(line_of(row, page), lines);
    double right = 0;
    for (const OldLine& line : lines)
        right = std::max(right, line.right());
    for (std::size_t i = 0; i < lines.size(); ++i) {
        lines[i].column_right = right;
        if (i > 0)
            lines[i].gap = (lines[i].top - lines[i - 1].bottom) / std::max(lines[i].height(), 1.0);
    }
    return lines;
}

}
