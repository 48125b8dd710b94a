// Entries of a section: heading lines, their dates, and the bullets below them.
#include "compiler/portal/found.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/portal/letters.hpp"

#include <algorithm>
#include <array>

namespace quoin::portal {

namespace {

constexpr std::size_t most_words_of_dates = 12; // two ranges, a remark on them
constexpr std::size_t most_lines_of_heading = 3;

struct ByteStretch {
    std::size_t begin = 0, end = 0;
};

std::vector<ByteStretch> words_of(std::string_view line) {
    std::vector<ByteStretch> words;
    for (std::size_t at = 0; at < line.size();) {
        const std::size_t begin = line.find_first_not_of(' ', at);
        if (begin == std::string_view::npos) break;
        const std::size_t end = std::min(line.find(' ', begin), line.size());
        words.push_back({begin, end});
        at = end;
    }
    return words;
}

// A year that a résumé may name; with the dates of one line this keeps most candidates away from
// the grammar.
bool has_year(std::string_view text) {
    std::size_t digits = 0;
    for (std::size_t i = 0; i <= text.size(); ++i) {
        const bool digit = i < text.size() && is_figure(text[i]);
        if (!digit && digits == 4 &&
            (text.substr(i - 4, 2) == "19" || text.substr(i - 4, 2) == "20"))
            return true;
        digits = digit ? digits + 1 : 0;
    }
    return false;
}

// Parentheses and commas around a date are no part of it.
ByteStretch stripped(std::string_view line, ByteStretch span) {
    constexpr std::string_view before = " ([,|;:", after = " )],|;:.";
    while (span.begin < span.end && before.find(line[span.begin]) != std::string_view::npos)
        ++span.begin;
    while (span.begin < span.end && after.find(line[span.end - 1]) != std::string_view::npos)
        --span.end;
    const std::string_view inside = line.substr(span.begin, span.end - span.begin);
    // `May 2027 (expected)`: the parenthesis belongs to what stands inside
    if (inside.find('(') != std::string_view::npos && inside.find(')') == std::string_view::npos &&
        span.end < line.size() && line[span.end] == ')')
        ++span.end;
    return span;
}

std::optional<FoundDates> dates_within(std::string_view line, ByteStretch span,
                                       const PageLanguages& languages) {
    span = stripped(line, span);
    const std::string_view text = line.substr(span.begin, span.end - span.begin);
    if (text.empty() || !has_year(text)) return std::nullopt;
    const auto dates = dates_in_any(text, languages);
    if (!dates) return std::nullopt;
    return FoundDates{std::string(text), edtf(*dates), span.begin, span.end};
}

// Signs that begin a bullet; U+F0B7 is the bullet of a symbol font without a map to Unicode.
constexpr std::array<std::string_view, 16> bullet_signs = {
    "\u2022", "\u25E6", "\u25AA", "\u25CF", "\u25CB", "\u25A0", "\u25A1", "\u2023",
    "\u2043", "\u00B7", "\u2013", "\u2014", "-",      "*",      "\uF0B7", "\uF0A7"};

// What parts a date from the rest of its line.
std::string_view without_separators(std::string_view text) {
    constexpr std::array<std::string_view, 12> separators = {
        " ", ",", "|", ";", "(", ")", "\u00B7", "\u2022", "\u2013", "\u2014", "\u00A0", "/"};
    for (bool more = true; more;) {
        more = false;
        for (const std::string_view one : separators) {
            if (text.starts_with(one)) {
                text.remove_prefix(one.size());
                more = true;
            }
            if (text.ends_with(one)) {
                text.remove_suffix(one.size());
                more = true;
            }
        }
    }
    return text;
}

// The least gap between lines below one another, of the lines from `begin` to `end`.
double least_gap(const Reading& reading, std::size_t begin, std::size_t end) {
    double least = 1e6;
    for (std::size_t i = begin + 1; i < end; ++i) {
        const ReadLine& before = reading.lines[i - 1];
        const ReadLine& line = reading.lines[i];
        if (before.page == line.page && line.box.top > before.box.middle())
            least = std::min(least, line.box.top - before.box.bottom);
    }
    return least;
}

class EntryFinder {
public:
    EntryFinder(const Reading& reading, const PageLanguages& languages, std::size_t section,
                std::string_view name, double least_gap)
        : reading_(reading), languages_(languages), section_(section), name_(name),
          least_gap_(least_gap) {}

    void take(std::size_t at) {
        const ReadLine& line = reading_.lines[at];
        if (is_running_head(line)) return;
        take(line);
        before_ = &line;
    }

    std::vector<FoundEntry> result() { return std::move(entries_); }

private:
    void take(const ReadLine& line) {
        if (is_bullet_sign(line.words.front().text)) {
            if (!entries_.empty()) ++entries_.back().bullets;
            in_bullets_ = true;
            page_ = line.page;
            text_left_ = line.words.size() > 1 ? line.words[1].box.left : line.box.right;
            return;
        }
        if (in_bullets_ && continues_bullet(line)) return;
        take_heading(line);
        in_bullets_ = false;
    }

    // `Ottoline Brandt, page 2`
    bool is_running_head(const ReadLine& line) const {
        constexpr double part = 0.1;
        const double height = reading_.pages[line.page].height;
        const bool at_edge = line.box.bottom < height * part || line.box.top > height * (1 - part);
        return line.page > 0 && at_edge && !name_.empty() &&
               line.text().find(name_) != std::string::npos;
    }

    // Where a bullet's further lines begin: below its text, not below its sign.
    bool continues_bullet(const ReadLine& line) const {
        constexpr double slack = 2; // pt
        return line.page == page_ && line.box.left > text_left_ - slack &&
               line.box.left < text_left_ + 3 * line.box.height();
    }

    void take_heading(const ReadLine& line) {
        const std::string text = line.text();
        const auto dates = find_dates(text, languages_);
        if (entries_.empty() || in_bullets_ || is_apart(line) ||
            (dates && is_another(text, *dates)))
            start_entry(line);
        FoundEntry& entry = entries_.back();
        if (dates && entry.dates.empty()) {
            entry.dates = dates->text;
            entry.edtf = dates->edtf;
        }
        const std::string title = dates ? without(text, *dates) : text;
        if (++lines_ > most_lines_of_heading || title.empty()) return;
        entry.title.append(entry.title.empty() ? "" : ", ").append(title);
    }

    void start_entry(const ReadLine& line) {
        entries_.push_back({section_, "", "", "", line.page, 0});
        lines_ = 0;
    }

    // A gap that is wider than between the lines of one entry.
    bool is_apart(const ReadLine& line) const {
        return before_ && before_->page == line.page &&
               line.box.top - before_->box.bottom > least_gap_ + line.box.height() / 3;
    }

    // A list of entries, each a line that ends with its date. In parentheses or before the end
    // the date is of something that the entry tells.
    bool is_another(const std::string& text, const FoundDates& dates) const {
        const bool in_parentheses = dates.begin > 0 && text[dates.begin - 1] == '(';
        return !entries_.back().dates.empty() && dates.end == text.size() && !in_parentheses;
    }

    static std::string without(const std::string& text, const FoundDates& dates) {
        const std::string_view before =
            without_separators(std::string_view(text).substr(0, dates.begin));
        const std::string_view after = without_separators(std::string_view(text).substr(dates.end));
        return std::string(before) + (before.empty() || after.empty() ? "" : ", ") +
               std::string(after);
    }

    const Reading& reading_;
    const PageLanguages& languages_;
    std::size_t section_;
    std::string_view name_;
    std::vector<FoundEntry> entries_;
    double least_gap_; // between two lines of the section
    const ReadLine* before_ = nullptr;
    bool in_bullets_ = false;
    double text_left_ = 0;
    std::size_t page_ = 0, lines_ = 0;
};

bool has_entries(const FoundSection& section) {
    if (!section.holds) return true;
    switch (*section.holds) {
    case trade::Holds::skills:
    case trade::Holds::languages:
    case trade::Holds::prose:
        return false;
    default:
        return true;
    }
}

}

bool is_bullet_sign(std::string_view word) {
    return is_one_of(word, bullet_signs);
}

std::optional<FoundDates> find_dates(std::string_view line, const PageLanguages& languages) {
    const std::vector<ByteStretch> words = words_of(line);
    for (std::size_t end = words.size(); end > 0; --end) {
        // the longest that ends here
        std::optional<FoundDates> found;
        for (std::size_t count = 1; count <= std::min(most_words_of_dates, end); ++count)
            if (auto dates =
                    dates_within(line, {words[end - count].begin, words[end - 1].end}, languages))
                found = std::move(dates);
        if (found) return found;
    }
    return std::nullopt;
}

std::vector<FoundEntry> find_entries(const Reading& reading,
                                     const std::vector<FoundSection>& sections,
                                     std::string_view name, const PageLanguages& languages) {
    std::vector<FoundEntry> entries;
    for (std::size_t i = 0; i < sections.size(); ++i) {
        if (!has_entries(sections[i])) continue;
        const std::size_t end =
            i + 1 < sections.size() ? sections[i + 1].line : reading.lines.size();
        EntryFinder finder(reading, languages, i, name,
                           least_gap(reading, sections[i].line + 1, end));
        for (std::size_t line = sections[i].line + 1; line < end; ++line)
            if (!is_continued(reading.lines[line].text(), sections[i], languages))
                finder.take(line);
        std::ranges::move(finder.result(), std::back_inserter(entries));
    }
    return entries;
}

}
