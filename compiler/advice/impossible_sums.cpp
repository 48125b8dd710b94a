// Figures that contradict each other: parts that make more than their whole, shares of over a
// hundred percent together, a change that is not the one told, more weeks than the dates hold.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/date_order.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/english/tokens.hpp"
#include "compiler/trade/limits.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>

namespace quoin::advice {

namespace {

using english::TokenKind;

std::optional<double> count_of(std::string_view figure) { // no money, no share, no range
    std::string plain(figure);
    std::erase(plain, ',');
    double value = 0;
    const auto end = std::from_chars(plain.data(), plain.data() + plain.size(), value);
    const bool whole = end.ec == std::errc{} && end.ptr == plain.data() + plain.size();
    return whole ? std::optional(value) : std::nullopt;
}

struct TimeUnit {
    std::string_view name;
    double minutes = 0;
};
constexpr std::array time_units{TimeUnit{"minute", 1}, TimeUnit{"hour", 60}, TimeUnit{"day", 1440},
                                TimeUnit{"week", 10080}};

class Sums { // of a bullet
public:
    explicit Sums(const WordedBullet& bullet)
        : bullet_(bullet), tokens_(english::read_tokens(bullet.text, {})) {}

    void report_to(const ProofContext& context, std::vector<Finding>& findings) const {
        for (std::size_t i = 0; i < tokens_.size(); ++i) {
            if (word(i) == "including") look_at_parts(i, findings);
            if (word(i) == "from") look_at_change(i, findings);
            if (is_one_of(word(i), span_words)) look_at_span(i, context, findings);
            if (is(i, TokenKind::comma) || is_colon(i)) look_at_named_parts(i, findings);
            if (is_one_of(word(i), ages)) look_at_ages(i, findings);
            look_at_place_won(i, findings);
            look_at_those(i, findings);
            look_at_rise(i, findings);
            look_at_ratio(i, findings);
            look_at_all(i, findings);
            if (word(i) == "hours") look_at_hours(i, context, findings);
        }
        look_at_shares(findings);
    }

private:
    static constexpr std::array<std::string_view, 6> answers{"replies", "responses", "answers",
                                                             "returns", "surveys",   "forms"};
    static constexpr std::array<std::string_view, 2> span_words{"weeks", "months"};
    static constexpr std::array<std::string_view, 3> ages{"ages", "aged", "grades"};

    std::string_view word(std::size_t i) const {
        return i < tokens_.size() ? std::string_view(tokens_[i].lower) : std::string_view{};
    }
    bool is(std::size_t i, TokenKind kind) const {
        return i < tokens_.size() && tokens_[i].kind == kind;
    }

    bool is_colon(std::size_t i) const { // signs have no letters
        return is(i, TokenKind::stop) && bullet_.text[tokens_[i].extent.offset] == ':';
    }

    // `19 from Ellery`, `31 others`: what follows says that it is some of the whole.
    bool is_part(std::size_t i, std::string_view whole) const {
        constexpr std::array<std::string_view, 12> of_them{"from", "in",    "with", "who",
                                                           "at",   "under", "over", "of",
                                                           "on",   "new",   "more", "others"};
        const std::string_view next = word(i + 1);
        // toddlers and grade-schoolers among children
        if (is_one_of(whole, List::those_served) && is_one_of(next, List::those_served))
            return true;
        return next == whole || is_one_of(next, of_them) || !is(i + 1, TokenKind::word);
    }

    // `Served 45 children, including 19 from Ellery and 31 from Kestrel Bay`
    void look_at_parts(std::size_t at, std::vector<Finding>& findings) const {
        constexpr std::size_t near = 6;
        std::size_t whole = at;
        while (whole > 0 && whole + near > at && !count_of(word(whole)))
            --whole;
        const auto all = count_of(word(whole));
        if (!all) return;
        double sum = 0;
        std::size_t last = at;
        for (std::size_t i = at + 1; i < tokens_.size() && !is(i, TokenKind::stop); ++i) {
            const auto part = count_of(word(i));
            const bool listed = i == at + 1 || is(i - 1, TokenKind::comma) || word(i - 1) == "and";
            if (!part || !listed || !is_part(i, word(whole + 1))) continue;
            sum += *part;
            last = i;
        }
        if (sum > *all) tell<messages::more_than_whole>(whole, last, findings);
    }

    // `Taught 30 pupils, 18 girls and 15 boys`, `Sorted 90 samples: 40 clean, 60 tainted`
    void look_at_named_parts(std::size_t at, std::vector<Finding>& findings) const {
        const std::size_t whole = at > 2 ? at - 2 : 0;
        const auto all = value_at(whole);
        const bool colon = is_colon(at);
        if (at < 2 || !all || !is(at - 1, TokenKind::word)) return;
        double sum = 0;
        std::size_t parts = 0, last = at;
        for (std::size_t i = at + 1; i < tokens_.size() && !is(i, TokenKind::stop); ++i) {
            const auto part = value_at(i);
            if (!part) continue;
            const bool listed = i == at + 1 || is(i - 1, TokenKind::comma) || word(i - 1) == "and";
            const bool served = is_one_of(word(at - 1), List::those_served) &&
                                is_one_of(word(i + 1), List::those_served);
            if (!listed || *part >= *all || (!colon && !served)) return;
            sum += *part;
            ++parts;
            last = i;
        }
        if (parts > 1 && sum > *all) tell<messages::more_than_whole>(whole, last, findings);
    }

    // `ages 12 to 9`
    void look_at_ages(std::size_t i, std::vector<Finding>& findings) const {
        const auto youngest = count_of(word(i + 1)), oldest = count_of(word(i + 3));
        if (word(i + 2) == "to" && youngest && oldest && *youngest > *oldest)
            tell<messages::upside_down>(i, i + 3, findings);
    }

    // Of what is counted, or of dollars.
    std::optional<double> value_at(std::size_t i) const {
        const std::string_view figure = word(i);
        return count_of(figure.starts_with('$') ? figure.substr(1) : figure);
    }

    // In minutes, if it is time.
    std::optional<double> amount_at(std::size_t i) const {
        const auto value = value_at(i);
        if (!value) return std::nullopt;
        for (const TimeUnit& unit : time_units)
            if (word(i + 1).starts_with(unit.name)) return *value * unit.minutes;
        return value;
    }

    // The same of shares: `from 34% to 29%`.
    std::optional<double> share_at(std::size_t i) const {
        const std::string_view figure = word(i);
        if (!figure.ends_with('%')) return std::nullopt;
        return count_of(figure.substr(0, figure.size() - 1));
    }

    // `25 of the 60 (52%)`, and `a survey to 240 and got 312 replies (130%)`, more than were asked.
    void look_at_ratio(std::size_t i, std::vector<Finding>& findings) const {
        constexpr std::size_t near = 5, far = 14;
        const auto told = share_at(i);
        if (!told || i < 4 || !is(i - 1, TokenKind::open)) return;
        std::size_t whole = i - 1;
        while (whole + near > i && whole > 0 && !count_of(word(whole)))
            --whole;
        const auto last = count_of(word(whole));
        if (!last || *last <= 0) return;
        const std::size_t of =
            word(whole - 1) == "the" || word(whole - 1) == "all" ? whole - 2 : whole - 1;
        if (word(of) == "of" && of > 0) {
            const auto part = count_of(word(of - 1));
            if (part && is_other(*told, 100 * *part / *last, i, 1.5))
                tell<messages::other_share>(of - 1, i, findings);
            return;
        }
        for (std::size_t k = whole; *told > 100 && k-- > 0 && k + far > whole;)
            if (const auto all = count_of(word(k)); all && is_one_of(word(whole + 1), answers))
                if (!is_other(*told, 100 * *last / *all, i, 1.5))
                    return tell<messages::more_than_whole>(k, i, findings);
    }

    std::optional<double> percent_behind(std::size_t from, std::size_t& at) const {
        constexpr std::size_t near = 8;
        constexpr std::array<std::string_view, 12> changes{
            "drop", "cut",  "fall",     "decrease", "reduction", "saving",
            "rise", "gain", "increase", "decline",  "jump",      "savings"};
        bool named = false;
        for (at = from; at < tokens_.size() && at < from + near; ++at) {
            named = named || is_one_of(word(at), changes) || is_one_of(word(at + 1), changes);
            if (named && word(at).ends_with('%'))
                return count_of(word(at).substr(0, word(at).size() - 1));
        }
        return std::nullopt;
    }

    // `Raised turnout 300%, from 410 to 820`
    std::optional<double> percent_before(std::size_t from) const {
        const std::size_t at = is(from - 1, TokenKind::comma) ? from - 2 : from - 1;
        if (from < 3 || !word(at).ends_with('%')) return std::nullopt;
        return count_of(word(at).substr(0, word(at).size() - 1));
    }

    // `from 4 hours to 12 minutes, a drop of 30%`; `doubled members from 40 to 60`
    void look_at_change(std::size_t i, std::vector<Finding>& findings) const {
        std::size_t to = i + 2;
        while (to < i + 5 && word(to) != "to")
            ++to;
        if (look_at_change_of_share(i, to, findings)) return;
        const auto after = amount_at(to + 1);
        // from 10 days to 8
        const bool of_one_unit = std::ranges::none_of(
            time_units, [&](const TimeUnit& unit) { return word(to + 2).starts_with(unit.name); });
        const auto before = of_one_unit ? value_at(i + 1) : amount_at(i + 1);
        if (word(to) != "to" || !before || !after || *before <= 0) return;
        if (are_years(word(i + 1), word(to + 1))) return;
        std::size_t at = 0;
        const double change = 100 * std::abs(*after - *before) / *before;
        if (const auto told = percent_behind(to + 2, at); told && is_other(*told, change, at))
            tell<messages::other_change>(i, at, findings);
        if (const auto told = percent_before(i); told && is_other(*told, change, i - 2))
            tell<messages::other_change>(i - 2, to + 1, findings);
        look_at_difference(i, to + 1, findings);
        const auto times = times_told(i);
        if (times && (*after < 0.8 * *times * *before || *after > 1.6 * *times * *before))
            tell<messages::other_change>(i, to + 1, findings);
    }

    // `Cut food cost by 50%, from 34% of sales to 29%`: neither by so many points, nor by such a
    // part.
    bool look_at_change_of_share(std::size_t from, std::size_t to,
                                 std::vector<Finding>& findings) const {
        const auto before = share_at(from + 1), after = share_at(to + 1);
        if (word(to) != "to" || !before || !after || *before <= 0) return false;
        const auto told = percent_before(from);
        const double points = std::abs(*after - *before);
        const bool other = told && is_other(*told, points, from - 2) &&
                           is_other(*told, 100 * points / *before, from - 2);
        if (other) tell<messages::other_change>(from - 2, to + 1, findings);
        return true;
    }

    // A share is rounded as it is told: `nearly 40%`, and to the next five without a word.
    bool is_other(double told, double change, std::size_t at) const {
        constexpr double close = 0.01;
        const bool whole = std::abs(change - std::round(change)) < close; // and not rounded
        return is_other(told, change, at, std::max(whole ? 2.5 : 5.0, change / 12));
    }
    bool is_other(double told, double change, std::size_t at, double plain) const {
        constexpr std::array<std::string_view, 9> rounding{
            "nearly", "about", "almost", "roughly", "over", "than", "some", "least", "around"};
        const bool rounded = (at > 0 && is_one_of(word(at - 1), rounding)) ||
                             (at > 1 && is_one_of(word(at - 2), rounding));
        const double tolerance = rounded ? 12 : plain;
        return std::abs(told - change) > tolerance;
    }

    // `by 3 hours (from 9 to 7)`
    void look_at_difference(std::size_t from, std::size_t to,
                            std::vector<Finding>& findings) const {
        std::size_t unit = from;
        while (unit > 0 && (is(unit - 1, TokenKind::comma) || is(unit - 1, TokenKind::open)))
            --unit;
        if (unit < 3 || word(unit - 3) != "by" || !is(unit - 1, TokenKind::word)) return;
        const auto told = count_of(word(unit - 2)), before = count_of(word(from + 1)),
                   after = count_of(word(to));
        const bool one_unit = is(from + 2, TokenKind::word) && word(from + 2) == "to";
        if (told && before && after && one_unit && std::abs(*before - *after) != *told)
            tell<messages::other_change>(unit - 3, to, findings);
    }

    // `Tutored 8 freshmen, of whom 11 passed`
    void look_at_those(std::size_t i, std::vector<Finding>& findings) const {
        constexpr std::size_t near = 7;
        const auto part = count_of(word(i + 2));
        if (word(i) != "of" || (word(i + 1) != "whom" && word(i + 1) != "which") || !part) return;
        for (std::size_t k = i; k-- > 0 && k + near > i;) {
            const auto all = count_of(word(k));
            if (!all) continue;
            if (*part > *all) tell<messages::more_than_whole>(k, i + 2, findings);
            return;
        }
    }

    // `Raised sales by 250 to 200`, `improved grades from B to C`
    void look_at_rise(std::size_t i, std::vector<Finding>& findings) const {
        constexpr std::size_t near = 8;
        if (word(i + 2) != "to") return;
        const auto by = count_of(word(i + 1)), reached = count_of(word(i + 3));
        const bool more = word(i) == "by" && by && reached && *by > *reached;
        const auto grade = [&](std::size_t k) {
            const std::string_view one = word(k);
            return one.size() == 1 && one >= "a" && one <= "f";
        };
        const bool worse = word(i) == "from" && grade(i + 1) && grade(i + 3) &&
                           word(i + 1) < word(i + 3) && tokens_[i + 1].text != word(i + 1);
        if (!more && !worse) return;
        for (std::size_t k = i; k-- > 0 && k + near > i;)
            if (is_one_of(word(k), List::verbs_of_rising) || word(k).starts_with("improv"))
                return tell<messages::wrong_way>(i, i + 3, findings);
    }

    std::optional<double> times_told(std::size_t before) const {
        constexpr std::size_t near = 6;
        for (std::size_t k = before; k-- > 0 && k + near > before;) {
            if (word(k).starts_with("doubl")) return 2.0;
            if (word(k).starts_with("tripl")) return 3.0;
            if (word(k).starts_with("quadrupl")) return 4.0;
            if (word(k) == "halved" || word(k) == "halve" || word(k) == "halving") return 0.5;
        }
        return std::nullopt;
    }

    // `400 invoices: 70% agreed, 25% lacked a receipt, and 15% were posted twice`
    void look_at_named_shares(std::vector<Finding>& findings) const {
        double sum = 0;
        std::size_t first = 0, last = 0, shares = 0;
        for (std::size_t i = 1; i < tokens_.size(); ++i) {
            const auto share = share_at(i);
            if (!share) continue;
            const bool opens = is_colon(i - 1);
            const bool listed = is(i - 1, TokenKind::comma) || word(i - 1) == "and";
            if (shares == 0 ? !opens : !listed) return;
            if (shares++ == 0) first = i;
            sum += *share;
            last = i;
        }
        if (shares > 2 && sum > 100 && word(last - 1) == "and")
            tell<messages::more_than_whole>(first, last, findings);
    }

    // `Taught 12 beginners to float, and all 15 passed`
    void look_at_all(std::size_t i, std::vector<Finding>& findings) const {
        const auto all = word(i) == "all" ? count_of(word(i + 1)) : std::nullopt;
        if (!all || !word(i + 2).ends_with("ed")) return;
        std::size_t most_at = i;
        double most = 0;
        for (std::size_t k = 0; k < i; ++k)
            if (const auto count = count_of(word(k)); count && *count > most) {
                most = *count;
                most_at = k;
            }
        if (most > 1 && most < *all) tell<messages::more_than_whole>(most_at, i + 1, findings);
    }

    // `Split time 60% counting, 30% entry and 40% mapping`
    void look_at_shares(std::vector<Finding>& findings) const {
        constexpr std::array<std::string_view, 10> splits{
            "split",   "divided", "divide",    "spent",     "balanced",
            "balance", "spend",   "allocated", "splitting", "shared"};
        look_at_named_shares(findings);
        if (!is_one_of(word(0), splits)) return;
        double sum = 0;
        std::size_t first = 0, last = 0, shares = 0;
        for (std::size_t i = 1; i < tokens_.size(); ++i) {
            if (!word(i).ends_with('%')) continue;
            sum += count_of(word(i).substr(0, word(i).size() - 1)).value_or(0);
            if (shares++ == 0) first = i;
            last = i;
        }
        if (shares > 1 && sum > 100) tell<messages::more_than_whole>(first, last, findings);
    }

    // `Worked 1,900 hours`, in a job from June to August: more than anybody is awake.
    void look_at_hours(std::size_t i, const ProofContext& context,
                       std::vector<Finding>& findings) const {
        constexpr double of_day = 16, days_of_month = 31;
        constexpr std::array<std::string_view, 5> verbs{"worked", "completed", "served", "logged",
                                                        "volunteered"};
        const auto count = i > 0 ? count_of(word(i - 1)) : std::nullopt;
        const int held = count && is_one_of(word(0), verbs) ? months_held(context) : 0;
        if (held > 0 && *count > held * days_of_month * of_day)
            tell<messages::longer_than_dates>(i - 1, i, findings);
    }

    // By the dates of the entry; 0 if it cannot be told.
    int months_held(const ProofContext& context) const {
        const model::DateRange* range =
            dates_in(bullet_.position.entry->find(trade::FieldName::dates));
        if (!range || !range->start || !range->start->month || !range->spells.empty()) return 0;
        const model::Date& end = range->end ? *range->end : context.today;
        return end.month ? months_between(*range->start, end) + 1 : 0;
    }

    // `for 14 weeks`, in a job from July to August; what is planned may last longer.
    void look_at_span(std::size_t i, const ProofContext& context,
                      std::vector<Finding>& findings) const {
        constexpr std::array<std::string_view, 9> ahead{"plan",      "planned", "schedule",
                                                        "scheduled", "booked",  "book",
                                                        "forecast",  "wrote",   "designed"};
        constexpr double weeks_of_month = 4.35;
        const auto count = i > 1 ? count_of(word(i - 1)) : std::nullopt;
        if (!count || word(i - 2) != "for" || is_one_of(word(0), ahead)) return;
        const int whole = months_held(context);
        const double held = whole * (word(i) == "weeks" ? weeks_of_month : 1.0);
        if (whole > 0 && *count > held + 1) tell<messages::longer_than_dates>(i - 1, i, findings);
    }

    // `3rd of 2 teams`
    void look_at_place_won(std::size_t i, std::vector<Finding>& findings) const {
        const std::string_view place = word(i);
        if (place.size() < 3 || !is_figure(place.front()) || word(i + 1) != "of") return;
        const std::string_view ending = place.substr(place.size() - 2);
        const bool ordinal = ending == "st" || ending == "nd" || ending == "rd" || ending == "th";
        const auto rank = count_of(place.substr(0, place.size() - 2)), all = count_of(word(i + 2));
        if (ordinal && rank && all && *rank > *all)
            tell<messages::more_than_whole>(i, i + 2, findings);
    }

    template<const messages::FindingRow& fault>
    void tell(std::size_t first, std::size_t last, std::vector<Finding>& findings) const {
        const english::Extent all = extent_of(tokens_, first, std::min(last, tokens_.size() - 1));
        report<fault>(findings, bullet_.place(all), in_quotes(bullet_.words(all)));
    }

    const WordedBullet& bullet_;
    english::Tokens tokens_;
};

}

void impossible_sum(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : context.bullets)
        if (has_digit(bullet.text)) Sums(bullet).report_to(context, findings);
}

}
