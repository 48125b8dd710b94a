// A page's columns: white from top to bottom that no line crosses, with lines on both sides that
// have nothing to do with each other.
#include "compiler/base/ascii.hpp"
#include "compiler/portal/found.hpp"
#include "compiler/transcription/page_rows.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace quoin::transcription {

namespace {

constexpr double narrowest_gutter = 8;     // pt
constexpr std::size_t most_words = 6000;   // of a page; more are no résumé, and are read across
constexpr std::size_t fewest_lines = 3;    // of a column
constexpr std::size_t deepest_columns = 4; // columns within columns

struct Stretch { // across the page
    double left = 0, right = 0;
};

using Words = std::vector<PlacedWord>;

// What is covered by words, in order; stretches nearer than a gutter are one.
void cover(std::vector<Stretch>& covered, Stretch word) {
    auto at = std::ranges::find_if(
        covered, [&](const Stretch& one) { return one.right + narrowest_gutter > word.left; });
    auto end = at;
    for (; end != covered.end() && end->left < word.right + narrowest_gutter; ++end) {
        word.left = std::min(word.left, end->left);
        word.right = std::max(word.right, end->right);
    }
    covered.insert(covered.erase(at, end), word);
}

struct Side {
    Words words;
    std::vector<OldLine> lines;
    std::size_t titles = 0, dated = 0, spoken = 0; // lines; words

    double share(std::size_t count) const {
        return static_cast<double>(count) /
               static_cast<double>(std::max<std::size_t>(1, lines.size()));
    }
};

bool is_dated(const std::string& text) {
    return has_digit(text) && text.size() < 40 && portal::find_dates(text).has_value();
}

Side side_of(Words words, const IsTitle& is_title) {
    Side side;
    side.lines = rows_of(words, 0);
    side.words = std::move(words);
    for (const OldLine& line : side.lines) {
        const std::string text = line.text();
        side.titles += is_title(text);
        side.dated += is_dated(text);
        side.spoken += line.words.size();
    }
    return side;
}

// Of the lines of one side, how many stand level with one of the other.
double level_share(const Side& side, const Side& other) {
    constexpr double level = 0.2; // of the height
    std::size_t count = 0, at = 0;
    for (const OldLine& line : side.lines) {
        while (at < other.lines.size() && other.lines[at].bottom < line.top + level * line.height())
            ++at;
        for (std::size_t i = at; i < std::min(at + 2, other.lines.size()); ++i)
            if (std::abs(other.lines[i].bottom - line.bottom) < level * line.height()) {
                ++count;
                break;
            }
    }
    return side.share(count);
}

// Titles or dates in the margin belong to what stands beside them.
bool is_margin(const Side& side) {
    return side.share(side.titles + side.dated) > 0.55;
}

// All titles and dates stand on one side: on the other is what they belong to.
bool belongs_to(const Side& side, const Side& margin) {
    return side.titles + side.dated == 0 && margin.titles > 0 && margin.dated > 1;
}

bool are_columns(const Side& left, const Side& right) {
    const Side& few = left.lines.size() < right.lines.size() ? left : right;
    const Side& many = &few == &left ? right : left;
    if (few.lines.size() < fewest_lines || is_margin(left) || is_margin(right)) return false;
    if (left.titles > 0 && right.titles > 0) return true;
    if (belongs_to(right, left)) return false;
    const double level = level_share(few, many);
    const bool short_lines = few.spoken < 5 * few.lines.size();
    if (left.titles + right.titles > 0) return level < (short_lines ? 0.6 : 0.9);
    return level < 0.3 && few.lines.size() > 4;
}

struct Columns {
    std::size_t begin = 0, end = 0; // words, of those from the top
    double gutter = 0;
    Words left, right;
};

std::optional<Columns> columns_at(const Words& words, std::size_t begin, std::size_t end,
                                  double gutter, const IsTitle& is_title) {
    Columns columns{begin, end, gutter, {}, {}};
    for (std::size_t i = begin; i < end; ++i)
        (words[i].word.left < gutter ? columns.left : columns.right).push_back(words[i]);
    const Side left = side_of(columns.left, is_title), right = side_of(columns.right, is_title);
    return are_columns(left, right) ? std::optional(std::move(columns)) : std::nullopt;
}

// From the foot upwards: a gutter is as long as no word above closes it.
std::optional<Columns> columns_above(const Words& words, std::size_t end, const IsTitle& is_title) {
    std::vector<Stretch> covered;
    std::optional<Columns> found;
    std::vector<double> open; // the gutters
    for (std::size_t i = end; i-- > 0;) {
        cover(covered, {words[i].word.left, words[i].word.right});
        for (const double gutter : open) {
            const bool closed = std::ranges::any_of(covered, [&](const Stretch& one) {
                return one.left < gutter && one.right > gutter;
            });
            if (!closed) continue;
            std::size_t begin = i + 1; // below the whole line of the word that closes it
            while (begin < end && words[begin].middle() < words[i].bottom)
                ++begin;
            if (auto columns = columns_at(words, begin, end, gutter, is_title))
                found = std::move(columns);
        }
        open.clear();
        for (std::size_t k = 1; k < covered.size(); ++k)
            open.push_back((covered[k - 1].right + covered[k].left) / 2);
    }
    for (const double gutter : open)
        if (auto columns = columns_at(words, 0, end, gutter, is_title)) found = std::move(columns);
    return found;
}

void read_region(Words words, std::size_t page, std::size_t depth, const IsTitle& is_title,
                 std::vector<OldLine>& lines);

std::optional<Columns> columns_in(const Words& words, const IsTitle& is_title) {
    constexpr std::size_t most_feet = 4; // lines below that cross both
    if (words.size() > most_words) return std::nullopt;
    std::size_t end = words.size();
    for (std::size_t foot = 0; foot < most_feet && end > 0; ++foot) {
        if (auto columns = columns_above(words, end, is_title)) return columns;
        const double top = words[end - 1].top;
        while (end > 0 && words[end - 1].bottom > top)
            --end;
    }
    return std::nullopt;
}

Words part(const Words& words, std::size_t begin, std::size_t end) {
    return {words.begin() + static_cast<std::ptrdiff_t>(begin),
            words.begin() + static_cast<std::ptrdiff_t>(end)};
}

bool reaches_somebody(const std::string& text) {
    return text.find('@') != std::string::npos || !portal::find_phones(text).empty();
}

// A line in the middle of a page's head may have its white where the gutter is below: `email  phone
// town`. What stands above the first title, down to such a line, is of no column.
double bottom_of_head(const Words& words, const Columns& columns, const IsTitle& is_title) {
    constexpr std::size_t most_lines_of_head = 5, most_words_of_head = 10;
    double bottom = 0;
    std::size_t count = 0;
    for (const OldLine& line : rows_of(part(words, columns.begin, columns.end), 0)) {
        const std::string text = line.text();
        const bool both = line.left() < columns.gutter && line.right() > columns.gutter;
        if (++count > most_lines_of_head || line.words.size() > most_words_of_head) break;
        if (is_title(text)) break;
        std::string side;
        bool titled = false;
        for (const OldWord& word : line.words) {
            if (word.apart) titled = titled || is_title(std::exchange(side, {}));
            side.append(side.empty() ? "" : " ").append(word.text);
        }
        if (titled || is_title(side)) break;
        if (both && reaches_somebody(text)) bottom = line.bottom;
    }
    return bottom;
}

Columns below_head(Columns columns, const Words& words, const IsTitle& is_title) {
    const double bottom = bottom_of_head(words, columns, is_title);
    std::size_t begin = columns.begin;
    while (begin < columns.end && words[begin].middle() < bottom)
        ++begin;
    if (begin == columns.begin) return columns;
    auto lower = columns_at(words, begin, columns.end, columns.gutter, is_title);
    return lower ? std::move(*lower) : std::move(columns);
}

void read_region(Words words, std::size_t page, std::size_t depth, const IsTitle& is_title,
                 std::vector<OldLine>& lines) {
    std::ranges::stable_sort(
        words, [](const PlacedWord& a, const PlacedWord& b) { return a.top < b.top; });
    auto columns = depth < deepest_columns ? columns_in(words, is_title) : std::nullopt;
    if (!columns) {
        auto rows = rows_of(std::move(words), page);
        if (!rows.empty() && !lines.empty()) rows.front().gap = 1; // begins anew
        std::ranges::move(rows, std::back_inserter(lines));
        return;
    }
    columns = below_head(std::move(*columns), words, is_title);
    read_region(part(words, 0, columns->begin), page, depth + 1, is_title, lines);
    read_region(columns->left, page, depth + 1, is_title, lines);
    read_region(columns->right, page, depth + 1, is_title, lines);
    read_region(part(words, columns->end, words.size()), page, depth + 1, is_title, lines);
}

}

std::vector<OldLine> lines_of_page(std::vector<PlacedWord> words, std::size_t page,
                                   const IsTitle& is_title) {
    std::vector<OldLine> lines;
    read_region(std::move(words), page, 0, is_title, lines);
    return lines;
}

}
