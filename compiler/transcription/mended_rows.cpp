#include "compiler/transcription/mended_rows.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/stages/model/dates.hpp"
#include "compiler/trade/months.hpp"
#include "compiler/transcription/old_dates.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>
#include <variant>

namespace quoin::transcription {

namespace {

std::size_t words_of_first_cell(const OldRow& row) {
    std::size_t end = 1;
    while (end < row.words.size() && !row.words[end].apart)
        ++end;
    return end;
}

bool is_date(const std::vector<OldWord>& words, const portal::PageLanguages& languages) {
    const auto dates = dates_on(words, languages);
    return dates.size() == 1 && dates.front().begin == 0 && dates.front().end == words.size();
}

// From a month to a later one; two years below each other may be of two entries.
bool runs_forward(const std::vector<OldWord>& words, const portal::PageLanguages& languages) {
    const auto found = dates_on(words, languages);
    auto read = model::read_dates(found.front().value);
    const auto* dates = std::get_if<model::DateRange>(&read);
    return dates && dates->start && dates->end && words.size() > 3 &&
           model::months(*dates->start).first <= model::months(*dates->end).first;
}

// `JUN 2012 –` in the margin, and `JUN 2020` below it beside the next row: one date on the first.
bool take_date_below(OldRow& row, OldRow& below, const portal::PageLanguages& languages) {
    constexpr double slack = 3; // pt
    const std::size_t first = words_of_first_cell(row), second = words_of_first_cell(below);
    if (row.item || below.item || below.running || first == row.words.size()) return false;
    const bool level = std::abs(row.words.front().left - below.words.front().left) < slack ||
                       std::abs(row.words[first - 1].right - below.words[second - 1].right) < slack;
    if (!level) return false;
    std::vector<OldWord> both(row.words.begin(),
                              row.words.begin() + static_cast<std::ptrdiff_t>(first));
    const std::string last = both.back().text;
    const bool open =
        last.ends_with('-') || last.ends_with("\u2013") || last == "to" || !has_digit(last);
    const std::vector<OldWord> beside(below.words.begin(),
                                      below.words.begin() + static_cast<std::ptrdiff_t>(second));
    const bool ends_in_month = trade::month_named(lower_case(trimmed(last, ".,"))).has_value();
    const bool each = !ends_in_month && is_date(both, languages) && is_date(beside, languages);
    if (!open) return false;
    both.insert(both.end(), below.words.begin(),
                below.words.begin() + static_cast<std::ptrdiff_t>(second));
    for (OldWord& word : both)
        word.apart = false;
    if (!is_date(both, languages) || (each && !runs_forward(both, languages))) return false;
    both.insert(both.end(), row.words.begin() + static_cast<std::ptrdiff_t>(first),
                row.words.end());
    row.words = std::move(both);
    below.words.erase(below.words.begin(),
                      below.words.begin() + static_cast<std::ptrdiff_t>(second));
    if (below.words.empty()) return true;
    below.words.front().apart = false;
    below.left = below.mark_left = below.words.front().left;
    return true;
}

std::vector<OldRow> with_margin_dates(std::vector<OldRow> rows,
                                      const portal::PageLanguages& languages) {
    for (std::size_t i = 0; i + 1 < rows.size(); ++i)
        take_date_below(rows[i], rows[i + 1], languages);
    std::erase_if(rows, [](const OldRow& row) { return row.words.empty(); });
    return rows;
}

// Its stop ends a sentence: that of `Inc.`, of `St.` and of an initial does not.
bool ends_sentence(std::string_view word) {
    constexpr std::array<std::string_view, 18> shortened = {
        "inc.", "co.",  "corp.", "ltd.", "st.", "dept.", "no.",  "dr.",     "mr.",
        "ms.",  "mrs.", "jr.",   "sr.",  "mt.", "univ.", "vol.", "approx.", "assoc."};
    if (!word.ends_with('.') || word.size() < 3 || is_one_of(lower_case(word), shortened))
        return false;
    const std::string lower = lower_case(trimmed(word, ".,"));
    return word.find('.') == word.size() - 1 && (lower == "may" || !trade::month_named(lower));
}

// Words of the head where an entry goes on in sentences on the same row: `Cook (2019–20), Galley
// Nine, Gullhaven. Fed ninety guests.`
std::size_t head_before_sentences(const OldRow& row, const portal::PageLanguages& languages) {
    constexpr std::size_t most = 24, least_after = 3; // words
    if (row.item || !row.words.back().text.ends_with('.')) return 0;
    for (std::size_t i = 0; i + least_after < row.words.size() && i < most; ++i) {
        if (row.words[i].apart && i > 0) return 0;
        if (!ends_sentence(row.words[i].text)) continue;
        const std::vector<OldWord> head(row.words.begin(),
                                        row.words.begin() + static_cast<std::ptrdiff_t>(i + 1));
        const auto dates = dates_on(head, languages);
        const bool dated = std::ranges::any_of(
            dates, [](const DatesOnLine& one) { return !one.glued && !one.aside; });
        return dated && is_capital_letter(row.words[i + 1].text.front()) ? i + 1 : 0;
    }
    return 0;
}

std::vector<OldRow> with_sentences_apart(std::vector<OldRow> rows,
                                         const portal::PageLanguages& languages) {
    std::vector<OldRow> parted;
    for (OldRow& row : rows) {
        const std::size_t head = head_before_sentences(row, languages);
        if (head == 0) {
            parted.push_back(std::move(row));
            continue;
        }
        OldRow rest = row;
        const auto cut = static_cast<std::ptrdiff_t>(head);
        row.words.resize(head);
        row.words.back().text.pop_back();
        rest.words.erase(rest.words.begin(), rest.words.begin() + cut);
        rest.gap = 0;
        rest.item = true;
        parted.push_back(std::move(row));
        parted.push_back(std::move(rest));
    }
    return parted;
}

}

std::vector<OldRow> mended_rows(std::vector<OldRow> rows, const portal::PageLanguages& languages) {
    return with_sentences_apart(with_margin_dates(std::move(rows), languages), languages);
}

}
