// Stretches of words that read as a date: as they stand, or with what people write beside it
// brought to the form that the markup has.
#include "compiler/transcription/old_dates.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/stages/model/dates.hpp"

#include <algorithm>
#include <array>

namespace quoin::transcription {

namespace {

constexpr std::size_t most_words_of_line = 40, longest_dates = 8;

// A figure that may be a year: `2026`, `'17`, `5/23`, `2017–19`.
bool may_hold_year(std::string_view word) {
    std::size_t figures = 0;
    for (std::size_t i = 0; i <= word.size(); ++i) {
        const bool figure = i < word.size() && is_figure(word[i]);
        if (!figure && figures == 4) {
            const std::string_view century = word.substr(i - 4, 2);
            if (century == "19" || century == "20") return true;
        }
        figures = figure ? figures + 1 : 0;
    }
    return word.starts_with('\'') && word.size() >= 3 && is_figure(word[1]);
}

std::string_view without_brackets(std::string_view text) {
    std::string_view inside = trimmed(text, " ,;|[]");
    if (inside.starts_with('(') && inside.find(')') == inside.size() - 1)
        inside = inside.substr(1, inside.size() - 2);
    if (inside.ends_with('.') && inside.size() > 4 && is_figure(inside[inside.size() - 2]))
        inside.remove_suffix(1);
    return inside;
}

struct Wording {
    std::string_view from, to;
};

// What people write, and what the markup reads in its place.
constexpr std::array<Wording, 21> wordings = {{{"summers, ", "summers "},
                                               {"summers of ", "summers "},
                                               {" to date", " to present"},
                                               {" till ", " to "},
                                               {" thru ", " to "},
                                               {" & ", " and "},
                                               {"exp. ", "expected "},
                                               {"exp ", "expected "},
                                               {"expires ", ""},
                                               {"expiring ", ""},
                                               {"renewed ", ""},
                                               {"issued ", ""},
                                               {"earned ", ""},
                                               {"completed ", ""},
                                               {"from ", ""},
                                               {"valid through ", ""},
                                               {" seasons", ""},
                                               {" season", ""},
                                               {"starting ", "since "},
                                               {"began ", "since "},
                                               {"anticipated: ", "anticipated "}}};

std::string reworded(std::string_view text) {
    std::string result = straight_apostrophes(text);
    for (const Wording& wording : wordings) {
        const std::string now = lower_case(result);
        if (const std::size_t at = now.find(wording.from); at != std::string::npos)
            result = result.substr(0, at) + std::string(wording.to) +
                     result.substr(at + wording.from.size());
    }
    // `2021-`: it goes on
    for (const std::string_view dash : {"-", "\u2013", "\u2014"})
        if (result.size() > dash.size() + 3 && result.ends_with(dash)) return result + " present";
    return result;
}

// `2017–19`, `'17`: the century that is left out.
std::string with_centuries(std::string text) {
    for (std::size_t at = text.find('\''); at != std::string::npos; at = text.find('\'', at + 1))
        if (at + 2 < text.size() && is_figure(text[at + 1]) && is_figure(text[at + 2]))
            text.replace(at, 1, "20");
    for (const std::string_view dash : {"\u2013", "-"}) {
        const std::size_t at = text.find(dash);
        const std::size_t after = at + dash.size();
        if (at == std::string::npos || at < 4 || after + 2 != text.size()) continue;
        const std::string_view year = std::string_view(text).substr(at - 4, 4);
        if (all_figures(year) && all_figures(std::string_view(text).substr(after)))
            return text.substr(0, after) + std::string(year.substr(0, 2)) + text.substr(after);
    }
    return text;
}

struct ReadDates {
    std::string value;
    model::DateRange dates;
};

std::optional<ReadDates> read_written(std::string_view written,
                                      const portal::PageLanguages& languages) {
    const std::string plain(without_brackets(written));
    if (plain.empty()) return std::nullopt;
    if (auto dates = portal::dates_in_any(plain, languages)) return ReadDates{plain, *dates};
    const std::string other = with_centuries(reworded(plain));
    if (other == plain || other.empty()) return std::nullopt;
    if (auto dates = portal::dates_in_any(other, {})) return ReadDates{other, *dates};
    return std::nullopt;
}

bool tells_expiry(std::string_view text) {
    const std::string lower = lower_case(text);
    return lower.starts_with("exp. ") || lower.starts_with("expires") ||
           lower.starts_with("expiring") || lower.starts_with("valid") || lower.starts_with("(exp");
}

class DateFinder {
public:
    DateFinder(const std::vector<OldWord>& words, const portal::PageLanguages& languages)
        : words_(words), languages_(languages) {}

    std::vector<DatesOnLine> find() {
        std::size_t begin = 0;
        while (begin < words_.size())
            begin = longest_at(begin);
        return std::move(found_);
    }

private:
    // Where to go on looking.
    std::size_t longest_at(std::size_t begin) {
        const std::size_t most = std::min(words_.size(), begin + longest_dates);
        for (std::size_t end = most; end > begin; --end)
            if (take(begin, end)) return end;
        return begin + 1;
    }

    bool take(std::size_t begin, std::size_t end) {
        const auto first = words_.begin() + static_cast<std::ptrdiff_t>(begin);
        const auto last = words_.begin() + static_cast<std::ptrdiff_t>(end);
        if (std::none_of(first, last, [](const OldWord& w) { return may_hold_year(w.text); }))
            return false;
        if (crosses_white(begin, end)) return false;
        if (in_quotes(begin)) return false;
        const std::string text = joined_words(words_, begin, end);
        const auto read = read_written(text, languages_);
        if (!read) return false;
        const bool other = read->value != without_brackets(text);
        DatesOnLine dates{begin, end, read->value, other ? text : "",
                          read->dates.start.has_value() || !read->dates.end};
        dates.expires = tells_expiry(text);
        dates.in_parentheses = first->text.starts_with('(');
        dates.glued = is_glued(begin) && !dates.in_parentheses && !dates.expires;
        dates.aside = dates.glued && end < words_.size() && !words_[end].apart;
        found_.push_back(std::move(dates));
        return true;
    }

    // White parts, but for that around the dash of a range, and so do signs between pieces.
    bool crosses_white(std::size_t begin, std::size_t end) const {
        for (std::size_t i = begin; i < end; ++i)
            if (words_[i].text == "\u00B7" || words_[i].text == "\u2022" || words_[i].text == "|")
                return true;
        for (std::size_t i = begin + 1; i < end; ++i)
            if (words_[i].apart && !is_dash(words_[i].text) && !is_dash(words_[i - 1].text))
                return true;
        return false;
    }
    static bool is_dash(std::string_view word) {
        return word == "-" || word == "\u2013" || word == "\u2014" || word == "to";
    }

    // A title of a work may hold years.
    bool in_quotes(std::size_t begin) const {
        int open = 0;
        for (std::size_t i = 0; i < begin; ++i) {
            open += words_[i].text.find("\u201C") != std::string::npos;
            open -= words_[i].text.find("\u201D") != std::string::npos;
        }
        return open > 0;
    }

    // By nothing but a space: `section leader 2021`.
    bool is_glued(std::size_t begin) const {
        if (begin == 0 || words_[begin].apart) return false;
        const std::string_view before = words_[begin - 1].text;
        const bool tells = std::ranges::any_of(before, is_letter_or_figure);
        return tells &&
               (is_word_byte(before.back()) || before.ends_with('.') || before.ends_with(')'));
    }

    const std::vector<OldWord>& words_;
    const portal::PageLanguages& languages_;
    std::vector<DatesOnLine> found_;
};

}

std::vector<DatesOnLine> dates_on(const std::vector<OldWord>& words,
                                  const portal::PageLanguages& languages) {
    if (words.size() > most_words_of_line) return {};
    return DateFinder(words, languages).find();
}

}
