// Finding the dates in a value, and writing them in another form.
#include "compiler/advice/date_spelling.hpp"

#include "compiler/advice/walk.hpp"
#include "compiler/trade/months.hpp"

#include <algorithm>
#include <array>
#include <charconv>

namespace quoin::advice {

namespace {

int number_of(std::string_view figures) {
    int number = 0;
    std::from_chars(figures.data(), figures.data() + figures.size(), number);
    return number;
}

class Scanner {
public:
    explicit Scanner(std::string_view text) : text_(text) {}

    std::vector<SpelledDate> run() {
        while (at_ < text_.size()) {
            if (is_ascii_letter(text_[at_]))
                word();
            else if (is_figure(text_[at_]))
                figures();
            else
                ++at_;
        }
        return std::move(found_);
    }

private:
    std::size_t run_end(std::size_t from, bool (*of)(char)) const {
        while (from < text_.size() && of(text_[from]))
            ++from;
        return from;
    }

    std::string_view figures_at(std::size_t from) const {
        return text_.substr(from, run_end(from, is_figure) - from);
    }

    // `Jun 2026`, `June, 2026`, `Sept. 2026`
    void word() {
        const std::size_t begin = at_;
        at_ = run_end(at_, is_ascii_letter);
        const auto name = trade::month_named(text_.substr(begin, at_ - begin));
        if (!name) return;
        std::size_t year_at = at_;
        while (year_at < text_.size() &&
               std::string_view(". ,").find(text_[year_at]) != std::string_view::npos)
            ++year_at;
        const std::string_view year = figures_at(year_at);
        if (year.size() != 4) return;
        at_ = year_at + year.size();
        const bool both = name->whole && name->month == 5; // May
        if (both) return;
        add(begin, name->month, year,
            name->whole ? trade::DateForm::long_month : trade::DateForm::short_month);
    }

    // `06/2026`, `2026-06`; all that hangs together by signs is one piece.
    void figures() {
        const std::size_t begin = at_;
        at_ = run_end(at_, [](char c) { return is_figure(c) || c == '/' || c == '-'; });
        std::string_view piece = text_.substr(begin, at_ - begin);
        while (!is_figure(piece.back()))
            piece.remove_suffix(1);
        if (piece.size() == 7 && piece[4] == '-')
            add(begin, number_of(piece.substr(5)), piece.substr(0, 4), trade::DateForm::year_month);
        const std::size_t slash = piece.find('/');
        if (slash != std::string_view::npos && slash <= 2 && piece.size() == slash + 5)
            add(begin, number_of(piece.substr(0, slash)), piece.substr(slash + 1),
                trade::DateForm::month_slash_year);
        // a range without spaces, `06/2025-08/2026`
        const std::size_t hyphen = piece.find('-');
        if (slash < hyphen && hyphen != std::string_view::npos) at_ = begin + hyphen;
        if (slash < hyphen && hyphen == slash + 5)
            add(begin, number_of(piece.substr(0, slash)), piece.substr(slash + 1, 4),
                trade::DateForm::month_slash_year);
    }

    void add(std::size_t begin, int month, std::string_view year, trade::DateForm form) {
        if (month < 1 || month > 12 || !std::ranges::all_of(year, is_figure)) return;
        const std::size_t end = static_cast<std::size_t>(year.data() - text_.data()) + 4;
        const std::size_t stop = form == trade::DateForm::year_month ? begin + 7 : end;
        found_.push_back({begin, stop - begin,
                          model::Date{number_of(year), month, std::nullopt, std::nullopt}, form});
    }

    std::string_view text_;
    std::size_t at_ = 0;
    std::vector<SpelledDate> found_;
};

}

std::vector<SpelledDate> spelled_dates(std::string_view text) {
    return Scanner(text).run();
}

std::string spelled(const model::Date& date, trade::DateForm form) {
    std::string text = print(model::DateRange{std::nullopt, date, false}, form);
    const std::size_t space = text.find("\u00A0");
    if (space != std::string::npos) text.replace(space, 2, " ");
    return text;
}

std::vector<Respelling> respellings(std::string_view text, trade::DateForm form) {
    std::vector<Respelling> changes;
    std::string after(text);
    std::size_t moved = 0; // how much longer the text before has become, modulo its size
    for (const SpelledDate& each : spelled_dates(text)) {
        if (each.form == form) continue;
        changes.push_back({each.offset, each.length, spelled(each.date, form)});
        const std::string& replacement = changes.back().text;
        after.replace(each.offset + moved, each.length, replacement);
        moved += replacement.size() - each.length;
    }
    const auto before = model::read_dates(text);
    const auto now = model::read_dates(after);
    const auto* one = std::get_if<model::DateRange>(&before);
    const auto* other = std::get_if<model::DateRange>(&now);
    if (!one || !other || *one != *other) changes.clear();
    return changes;
}

}
