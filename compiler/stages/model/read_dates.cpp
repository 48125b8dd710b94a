// Reading dates: the grammar's parse tree becomes dates, or the first thing wrong with them.
#include "compiler/stages/model/dates.hpp"

#include "compiler/base/suggest.hpp"
#include "compiler/trade/limits.hpp"
#include "compiler/trade/months.hpp"
#include "grammar/dates.hpp"
#include "grammar/messages.hpp"

#include <tao/pegtl/contrib/parse_tree.hpp>

#include <algorithm>
#include <array>
#include <charconv>
#include <chrono>
#include <iterator>
#include <optional>
#include <utility>

namespace quoin::model {
namespace {

namespace pegtl = tao::pegtl;
namespace date_rules = grammar::dates;
using DateNode = pegtl::parse_tree::node;

constexpr int first_short_year = 50; // '50 is 1950, '49 is 2049
constexpr int century = 100;

template<typename Rule>
using Kept = pegtl::parse_tree::selector<
    Rule,
    pegtl::parse_tree::store_content::on<
        date_rules::date, date_rules::iso_date, date_rules::only_year, date_rules::short_end,
        date_rules::part_start, date_rules::part_end, date_rules::start_of_month,
        date_rules::end_day, date_rules::since_range, date_rules::present, date_rules::expected,
        date_rules::year, date_rules::short_year, date_rules::wrong_year,
        date_rules::letter_in_year, date_rules::month, date_rules::iso_month,
        date_rules::month_name, date_rules::spring, date_rules::summer, date_rules::autumn,
        date_rules::winter, date_rules::day, date_rules::no_year, date_rules::unknown_word,
        date_rules::no_date, date_rules::no_end, date_rules::no_start, date_rules::only_present,
        date_rules::backwards, date_rules::nothing, date_rules::left_over, date_rules::each,
        date_rules::vague_word, date_rules::words_within, date_rules::open_question>>;

constexpr auto date_words = [] {
    std::array<std::string_view, 12 + trade::months_of_year> words{
        "Spring",  "Summer",  "Fall",     "Autumn",      "Winter",  "present",
        "ongoing", "current", "expected", "anticipated", "through", "since"};
    std::ranges::copy(trade::month_names, words.begin() + 12);
    return words;
}();

struct DatePart { // a date, and where its figures stand for what may be wrong with them
    Date date;
    std::string_view day;
    bool takes_year = false;  // the start of `May-August 2025`
    bool takes_month = false; // the end of `June 3-14, 2025`
};

int number(std::string_view digits) { // of four digits at most
    int value = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), value);
    return value;
}

// A month's name as the grammar has it: in English, or in the résumé's language.
trade::NamedMonth month_of(std::string_view name, const LocalDates& local) {
    const std::string_view word = name.substr(0, name.find('.'));
    const auto english = trade::month_named(word);
    return english ? *english : *local.month(word);
}

bool is_alike_short(const trade::NamedMonth& name, const LocalDates& local) { // May
    const std::string_view whole = trade::month_names.at(static_cast<std::size_t>(name.month - 1));
    return (name.whole && whole.size() == 3) || local.is_never_shortened(name.month);
}

// How a month and year are typed, if that tells of a form.
std::optional<trade::DateForm> form_of(const DateNode& node, const LocalDates& local) {
    if (node.children.size() != 2) return std::nullopt; // there is a day, or one of them alone
    const DateNode& first = *node.children.front();
    const DateNode& second = *node.children.back();
    if (first.is_type<date_rules::year>() && node.string_view()[4] == '-')
        return trade::DateForm::year_month;
    if (!second.is_type<date_rules::year>()) return std::nullopt;
    if (first.is_type<date_rules::month>() && node.string_view()[first.string_view().size()] == '/')
        return trade::DateForm::month_slash_year;
    if (!first.is_type<date_rules::month_name>()) return std::nullopt;
    const trade::NamedMonth name = month_of(first.string_view(), local);
    if (is_alike_short(name, local)) return std::nullopt;
    return name.whole ? trade::DateForm::long_month : trade::DateForm::short_month;
}

bool is_either_order(const DateNode& node, const Date& date) {
    return node.children.size() == 3 && node.children.front()->is_type<date_rules::month>() &&
           date.month && date.day && *date.day <= 12 && *date.day != *date.month;
}

int days_of(const Date& date) {
    const std::chrono::year_month_day_last last =
        std::chrono::year{date.year} / *date.month / std::chrono::last;
    return static_cast<int>(static_cast<unsigned>(last.day()));
}

class DateReader {
public:
    DateReader(std::string_view text, const LocalDates& local) : text_(text), local_(local) {}

    std::variant<DateRange, DateFault> read(const DateNode& root) {
        for (const auto& node : root.children)
            visit(*node);
        if (parts_.size() == 2) share();
        for (const DatePart& part : parts_)
            check_day(part);
        if (present_ && range_.expected)
            fault<date_rules::expected_present>(expected_, in_quotes(expected_));
        if (fault_) return *fault_;
        if (parts_.size() == 2 || since_ || present_) range_.start = parts_.front().date;
        if (!since_ && !present_) range_.end = parts_.back().date;
        if (each_) expand();
        range_.typed = text_;
        return range_;
    }

private:
    // The first in the text wins.
    template<typename Rule, typename... Words>
    void fault(std::string_view found, const Words&... words) {
        const auto offset = static_cast<std::size_t>(found.data() - text_.data());
        if (fault_ && fault_->offset <= offset) return;
        fault_ = DateFault{offset, found.size(), fill<grammar::message<Rule>>(words...)};
    }

    template<typename Rule>
    bool fault_if(const DateNode& node) {
        if (!node.is_type<Rule>()) return false;
        const std::string_view found = node.string_view();
        if constexpr (std::is_same_v<Rule, date_rules::nothing>)
            fault<Rule>(found);
        else
            fault<Rule>(found, in_quotes(found));
        return true;
    }

    void visit(const DateNode& node) {
        if (node.is_type<date_rules::present>()) {
            present_ = true;
        } else if (node.is_type<date_rules::expected>()) {
            range_.expected = true;
            expected_ = node.string_view();
        } else if (node.is_type<date_rules::since_range>()) {
            since_ = true;
            for (const auto& child : node.children)
                visit(*child);
        } else if (node.is_type<date_rules::short_end>()) {
            short_end(node.string_view());
        } else if (node.is_type<date_rules::unknown_word>()) {
            unknown_word(node.string_view());
        } else if (!is_fault(node)) {
            part(node);
        }
    }

    bool is_fault(const DateNode& node) {
        return fault_if<date_rules::no_year>(node) || fault_if<date_rules::no_date>(node) ||
               fault_if<date_rules::no_end>(node) || fault_if<date_rules::no_start>(node) ||
               fault_if<date_rules::only_present>(node) || fault_if<date_rules::backwards>(node) ||
               fault_if<date_rules::nothing>(node) || fault_if<date_rules::left_over>(node) ||
               fault_if<date_rules::vague_word>(node) || fault_if<date_rules::words_within>(node) ||
               fault_if<date_rules::open_question>(node);
    }

    void unknown_word(std::string_view word) {
        std::vector<std::string_view> known(date_words.begin(), date_words.end());
        known.insert(known.end(), local_.names().begin(), local_.names().end());
        if (const auto near = nearest(word, known))
            fault<date_rules::misspelt_word>(word, in_quotes(word), in_quotes(*near));
        else
            fault<date_rules::unknown_word>(word, in_quotes(word));
    }

    void part(const DateNode& node) {
        DatePart part;
        part.takes_year =
            node.is_type<date_rules::part_start>() || node.is_type<date_rules::start_of_month>();
        part.takes_month = node.is_type<date_rules::end_day>();
        if (node.is_type<date_rules::only_year>()) set_year(node.string_view(), part.date);
        for (const auto& leaf : node.children)
            set(*leaf, part);
        parts_.push_back(part);
        const std::string_view text = node.string_view();
        if (is_either_order(node, part.date))
            range_.either_order.push_back(
                {.offset = static_cast<std::size_t>(text.data() - text_.data()),
                 .length = text.size(),
                 .date = part.date,
                 .form = {},
                 .place = {}});
        if (const auto form = form_of(node, local_))
            range_.written.push_back({static_cast<std::size_t>(text.data() - text_.data()),
                                      text.size(),
                                      part.date,
                                      *form,
                                      {}});
    }

    // Behind a month and a day two figures are the year.
    void wrong_year(std::string_view digits, const DatePart& part) {
        if (digits.size() != 2) return fault<date_rules::wrong_year>(digits, in_quotes(digits));
        fault<date_rules::short_of_century>(digits, in_quotes(digits), digits);
        const bool first = text_.data() + fault_->offset == digits.data();
        if (first && part.date.month && part.date.day) fault_->mend = "20" + std::string(digits);
    }

    static bool is_season(const DateNode& leaf) {
        return leaf.is_type<date_rules::spring>() || leaf.is_type<date_rules::summer>() ||
               leaf.is_type<date_rules::autumn>() || leaf.is_type<date_rules::winter>();
    }

    void set(const DateNode& leaf, DatePart& part) {
        const std::string_view text = leaf.string_view();
        if (leaf.is_type<date_rules::year>()) set_year(text, part.date);
        if (leaf.is_type<date_rules::short_year>()) set_short_year(text, part.date);
        if (leaf.is_type<date_rules::wrong_year>()) wrong_year(text, part);
        fault_if<date_rules::letter_in_year>(leaf);
        if (leaf.is_type<date_rules::month_name>()) part.date.month = month_of(text, local_).month;
        if (leaf.is_type<date_rules::each>() || (is_season(leaf) && is_plural(text))) each_ = true;
        if (leaf.is_type<date_rules::spring>()) part.date.season = Season::spring;
        if (leaf.is_type<date_rules::summer>()) part.date.season = Season::summer;
        if (leaf.is_type<date_rules::autumn>()) part.date.season = Season::autumn;
        if (leaf.is_type<date_rules::winter>()) part.date.season = Season::winter;
        if (leaf.is_type<date_rules::month>() || leaf.is_type<date_rules::iso_month>())
            set_month(text, part.date);
        if (leaf.is_type<date_rules::day>()) {
            part.date.day = number(text);
            part.day = text;
        }
    }

    void set_year(std::string_view digits, Date& date) {
        date.year = number(digits);
        if (date.year < trade::first_year || date.year > trade::last_year)
            fault<date_rules::year_bounds>(digits, in_quotes(digits));
    }

    void set_short_year(std::string_view text, Date& date) {
        const int year = number(text.substr(text.size() - 2));
        date.year = year < first_short_year ? 2000 + year : 1900 + year;
    }

    void set_month(std::string_view digits, Date& date) {
        date.month = number(digits);
        if (*date.month < 1 || *date.month > 12)
            fault<date_rules::month>(digits, in_quotes(digits));
    }

    // `2023-24`, `1999-00`
    void short_end(std::string_view digits) {
        const int start = parts_.back().date.year;
        int end = start / century * century + number(digits);
        if (start % century == century - 1 && number(digits) == 0) end += century;
        if (end <= start) fault<date_rules::short_end>(digits, in_quotes(digits));
        parts_.push_back({.date = {.year = end, .month = {}, .season = {}, .day = {}}, .day = {}});
    }

    static bool is_plural(std::string_view season) {
        return season.back() == 's' || season.back() == 'S';
    }

    // `Summers 2024-2026` are three, of one season.
    void expand() {
        constexpr int most_spells = 6;
        if (!range_.start || !range_.end || range_.end->month) return;
        const int first = range_.start->year, last = range_.end->year;
        if (last <= first || last - first >= most_spells) return;
        range_.end->season = range_.start->season;
        for (int year = first; year <= last; ++year) {
            DateRange spell;
            spell.end = Date{year, {}, range_.start->season, {}};
            range_.spells.push_back(std::move(spell));
        }
    }

    void share() {
        range_.one_year = parts_.front().takes_year;
        if (range_.one_year) parts_.front().date.year = parts_.back().date.year;
        if (parts_.back().takes_month) parts_.back().date.month = parts_.front().date.month;
    }

    void check_day(const DatePart& part) {
        const Date& date = part.date;
        if (part.day.empty() || !date.month || *date.month < 1 || *date.month > 12) return;
        const int most = days_of(date);
        if (*date.day >= 1 && *date.day <= most) return;
        fault<date_rules::day_of_month>(part.day, in_quotes(part.day),
                                        edtf(Date{date.year, date.month, {}, {}}), most);
    }

    std::string_view text_;
    const LocalDates& local_;
    std::vector<DatePart> parts_;
    DateRange range_;
    std::string_view expected_;
    bool present_ = false;
    bool since_ = false;
    bool each_ = false; // of the seasons between
    std::optional<DateFault> fault_;
};

std::variant<DateRange, DateFault> read_spell(std::string_view text, const LocalDates& local) {
    pegtl::memory_input<pegtl::tracking_mode::lazy> in(text.data(), text.data() + text.size(), "");
    const auto root = pegtl::parse_tree::parse<date_rules::text, Kept>(in, local);
    return DateReader(text, local).read(*root);
}

// Several spells parted by the signs; none if a piece is no date, or there is but one. A comma may
// stand within a date: what is no date by itself is tried with what follows it.
class Spells {
public:
    Spells(std::string_view text, std::string_view signs, const LocalDates& local)
        : text_(text), signs_(signs), local_(local) {}

    std::optional<DateRange> read() {
        constexpr std::size_t longest = 200; // of what one could print on a line
        if (text_.size() > longest) return std::nullopt;
        std::size_t begin = 0, parted = 0;
        for (std::size_t at = 0; at < text_.size(); ++at) {
            const std::size_t sign = sign_at(at);
            if (sign == 0) continue;
            if (++parted > most_signs) return std::nullopt;
            if (take(begin, at)) begin = at + sign;
            at += sign - 1;
        }
        if (spells_.empty() || !take(begin, text_.size())) return std::nullopt;
        return together();
    }

private:
    static constexpr std::size_t most_signs = 12;

    std::size_t sign_at(std::size_t at) const {
        constexpr std::string_view between = " and ";
        if (text_.substr(at).starts_with(between)) return between.size();
        return signs_.find(text_[at]) == std::string_view::npos ? 0 : 1;
    }

    bool take(std::size_t begin, std::size_t end) {
        auto read = read_spell(text_.substr(begin, end - begin), local_);
        auto* range = std::get_if<DateRange>(&read);
        if (!range) return false;
        for (auto* dates : {&range->written, &range->either_order})
            for (WrittenDate& date : *dates)
                date.offset += begin;
        inherit_season(*range);
        spells_.push_back(std::move(*range));
        return true;
    }

    // `Summer 2024, 2025`
    void inherit_season(DateRange& range) const {
        if (spells_.empty() || range.start || !range.end || range.end->month) return;
        const DateRange& before = spells_.back();
        if (!range.end->season && !before.start && before.end)
            range.end->season = before.end->season;
    }

    static Date first_of(const DateRange& spell) { return spell.start ? *spell.start : *spell.end; }

    DateRange together() {
        DateRange all;
        all.typed = text_;
        all.start = first_of(spells_.front());
        all.end = spells_.front().end;
        for (DateRange& spell : spells_) {
            if (months(first_of(spell)).first < months(*all.start).first)
                all.start = first_of(spell);
            if (!spell.end || (all.end && months(*spell.end).last > months(*all.end).last))
                all.end = spell.end;
            all.expected = all.expected || spell.expected;
            std::ranges::move(spell.written, std::back_inserter(all.written));
            std::ranges::move(spell.either_order, std::back_inserter(all.either_order));
            spell.written.clear();
            spell.either_order.clear();
            if (spell.spells.empty())
                all.spells.push_back(std::move(spell));
            else
                std::ranges::move(spell.spells, std::back_inserter(all.spells));
        }
        return all;
    }

    std::string_view text_, signs_;
    const LocalDates& local_;
    std::vector<DateRange> spells_;
};

std::variant<DateRange, DateFault> read_spells(std::string_view text, const LocalDates& local) {
    auto whole = read_spell(text, local);
    if (std::holds_alternative<DateRange>(whole)) return whole;
    for (const std::string_view signs : {",;&+", ",;&+/"})
        if (auto spells = Spells(text, signs, local).read()) return *std::move(spells);
    return whole;
}

// Where a remark in parentheses begins that ends the text; npos if none does.
std::size_t remark_in(std::string_view text) {
    constexpr std::size_t longest_remark = 40;
    if (!text.ends_with(')')) return std::string_view::npos;
    const std::size_t open = text.rfind('(');
    const bool too_long = open != std::string_view::npos && text.size() - open > longest_remark;
    return too_long || open == 0 ? std::string_view::npos : open;
}

}

std::variant<DateRange, DateFault> read_dates(std::string_view text, const LocalDates& local) {
    auto whole = read_spells(text, local);
    const std::size_t open = remark_in(text);
    if (std::holds_alternative<DateRange>(whole) || open == std::string_view::npos) return whole;
    const auto is_expected = read_spell("2026 " + std::string(text.substr(open)), local);
    if (std::holds_alternative<DateRange>(is_expected)) return whole; // and cannot be so here
    auto before = read_spells(text.substr(0, open), local);
    auto* range = std::get_if<DateRange>(&before);
    if (!range) return whole;
    range->remark = text.substr(open + 1, text.size() - open - 2);
    range->typed = text;
    return before;
}

}
