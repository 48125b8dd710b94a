// A line goes on with the one above if its first word had no room there, or stands below its text.
#include "compiler/transcription/rows.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/portal/found.hpp"
#include "compiler/trade/months.hpp"
#include "compiler/transcription/list_marks.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace quoin::transcription {

namespace {

constexpr double slack = 2.5;         // pt: as far as boxes of letters in one column are off
constexpr double wide_gap = 0.45;     // of the height: white that parts
constexpr double usual_at_most = 0.5; // where no other line tells what is usual

// What stands apart at a line's end, such as a date at the right edge, begins there.
std::size_t apart_at(const std::vector<OldWord>& words) {
    for (std::size_t i = 1; i < words.size(); ++i)
        if (words[i].apart) return i;
    return words.size();
}

// Takes the list's sign off.
void take_mark(OldRow& row, bool listed) {
    OldWord& first = row.words.front();
    row.item = listed;
    if (const std::size_t sign = list_mark_at(first.text); sign > 0 && sign < first.text.size()) {
        first.text.erase(0, sign);
        row.item = true;
    } else if (is_list_mark(first.text) && row.words.size() > 1) {
        row.words.erase(row.words.begin());
        row.words.front().apart = false;
        row.item = true;
    }
    row.left = row.words.front().left;
}

OldRow row_of(const OldLine& line) {
    OldRow row;
    row.words = line.words;
    row.left = row.mark_left = line.left();
    row.gap = line.gap;
    row.level = line.depth;
    row.running = line.running;
    if (!row.running) take_mark(row, line.listed);
    return row;
}

bool ends_open(std::string_view word) {
    return word.ends_with(',') || word.ends_with(';') || word.ends_with('-') ||
           word.ends_with("\u2013") || word.ends_with("\u00B7") || word.ends_with('(') ||
           word.ends_with('&') || word.ends_with('/') || word == "and" || word == "of" ||
           word == "the" || word == "for";
}

bool looks_alike(const OldWord& a, const OldWord& b) {
    return a.strong == b.strong && a.slanted == b.slanted && std::abs(a.size - b.size) < 0.6;
}

bool is_word_in_some_form(const std::string& word, const IsWord& is_word) {
    if (is_word(word)) return true;
    for (const std::string_view end : {"'s", "\u2019s", "s", "es", "d", "ed"})
        if (word.size() > end.size() + 3 && word.ends_with(end) &&
            is_word(word.substr(0, word.size() - end.size())))
            return true;
    return false;
}

// A line's end may divide a word at a hyphen (common practice): it is whole again if that is a word
// and not both halves are, or if its second half is none. Who types a hyphen types `-`; the other
// sign was put in for the line's end.
bool divides_word(std::string_view first, std::string_view second, bool typed,
                  const IsWord& is_word) {
    constexpr std::array<std::string_view, 16> openings = {"sub", "pub", "pro", "con", "com", "per",
                                                           "dis", "ex",  "in",  "un",  "re",  "de",
                                                           "be",  "en",  "im",  "ad"};
    const auto letters = [](std::string_view text) {
        return !text.empty() && std::ranges::all_of(text, is_ascii_letter);
    };
    std::string_view end = trimmed(second, ".,;:)!?\"'");
    const std::string_view begin = trimmed(first, "(\"'");
    if (!letters(begin) || end.empty() || !is_small_letter(end.front())) return false;
    const std::string lower = lower_case(begin), rest = straight_apostrophes(end);
    const bool known = is_word_in_some_form(rest, is_word);
    if (is_word_in_some_form(lower + rest, is_word))
        return !typed || is_one_of(lower, openings) ||
               !(is_word(lower) && known && rest.size() > 3);
    return letters(rest) && !known && !is_word(lower);
}

class RowJoiner {
public:
    RowJoiner(std::span<const OldLine> lines, const IsWord& is_word)
        : lines_(lines), is_word_(is_word) {
        std::vector<double> gaps;
        for (std::size_t i = 1; i < lines.size(); ++i)
            gaps.push_back(lines[i].gap);
        std::ranges::sort(gaps);
        usual_gap_ = gaps.empty() ? 0 : gaps[gaps.size() / 4];
        if (gaps.size() == 1) usual_gap_ = std::min(usual_gap_, usual_at_most);
        wide_ = std::ranges::count_if(lines, [](const OldLine& line) {
            return line.column_right != no_edge && line.right() > 0.9 * line.column_right;
        });
    }

    std::vector<OldRow> join() {
        for (std::size_t i = 0; i < lines_.size(); ++i) {
            OldRow row = row_of(lines_[i]);
            if (row.words.empty()) continue;
            row.begins_column = i > 0 && (lines_[i].page != lines_[i - 1].page ||
                                          lines_[i].top < lines_[i - 1].top);
            if (i > 0 && !rows_.empty() && goes_on(row, lines_[i]))
                append(std::move(row));
            else
                rows_.push_back(std::move(row));
            if (!rows_.back().running) last_ = &lines_[i];
        }
        return std::move(rows_);
    }

private:
    bool goes_on(const OldRow& row, const OldLine& line) const {
        const OldRow& above = rows_.back();
        if (row.item || row.running || above.running || !last_ || line.column_right == no_edge)
            return false;
        if (line.gap > usual_gap_ + wide_gap && !row.begins_column) return false;
        if (row.begins_column) return above.item && is_small(row);
        return above.item ? goes_on_with_item(row, line) : goes_on_with_text(row, line);
    }

    static bool is_small(const OldRow& row) {
        return is_small_letter(row.words.front().text.front());
    }

    // Below the item's text, not below its sign; or at the margin, in text without columns.
    bool goes_on_with_item(const OldRow& row, const OldLine& line) const {
        const OldRow& above = rows_.back();
        const bool below = row.left > above.left - slack &&
                           row.left < above.left + 3 * line.height() &&
                           above.left > above.mark_left + 1;
        if (below) return true;
        return is_full(line) && is_small(row) && row.left > above.mark_left - line.height();
    }

    // An address alone in a narrow column, broken at a hyphen of its own.
    static bool goes_on_with_address(const OldRow& row, const OldRow& above) {
        return above.words.size() == 1 && row.words.size() == 1 &&
               portal::breaks_link(above.words.back().text, row.words.front().text);
    }

    bool goes_on_with_text(const OldRow& row, const OldLine& line) const {
        if (goes_on_with_address(row, rows_.back()) || ends_range(row, rows_.back())) return true;
        if (reaches_somebody(row) || opens_range(row) || opens_with_caption(row)) return false;
        const OldRow& above = rows_.back();
        const OldWord& last = main_end(above);
        if (last.text.ends_with('.') && opens_reference(row, above)) return false;
        const double in = row.left - above.left;
        const bool hangs = in > slack && in < 4 * line.height();
        if (ends_with_date(above) && !is_small(row)) return false;
        if (opens_quote(row) && opens_quote(above)) return false;             // each a title
        const double room = last.text.ends_with(',') ? 3 * line.height() : 0; // a list is not done
        if (!is_full(line, room) || is_short_beside_others())
            return hangs && (ends_open(last.text) || is_small(row));
        if (!is_small(row) && !ends_open(last.text) &&
            (is_widest_by_chance() || begins_phrase(row, above)))
            return false;
        const bool alike = looks_alike(last, row.words.front());
        const bool level = std::abs(row.left - last_->left()) < slack || is_small(row);
        return (alike && (level || hangs)) || (hangs && ends_open(last.text)) ||
               (is_small(row) && alike);
    }

    // An email or a telephone number begins a line of its own, and so does what introduces one.
    static bool reaches_somebody(const OldRow& row) {
        constexpr std::size_t most = 3; // words of a caption
        for (std::size_t i = 1; i < std::min(row.words.size(), most + 1); ++i)
            if (const std::string_view word = row.words[i].text;
                row.words[i - 1].text.ends_with(':') &&
                (word.starts_with("http") || word.find('@') != word.npos))
                return true;
        const std::string text = row.text();
        return row.words.front().text.find('@') != std::string::npos ||
               (row.words.size() <= 4 && std::ranges::count_if(text, is_figure) >= 7 &&
                text.find_first_of("-./") != std::string::npos &&
                text.find(',') == std::string::npos);
    }

    // `September 2026 – Present · 180 hours`: dates below a head that filled its line.
    static bool opens_range(const OldRow& row) {
        if (row.words.size() < 4) return false;
        const std::string_view year = row.words[1].text, dash = row.words[2].text;
        const std::string month = lower_case(trimmed(row.words[0].text, ".,"));
        return trade::month_named(month) && year.size() == 4 && all_figures(year) &&
               (dash == "-" || dash == "\u2013" || dash == "\u2014" || dash == "to");
    }

    // `Brandt, O. (2024). …`, `Brandt O, …` below another: a surname and initials, or the same one.
    static bool opens_reference(const OldRow& row, const OldRow& above) {
        if (row.words.size() < 3) return false;
        const std::string_view first = row.words[0].text, second = row.words[1].text;
        const bool initial = is_capital_letter(second.front()) &&
                             ((second.size() < 4 && second.find('.') != second.npos) ||
                              (second.size() < 5 && second.ends_with(',')));
        return is_capital_letter(first.front()) && first.size() > 2 &&
               (initial || (first.ends_with(',') && first == above.words.front().text));
    }

    // `Position: …` below `Employer: …`
    static bool opens_with_caption(const OldRow& row) {
        constexpr std::size_t most = 3; // words of a caption
        for (std::size_t i = 0; i + 1 < std::min(row.words.size(), most + 1); ++i)
            if (row.words[i].text.ends_with(':'))
                return is_capital_letter(row.words.front().text.front());
        return false;
    }

    static bool opens_quote(const OldRow& row) {
        const std::string_view first = row.words.front().text;
        return first.starts_with("\u201C") || first.starts_with('"');
    }

    // Both begin as sentences do and go on in small letters, and few lines here are long.
    bool begins_phrase(const OldRow& row, const OldRow& above) const {
        const std::string_view first = trimmed(row.words.front().text, ".,");
        return 4 * wide_ <= std::ssize(lines_) && !above.words.back().text.ends_with('.') &&
               is_mostly_small(row) && is_mostly_small(above) && is_word_(lower_case(first));
    }

    static bool is_mostly_small(const OldRow& row) {
        const auto small = std::ranges::count_if(
            row.words, [](const OldWord& word) { return is_small_letter(word.text.front()); });
        return 2 * small > std::ssize(row.words);
    }

    // Of short lines one is the longest, and no edge stopped it.
    bool is_widest_by_chance() const { return wide_ < 2 && lines_.size() > 3; }

    // What stands apart from a short name leaves no room beside it, and the name is whole.
    bool is_short_beside_others() const {
        const std::size_t apart = apart_at(last_->words);
        const double reach = last_->words[apart - 1].right - last_->left();
        return apart < last_->words.size() && reach < (last_->column_right - last_->left()) * 0.4;
    }

    // A list of short lines, each with its date, fills a narrow column without going on.
    static bool ends_with_date(const OldRow& row) {
        constexpr std::size_t looked_at = 3; // words
        const std::size_t end = apart_at(row.words);
        for (std::size_t i = end - std::min(end, looked_at); i < end; ++i) {
            const std::string_view bare = trimmed(row.words[i].text, " .,;()");
            if (bare.size() >= 4 && all_figures(bare.substr(bare.size() - 4))) return true;
            if (i + 1 == end && goes_on_today(bare)) return true;
        }
        return false;
    }

    // `Present` or `May 2026` below `3/2023-`, which had no room for it.
    static bool ends_range(const OldRow& row, const OldRow& above) {
        const std::string_view open = above.words.back().text;
        const std::string_view last = trimmed(row.words.back().text, " .,;()");
        const bool ends = goes_on_today(last) || (last.size() == 4 && all_figures(last));
        return row.words.size() <= 2 && ends && has_digit(open) &&
               (open.ends_with('-') || open.ends_with("\u2013"));
    }

    // `2022–now`, and `present` by itself.
    static bool goes_on_today(std::string_view word) {
        const std::string lower = lower_case(word);
        return std::ranges::any_of(
            std::array<std::string_view, 4>{"present", "now", "current", "ongoing"},
            [&](std::string_view today) {
                return lower == today || (lower.ends_with(today) && has_digit(lower));
            });
    }

    static const OldWord& main_end(const OldRow& row) { return row.words[apart_at(row.words) - 1]; }

    // The line above had no room for this one's first word, or no more than `room`, in pt.
    bool is_full(const OldLine& line, double room = 0) const {
        const std::size_t apart = apart_at(last_->words);
        const bool has_apart = apart < last_->words.size();
        const double edge =
            has_apart ? last_->words[apart].left - line.height() / 3 : last_->column_right + 0.5;
        const OldWord& first = line.words.front();
        const double space = 0.2 * line.height();
        return last_->words[apart - 1].right + space + first.right - first.left > edge - room;
    }

    void append(OldRow row) {
        OldRow& above = rows_.back();
        const bool last = above.item || ends_range(row, above);
        const std::size_t at = last ? above.words.size() : apart_at(above.words);
        OldWord& end = above.words[at - 1];
        OldWord& first = row.words.front();
        std::size_t from = 0;
        const bool hyphen =
            end.text.size() > 1 && (end.text.ends_with('-') || end.text.ends_with("\u2010"));
        const std::size_t sign = end.text.ends_with('-') ? 1 : 3;
        if (hyphen && is_ascii_letter(end.text[end.text.size() - sign - 1]) &&
            is_ascii_letter(first.text.front())) {
            const std::string_view half =
                std::string_view(end.text).substr(0, end.text.size() - sign);
            const std::string_view begin = half.substr(half.find_last_of("-/(") + 1);
            if (divides_word(begin, first.text.substr(0, first.text.find('-')), sign == 1,
                             is_word_))
                end.text = std::string(half);
            end.text += first.text;
            from = 1;
        }
        above.words.insert(above.words.begin() + static_cast<std::ptrdiff_t>(at),
                           row.words.begin() + static_cast<std::ptrdiff_t>(from), row.words.end());
    }

    std::span<const OldLine> lines_;
    const IsWord& is_word_;
    std::vector<OldRow> rows_;
    const OldLine* last_ = nullptr;
    double usual_gap_ = 0;
    std::ptrdiff_t wide_ = 0; // lines that reach the right edge, or nearly
};

}

std::vector<OldRow> rows_below(std::span<const OldLine> lines, const IsWord& is_word) {
    return RowJoiner(lines, is_word).join();
}

}
