// Stretches of words that read as a date: as they stand, or with what people write beside it
// brought to the form that the markup has.
#include "compiler/transcription/old_dates.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/stages/model/dates.hpp"
#include "compiler/trade/months.hpp"
#include "compiler/transcription/lists.hpp"

#include <algorithm>
#include <array>

namespace quoin::transcription {

namespace {

constexpr std::size_t most_words_of_line = 40, longest_dates = 8;

// `5/23`: a month and the end of a year. Where the year's figures begin, or 0.
std::size_t year_after_month(std::string_view text) {
    const std::size_t slash = text.find('/');
    if (slash == text.npos || slash == 0 || slash > 2 || text.size() != slash + 3) return 0;
    const bool figures = all_figures(text.substr(0, slash)) && all_figures(text.substr(slash + 1));
    const int month = figures ? std::stoi(std::string(text.substr(0, slash))) : 0;
    return month >= 1 && month <= 12 ? slash + 1 : 0;
}

// A figure that may be a year: `2026`, `'17`, `5/23`, `2017–19`.
bool may_hold_year(std::string_view word) {
    const std::string_view bare = trimmed(word, " ,;.()");
    for (const std::string_view dash : {"\u2013", "-"})
        if (year_after_month(bare.substr(0, bare.find(dash))) > 0) return true;
    std::size_t figures = 0;
    for (std::size_t i = 0; i <= word.size(); ++i) {
        const bool figure = i < word.size() && is_figure(word[i]);
        if (!figure && figures == 4) {
            const std::string_view century = word.substr(i - 4, 2);
            if (century == "19" || century == "20") return true;
        }
        figures = figure ? figures + 1 : 0;
    }
    const std::string straight = straight_apostrophes(trimmed(word, " ("));
    return straight.starts_with('\'') && straight.size() >= 3 && is_figure(straight[1]);
}

std::string_view without_brackets(std::string_view text) {
    std::string_view inside = trimmed(text, " ,;:|[]");
    if (inside.starts_with('(') && inside.find(')') == inside.size() - 1)
        inside = inside.substr(1, inside.size() - 2);
    else if (inside.ends_with(')') && inside.find('(') == inside.npos)
        inside.remove_suffix(1);
    if (inside.ends_with('.') && inside.size() > 4 &&
        is_letter_or_figure(inside[inside.size() - 2]))
        inside.remove_suffix(1);
    return inside;
}

struct Wording {
    std::string_view from, to;
};

// What people write, and what the markup reads in its place.
constexpr std::array<Wording, 23> wordings = {{{"summers, ", "summers "},
                                               {"summers of ", "summers "},
                                               {" to date", " to present"},
                                               {" till ", " to "},
                                               {" thru ", " to "},
                                               {" & ", " and "},
                                               {"scheduled for ", "expected "},
                                               {"planned for ", "expected "},
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

// `9/22` to `9/2022`
std::string with_centuries_after_months(const std::string& text) {
    constexpr int last_of_this = 50; // `9/55` was long ago
    std::string result;
    for (const std::string_view word : pieces_of(text, " ")) {
        result += result.empty() ? "" : " ";
        std::string whole;
        for (const std::string_view dash : {"\u2013", "-", ""}) {
            const std::size_t cut = dash.empty() ? word.size() : word.find(dash);
            if (cut == word.npos) continue;
            const std::string_view first = word.substr(0, cut);
            const std::string_view second = dash.empty() ? "" : word.substr(cut + dash.size());
            for (const std::string_view half : {first, second}) {
                const std::string_view bare = trimmed(half, ",");
                const std::size_t year = year_after_month(bare);
                if (year > 0)
                    whole.append(bare.substr(0, year))
                        .append(std::stoi(std::string(bare.substr(year))) > last_of_this ? "19"
                                                                                         : "20")
                        .append(half.substr(year));
                else
                    whole += half;
                if (half.data() == first.data() && !dash.empty()) whole += dash;
            }
            break;
        }
        result += whole;
    }
    return result;
}

// `2017–19`, `'17`: the century that is left out.
std::string with_centuries(std::string text) {
    text = with_centuries_after_months(text);
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

// Up to when a licence is good, and what says so before the date (common practice).
constexpr std::array<std::string_view, 24> expiry_phrases = {"exp. ",
                                                             "exp ",
                                                             "exp: ",
                                                             "expires ",
                                                             "expires: ",
                                                             "expires on ",
                                                             "expiring ",
                                                             "expiration ",
                                                             "expiration: ",
                                                             "expiration date: ",
                                                             "expiry ",
                                                             "expiry: ",
                                                             "valid through ",
                                                             "valid to ",
                                                             "valid until ",
                                                             "valid thru ",
                                                             "good through ",
                                                             "good until ",
                                                             "current through ",
                                                             "current to ",
                                                             "active through ",
                                                             "through ",
                                                             "until ",
                                                             "thru "};

std::size_t expiry_at_start(std::string_view text) {
    const std::string lower = lower_case(text);
    std::size_t longest = 0;
    for (const std::string_view phrase : expiry_phrases)
        if (lower.starts_with(phrase)) longest = std::max(longest, phrase.size());
    return longest;
}

bool tells_expiry(std::string_view text) {
    return expiry_at_start(trimmed(text, " (")) > 0;
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
    if (const std::size_t expiry = expiry_at_start(plain); expiry > 0) {
        auto date = read_written(std::string_view(plain).substr(expiry), languages);
        return date && !date->dates.start ? date : std::nullopt;
    }
    const std::string other = with_centuries(reworded(plain));
    if (other == plain || other.empty()) return std::nullopt;
    if (auto dates = portal::dates_in_any(other, {})) return ReadDates{other, *dates};
    return std::nullopt;
}

// `2024 (GPA 3.9)`: what is in the parentheses is no remark on the date.
bool tells_average(std::string_view remark) {
    return has_phrase(lower_case(remark), "gpa");
}

// What tells more of a date than its markup can: how often, in which part of a day or of a year.
bool is_time_word(std::string_view word) {
    const std::string lower = lower_case(trimmed(word, " ,.:;()"));
    return is_one_of(lower, List::time_words) || trade::month_named(lower).has_value();
}

class DateFinder {
public:
    DateFinder(const std::vector<OldWord>& words, const portal::PageLanguages& languages)
        : words_(words), languages_(languages) {}

    std::vector<DatesOnLine> find() {
        std::size_t begin = 0;
        while (begin < words_.size())
            begin = std::max(longest_at(begin), found_end());
        for (std::size_t i = 1; i < found_.size();)
            join_neighbours(i) ? void(found_.erase(found_.begin() + static_cast<std::ptrdiff_t>(i)))
                               : void(++i);
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
        // `2020 – Diploma`: the dash parts what follows from the date
        if (end < words_.size() && !words_[end].apart && is_dash(words_[end - 1].text) &&
            words_[end - 1].text != "to")
            return false;
        if (in_quotes(begin)) return false;
        const std::string text = joined_words(words_, begin, end);
        const auto read = read_written(text, languages_);
        if (!read || tells_average(read->dates.remark)) return false;
        const std::size_t to = end_with_time_words(end);
        const std::size_t from = begin_of_parentheses(begin_with_time_words(begin), to);
        const std::string written = joined_words(words_, from, to);
        const bool other = read->value != without_brackets(written);
        DatesOnLine dates{from, to, read->value, other ? written : "",
                          read->dates.start.has_value() || !read->dates.end};
        dates.expires = tells_expiry(text);
        dates.in_parentheses = words_[from].text.starts_with('(');
        dates.glued = is_glued(from) && !dates.in_parentheses && !dates.expires;
        dates.aside =
            to < words_.size() && !words_[to].apart && (dates.glued || opens_sentence(from, to));
        found_.push_back(std::move(dates));
        return true;
    }

    // `2021, refreshed 2022`
    bool join_neighbours(std::size_t at) {
        DatesOnLine &first = found_[at - 1], &second = found_[at];
        if (first.end != second.begin || words_[second.begin].apart || second.expires) return false;
        const auto both = read_written(first.value + ", " + second.value, languages_);
        if (!both || words_[first.end - 1].text.find(',') == std::string::npos) return false;
        first.written = joined_words(words_, first.begin, second.end);
        first.value = both->value;
        first.end = second.end;
        first.range = true;
        return true;
    }

    // What stands before a piece: an edge, white, a sign or a comma.
    bool begins_piece(std::size_t at) const {
        if (at == 0 || words_[at].apart || words_[at].text.starts_with('(')) return true;
        const std::string_view before = words_[at - 1].text;
        return before.ends_with(',') || before.ends_with(';') || before.ends_with(':') ||
               std::ranges::none_of(before, is_word_byte);
    }

    // `Mondays, 2020–`, `every June since 2019`, where nothing else is in the piece.
    std::size_t begin_with_time_words(std::size_t begin) const {
        constexpr std::size_t most = 5;
        std::size_t at = begin, best = begin;
        for (std::size_t count = 0; count < most && at > 0; ++count) {
            if (words_[at].apart || words_[at].text.starts_with('(')) break;
            if (!is_time_word(words_[at - 1].text)) break;
            if (found_end() > --at) break;
            if (begins_piece(at)) best = at;
        }
        return best;
    }
    std::size_t end_with_time_words(std::size_t end) const {
        constexpr std::size_t most = 3;
        for (std::size_t at = end; at <= words_.size() && at <= end + most; ++at) {
            const bool whole = at == words_.size() || words_[at].apart ||
                               words_[at - 1].text.ends_with(')') ||
                               std::ranges::none_of(words_[at].text, is_word_byte);
            if (whole) return at;
            if (words_[at - 1].text.ends_with(',') || !is_time_word(words_[at].text)) break;
        }
        return end;
    }
    // `(120 hrs, Fall 2023)`: with what else stands in the parentheses.
    std::size_t begin_of_parentheses(std::size_t begin, std::size_t end) const {
        constexpr std::size_t most = 5; // words
        if (!words_[end - 1].text.ends_with(')') ||
            words_[begin].text.find('(') != std::string::npos)
            return begin;
        for (std::size_t at = begin; at-- > found_end() && begin - at <= most;) {
            if (words_[at].text.find(')') != std::string::npos) break;
            if (words_[at].text.starts_with('(')) return at;
        }
        return begin;
    }
    std::size_t found_end() const { return found_.empty() ? 0 : found_.back().end; }

    // `Since 2021 also lead the story hour.`
    bool opens_sentence(std::size_t begin, std::size_t end) const {
        const std::string_view last = words_.back().text;
        return begin == 0 && last.ends_with('.') && is_small_letter(words_[end].text.front());
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
