// Figures of one bullet that contradict each other: parts that make more than their whole, or not
// its total, shares of over a hundred percent together, more weeks than the dates hold.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/date_order.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/told_figures.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/trade/limits.hpp"
#include "compiler/trade/months.hpp"

#include <algorithm>
#include <array>
#include <optional>

namespace quoin::advice {

namespace {

using english::TokenKind;

class Sums : ToldFigures {
public:
    using ToldFigures::ToldFigures;

    void report_to(const ProofContext& context, std::vector<Finding>& findings) const {
        for (std::size_t i = 0; i < tokens_.size(); ++i) {
            if (word(i) == "including") look_at_parts(i, findings);
            if (is_one_of(word(i), span_words)) look_at_span(i, context, findings);
            if (is(i, TokenKind::comma) || is_colon(i)) look_at_named_parts(i, findings);
            if (is_one_of(word(i), ages)) look_at_ages(i, findings);
            look_at_place_won(i, findings);
            look_at_those(i, findings);
            look_at_ratio(i, findings);
            look_at_all(i, findings);
            look_at_total(i, findings);
            if (word(i) == "each") {
                look_at_each(i, findings);
                look_at_times(i, findings);
            }
            if (is_colon(i) || is(i, TokenKind::open)) look_at_list(i, findings);
            if (is_colon(i)) look_at_budget(i, findings);
            if (is(i, TokenKind::open)) look_at_parts_in_brackets(i, findings);
            if (word(i) == "a" || word(i) == "per") look_at_rate(i, findings);
            if (word(i) == "hours") look_at_hours(i, context, findings);
        }
        look_at_shares(findings);
    }

private:
    static constexpr std::array<std::string_view, 6> answers{"replies", "responses", "answers",
                                                             "returns", "surveys",   "forms"};
    static constexpr std::array<std::string_view, 3> span_words{"weeks", "months", "years"};
    static constexpr std::array<std::string_view, 3> ages{"ages", "aged", "grades"};

    bool is_colon(std::size_t i) const { // signs have no letters
        return is(i, TokenKind::stop) && bullet_.text[tokens_[i].extent.offset] == ':';
    }

    // The nearest count before `at`, at most so many tokens off.
    std::optional<std::size_t> count_before(std::size_t at, std::size_t near) const {
        for (std::size_t i = at; i-- > 0 && i + near >= at;)
            if (count_at(i)) return i;
        return std::nullopt;
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
        const auto whole = count_before(at, 6);
        if (!whole) return;
        double sum = 0;
        std::size_t last = at;
        for (std::size_t i = at + 1; i < tokens_.size() && !is(i, TokenKind::stop); ++i) {
            const auto part = count_at(i);
            const bool listed = i == at + 1 || is(i - 1, TokenKind::comma) || word(i - 1) == "and";
            if (!part || !listed || !is_part(i, word(*whole + 1))) continue;
            sum += *part;
            last = i;
        }
        if (sum > *count_at(*whole)) tell<messages::more_than_whole>(*whole, last, findings);
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

    // `Surveyed 240 riders (150 students and 80 staff)`: nothing but parts, the last behind `and`.
    void look_at_parts_in_brackets(std::size_t open, std::vector<Finding>& findings) const {
        const auto whole = count_before(open, 3);
        if (!whole || *whole + 1 == open) return;
        double sum = 0;
        bool joined = false;
        std::size_t i = open + 1;
        while (!is(i, TokenKind::close)) {
            const auto part = count_at(i);
            if (!part || !is(i + 1, TokenKind::word)) return;
            sum += *part;
            for (++i; is(i, TokenKind::word) && word(i) != "and";)
                ++i;
            const bool parts = is(i, TokenKind::comma);
            if (parts) ++i;
            const bool last = word(i) == "and";
            if (last) ++i;
            if (!parts && !last && !is(i, TokenKind::close)) return;
            joined = joined || last;
        }
        if (joined && sum != *count_at(*whole)) tell<messages::other_total>(*whole, i, findings);
    }

    // `Manage $3,200 budget: $1,450 for hull, $900 for drive, and $650 for travel`
    void look_at_budget(std::size_t colon, std::vector<Finding>& findings) const {
        constexpr std::size_t near = 5, several = 3;
        std::size_t whole = colon;
        while (whole > 0 && whole + near > colon && !word(whole).starts_with('$'))
            --whole;
        const auto all = word(whole).starts_with('$') ? value_at(whole) : std::nullopt;
        if (!all) return;
        double sum = 0;
        std::size_t parts = 0, last = colon;
        for (std::size_t i = colon + 1; i < tokens_.size() && !is(i, TokenKind::stop); ++i) {
            if (word(i) == "rest" || word(i) == "remainder") return;
            if (!is(i, TokenKind::figure)) continue;
            const bool listed =
                i == colon + 1 || is(i - 1, TokenKind::comma) || word(i - 1) == "and";
            const auto part = word(i).starts_with('$') && listed ? value_at(i) : std::nullopt;
            if (!part) return;
            sum += *part;
            ++parts;
            last = i;
        }
        if (parts >= several && sum != *all) tell<messages::other_total>(whole, last, findings);
    }

    // `ages 12 to 9`
    void look_at_ages(std::size_t i, std::vector<Finding>& findings) const {
        const auto youngest = count_at(i + 1), oldest = count_at(i + 3);
        if (word(i + 2) == "to" && youngest && oldest && *youngest > *oldest)
            tell<messages::upside_down>(i, i + 3, findings);
    }

    // `25 of the 60 (52%)`, and `a survey to 240 and got 312 replies (130%)`, more than were asked.
    void look_at_ratio(std::size_t i, std::vector<Finding>& findings) const {
        constexpr std::size_t near = 5, far = 14;
        const auto told = share_at(i);
        if (!told || i < 4 || !is(i - 1, TokenKind::open)) return;
        const std::size_t whole = count_before(i, near).value_or(0);
        const auto last = count_at(whole);
        if (!last || *last <= 0) return;
        const std::size_t of =
            word(whole - 1) == "the" || word(whole - 1) == "all" ? whole - 2 : whole - 1;
        if (word(of) == "of" && of > 0) {
            const auto part = count_at(of - 1);
            if (part && is_other(*told, 100 * *part / *last, i, 1.5))
                tell<messages::other_share>(of - 1, i, findings);
            return;
        }
        for (std::size_t k = whole; *told > 100 && k-- > 0 && k + far > whole;)
            if (const auto all = count_at(k); all && is_one_of(word(whole + 1), answers))
                if (!is_other(*told, 100 * *last / *all, i, 1.5))
                    return tell<messages::more_than_whole>(k, i, findings);
    }

    // 6, of `6 classes of 24`
    std::optional<double> times_of(std::size_t each) const {
        const bool things = each > 2 && word(each - 1) == "of" && word(each - 2).ends_with('s');
        return things ? count_at(each - 3) : std::nullopt;
    }

    // `3 houses (1,450, 1,620, and 1,880 square feet), 4,850 in all`, `12 songs in all`
    void look_at_total(std::size_t total, std::vector<Finding>& findings) const {
        constexpr std::array<std::string_view, 3> all{"all", "total", "sum"};
        const auto told = count_at(total);
        const std::size_t in = word(total + 1) == "in" ? total + 1 : total + 2;
        if (!told || word(in) != "in" || !is_one_of(word(in + 1), all)) return;
        double sum = 0;
        std::size_t first = total, parts = 0;
        for (std::size_t i = total; i-- > 0;) {
            const auto part = count_at(i);
            if (!part) continue;
            if (const auto times = parts == 0 ? times_of(i) : std::nullopt) {
                if (*times * *part != *told) tell<messages::other_total>(i - 3, total, findings);
                return;
            }
            const bool listed = is(i + 1, TokenKind::comma) || parts == 0;
            if (!listed) break;
            sum += *part;
            ++parts;
            first = i;
        }
        constexpr std::size_t several = 3;
        if (parts >= several && sum != *told) tell<messages::other_total>(first, total, findings);
    }

    // `Counted 360 plates, 20 from each of 16 sites`
    void look_at_each(std::size_t each, std::vector<Finding>& findings) const {
        constexpr std::size_t near = 14;
        const auto times = word(each + 1) == "of" ? count_at(each + 2) : std::nullopt;
        const auto part = each > 3 ? count_at(each - 2) : std::nullopt;
        if (!times || !part || !is(each - 3, TokenKind::comma)) return;
        for (std::size_t k = each - 3; k-- > 0 && k + near > each;) {
            const auto all = count_at(k);
            if (!all || *all <= *part) continue;
            if (*all != *times * *part) tell<messages::other_total>(k, each + 2, findings);
            return;
        }
    }

    // `12 performances across 3 weekends, with 5 shows each weekend`
    void look_at_times(std::size_t each, std::vector<Finding>& findings) const {
        constexpr std::array<std::string_view, 9> events{"performances", "shows",     "concerts",
                                                         "games",        "sessions",  "classes",
                                                         "meetings",     "workshops", "rehearsals"};
        const std::string units = std::string(word(each + 1)) + 's';
        const auto part = each > 6 ? count_at(each - 2) : std::nullopt;
        if (!part) return;
        for (std::size_t k = each - 2; k-- > 3;) {
            const auto times = word(k + 1) == units ? count_at(k) : std::nullopt;
            const auto all = times ? count_at(k - 3) : std::nullopt;
            if (!all) continue;
            const std::string_view one = word(k - 2), other = word(each - 1);
            const bool same = one == other || (is_one_of(one, events) && is_one_of(other, events));
            if (same && *all != *times * *part)
                tell<messages::other_total>(k - 3, each + 1, findings);
            return;
        }
    }

    // `4 counties: Skerry, Tolmie, and Marrow`: another number of things than are named.
    void look_at_list(std::size_t sign, std::vector<Finding>& findings) const {
        constexpr std::array<std::string_view, 8> some{"including", "such",    "like", "e.g",
                                                       "mostly",    "chiefly", "both", "plus"};
        constexpr double most_told = 12;
        const auto told = sign > 1 ? count_at(sign - 2) : std::nullopt;
        if (!told || *told < 2 || *told > most_told || !word(sign - 1).ends_with('s')) return;
        std::size_t commas = 0, joiners = 0, closing = 0, last = sign;
        for (std::size_t i = sign + 1;
             i < tokens_.size() && !is(i, TokenKind::stop) && !is(i, TokenKind::close); ++i) {
            if (is(i, TokenKind::figure) || is_one_of(word(i), some)) return;
            if (is_one_of(word(i), List::number_words)) return;
            const bool joins = word(i) == "and" || word(i) == "or";
            if (is(i, TokenKind::comma)) ++commas;
            if (joins && is(i - 1, TokenKind::comma)) ++closing;
            if (joins && !is(i - 1, TokenKind::comma)) ++joiners;
            last = i;
        }
        if (commas == 0 || closing == 0) return; // it may be told of them and not name them
        const auto least = static_cast<double>(commas + 1);
        if (*told < least || *told > least + static_cast<double>(joiners))
            tell<messages::other_count>(sign - 2, last, findings);
    }

    // `Ran 30 assays a week for 20 weeks, 500 in all`
    void look_at_rate(std::size_t a, std::vector<Finding>& findings) const {
        constexpr std::array<std::string_view, 5> units{"day", "week", "month", "term", "season"};
        constexpr std::size_t near = 4;
        const std::string_view unit = word(a + 1);
        if (!is_one_of(unit, units) || word(a + 2) != "for") return;
        const auto times = count_at(a + 3);
        if (!times || word(a + 4) != std::string(unit) + 's' || !is(a + 5, TokenKind::comma))
            return;
        const auto all = count_at(a + 6);
        const bool told = word(a + 7) == "in" && (word(a + 8) == "all" || word(a + 8) == "total");
        for (std::size_t k = a; all && told && k-- > 0 && k + near > a;) {
            const auto each = count_at(k);
            if (!each) continue;
            if (*each * *times != *all) tell<messages::other_total>(k, a + 6, findings);
            return;
        }
    }

    // `Tutored 8 freshmen, of whom 11 passed`
    void look_at_those(std::size_t i, std::vector<Finding>& findings) const {
        constexpr std::size_t near = 7;
        const auto part = count_at(i + 2);
        if (word(i) != "of" || (word(i + 1) != "whom" && word(i + 1) != "which") || !part) return;
        for (std::size_t k = i; k-- > 0 && k + near > i;) {
            const auto all = count_at(k);
            if (!all) continue;
            if (*part > *all) tell<messages::more_than_whole>(k, i + 2, findings);
            return;
        }
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
        const auto all = word(i) == "all" ? count_at(i + 1) : std::nullopt;
        const bool of_them =
            word(i + 2) == "of" && (word(i + 3) == "whom" || word(i + 3) == "which");
        if (!all || !(word(i + 2).ends_with("ed") || of_them)) return;
        std::size_t most_at = i;
        double most = 0;
        for (std::size_t k = 0; k < i; ++k)
            if (const auto count = count_at(k); count && *count > most) {
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
            sum += share_at(i).value_or(0);
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
        const auto count = i > 0 ? count_at(i - 1) : std::nullopt;
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

    // `Halved falls over 8 months`, `Phoned 2,100 households over 6`; but `Charted sales over 8
    // months`, which were not worked
    bool was_worked_over(std::size_t i) const {
        const bool worked = is_one_of(word(0), List::worked_over) ||
                            is_one_of(word(0), List::verbs_of_cutting) ||
                            is_one_of(word(0), List::verbs_of_rising) ||
                            word(0).starts_with("halv") || word(0).starts_with("doubl");
        return worked && (word(i) == "over" || word(i) == "within");
    }

    // `Ran office for 22 years`, but not `an engine idle for 12 years`, nor `for 5 years of data`.
    bool is_for_years(std::size_t i) const {
        constexpr std::array<std::string_view, 8> others{"that", "which", "who",   "had",
                                                         "been", "first", "never", "kept"};
        const std::string_view joins = i > 2 ? word(i - 2) : "";
        if ((joins != "for" && joins != "through") || word(i + 1) == "of") return false;
        for (std::size_t k = 0; k + 2 < i; ++k)
            if (is_one_of(word(k), others) || is_one_of(word(k), List::left_standing)) return false;
        return true;
    }

    // `for 14 weeks`, in a job from July to August; what is planned may last longer.
    void look_at_span(std::size_t i, const ProofContext& context,
                      std::vector<Finding>& findings) const {
        constexpr std::array<std::string_view, 9> ahead{"plan",      "planned", "schedule",
                                                        "scheduled", "booked",  "book",
                                                        "forecast",  "wrote",   "designed"};
        constexpr double weeks_of_month = 4.35;
        const auto count = i > 1 ? count_at(i - 1) : std::nullopt;
        const bool years = word(i) == "years";
        const bool told = years ? is_for_years(i) : word(i - 2) == "for" || was_worked_over(i - 2);
        if (!count || !told || is_one_of(word(0), ahead)) return;
        const int whole = months_held(context);
        const double held = whole * (years                ? 1.0 / trade::months_of_year
                                     : word(i) == "weeks" ? weeks_of_month
                                                          : 1.0);
        if (whole > 0 && *count > held + 1) tell<messages::longer_than_dates>(i - 1, i, findings);
    }

    // `3rd of 2 teams`
    void look_at_place_won(std::size_t i, std::vector<Finding>& findings) const {
        const std::string_view place = word(i);
        if (place.size() < 3 || !is_figure(place.front()) || word(i + 1) != "of") return;
        const std::string_view ending = place.substr(place.size() - 2);
        const bool ordinal = ending == "st" || ending == "nd" || ending == "rd" || ending == "th";
        const auto rank = grouped_number(place.substr(0, place.size() - 2)), all = count_at(i + 2);
        if (ordinal && rank && all && *rank > *all)
            tell<messages::more_than_whole>(i, i + 2, findings);
    }
};

}

void impossible_sums(const WordedBullet& bullet, const english::Tokens& tokens,
                     const ProofContext& context, std::vector<Finding>& findings) {
    Sums(bullet, tokens).report_to(context, findings);
}

}
