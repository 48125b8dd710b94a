// Changes that figures of one bullet tell, and that are not those that it claims: `doubled`, by so
// many percent, by so much.
#include "compiler/advice/lists.hpp"
#include "compiler/advice/told_figures.hpp"

namespace quoin::advice {

namespace {

using english::TokenKind;

struct TimeUnit {
    std::string_view name;
    double minutes = 0;
};
constexpr std::array time_units{TimeUnit{"minute", 1}, TimeUnit{"hour", 60}, TimeUnit{"day", 1440},
                                TimeUnit{"week", 10080}};

class Changes : ToldFigures {
public:
    using ToldFigures::ToldFigures;

    void report_to(std::vector<Finding>& findings) const {
        for (std::size_t i = 0; i < tokens_.size(); ++i) {
            if (word(i) == "from") look_at_change(i, findings);
            look_at_rise(i, findings);
        }
    }

private:
    // In minutes, if it is time.
    std::optional<double> amount_at(std::size_t i) const {
        const auto value = value_at(i);
        if (!value) return std::nullopt;
        for (const TimeUnit& unit : time_units)
            if (word(i + 1).starts_with(unit.name)) return *value * unit.minutes;
        return value;
    }

    std::optional<double> percent_behind(std::size_t from, std::size_t& at) const {
        constexpr std::size_t near = 8;
        constexpr std::array<std::string_view, 12> changes{
            "drop", "cut",  "fall",     "decrease", "reduction", "saving",
            "rise", "gain", "increase", "decline",  "jump",      "savings"};
        bool named = false;
        for (at = from; at < tokens_.size() && at < from + near; ++at) {
            named = named || is_one_of(word(at), changes) || is_one_of(word(at + 1), changes);
            if (named && word(at).ends_with('%')) return share_at(at);
        }
        return std::nullopt;
    }

    // `Raised turnout 300%, from 410 to 820`
    std::optional<double> percent_before(std::size_t from) const {
        const std::size_t at = is(from - 1, TokenKind::comma) ? from - 2 : from - 1;
        if (from < 3 || !word(at).ends_with('%')) return std::nullopt;
        return share_at(at);
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
        if (times && (*after < 0.8 * *times * *before || *after > 1.5 * *times * *before))
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

    // `by 3 hours (from 9 to 7)`, `by $48,000, from $212,000 to $174,000`
    void look_at_difference(std::size_t from, std::size_t to,
                            std::vector<Finding>& findings) const {
        std::size_t end = from;
        while (end > 0 && (is(end - 1, TokenKind::comma) || is(end - 1, TokenKind::open)))
            --end;
        const bool dollars = end > 1 && word(end - 1).starts_with('$');
        const std::size_t figure = dollars ? end - 1 : end - 2;
        if (end < 3 || word(figure - 1) != "by") return;
        if (!dollars && !is(end - 1, TokenKind::word)) return;
        const auto told = value_at(figure), before = value_at(from + 1), after = value_at(to);
        const bool one_unit = word(from + 2) == "to" && (dollars == word(to).starts_with('$')) &&
                              (dollars || is(from + 2, TokenKind::word));
        if (told && before && after && one_unit && std::abs(*before - *after) != *told)
            tell<messages::other_change>(figure - 1, to, findings);
    }

    // `Raised sales by 250 to 200`, `improved grades from B to C`
    void look_at_rise(std::size_t i, std::vector<Finding>& findings) const {
        constexpr std::size_t near = 8;
        if (word(i + 2) != "to") return;
        const auto by = count_at(i + 1), reached = count_at(i + 3);
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
            if (word(k) == "halved" || word(k) == "halve" || word(k) == "halving" ||
                (word(k) == "half" && k > 0 && (word(k - 1) == "by" || word(k - 1) == "in")))
                return 0.5;
        }
        return std::nullopt;
    }
};

}

void impossible_changes(const WordedBullet& bullet, const english::Tokens& tokens,
                        std::vector<Finding>& findings) {
    Changes(bullet, tokens).report_to(findings);
}

}
