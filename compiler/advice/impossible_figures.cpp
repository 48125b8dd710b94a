// Figures that cannot be: a fall by more than there was, a share over the whole, a range or a
// change that runs the wrong way.
#include "compiler/advice/lists.hpp"
#include "compiler/advice/told_figures.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/english/tokens.hpp"
#include "compiler/trade/limits.hpp"

#include <algorithm>
#include <array>
#include <optional>

namespace quoin::advice {

namespace {

constexpr std::array<std::string_view, 6> less_words{"reduction", "decrease", "decline",
                                                     "less",      "fewer",    "lower"};
// Where what falls no longer reaches, and what a percentage may be of.
constexpr std::array<std::string_view, 9> fall_bounds{"and",  "while", "but",    "to",  "at",
                                                      "from", "than",  "target", "goal"};
constexpr std::array<std::string_view, 7> fall_joins{"by",   "in", "with", "through",
                                                     "over", "at", "for"};

// Of `$1,200` and `118%`; none for a figure of another make.
std::optional<double> value_of(std::string_view figure) {
    std::string plain(figure);
    std::erase_if(plain, [](char c) { return c == '$' || c == '%'; });
    return grouped_number(plain);
}

// `12-8%`, `40-30 guests`; but `a 21-14 win`, `9-5 shifts`, `2024-25 seasons`.
bool is_upside_down(std::string_view figure, bool percent, std::string_view next) {
    constexpr double latest_hour = 12, first_year = 1500;
    const std::size_t hyphen = std::min(figure.find('-'), figure.size() - 1);
    const auto start = value_of(figure.substr(0, hyphen)),
               end = value_of(figure.substr(hyphen + 1));
    if (!start || !end || *start <= *end) return false;
    if (percent) return true;
    return *start > latest_hour && *start < first_year && next.size() > 3 && next.ends_with('s') &&
           !is_one_of(next, List::of_scores);
}

// What the amount is of, and which way the change goes.
struct Change {
    double from = 0, to = 0;
    std::size_t last = 0; // token
};

class Figures : ToldFigures {
public:
    using ToldFigures::ToldFigures;

    void report_to(std::vector<Finding>& findings) const {
        for (std::size_t i = 0; i < tokens_.size(); ++i) {
            if (tokens_[i].kind != english::TokenKind::figure) continue;
            const bool percent = word(i).ends_with('%') || word(i + 1) == "percent";
            const auto value = value_of(word(i));
            if (percent && value > 100 && is_fall(i, word(i + 1) == "percent" ? i + 2 : i + 1))
                tell<messages::falls_by_more>(i, i, findings);
            if (is_upside_down(word(i), percent, word(i + 1)))
                tell<messages::upside_down>(i, i, findings);
            if (percent && value > 100 && is_share(i))
                tell<messages::more_than_whole>(i, i, findings);
            if (const auto whole = whole_of(i); whole && value > value_of(word(*whole)))
                tell<messages::more_than_whole>(std::min(i, *whole), std::max(i, *whole), findings);
            if (is_too_often(i, value)) tell<messages::more_than_whole>(i, i + 3, findings);
            if (value && is_too_fast(i, *value)) tell<messages::too_fast>(i, i + 3, findings);
        }
        look_at_changes(findings);
        look_behind_reached(findings);
        look_at_feelings(findings);
    }

private:
    // `Cut entry time 118%`, `118% fewer slips`: a fall by so much, and of nothing else.
    bool is_fall(std::size_t i, std::size_t next) const {
        if (is_one_of(word(next), less_words)) return true;
        const bool by = i > 0 && word(i - 1) == "by";
        if (!by && !word(next).empty() && !is_one_of(word(next), fall_joins)) return false;
        while (i-- > 0 && !word(i).empty() && !is_one_of(word(i), fall_bounds))
            if (is_one_of(word(i), List::verbs_of_cutting)) return true;
        return false;
    }

    // `a capture rate of 104%`, `with 104% accuracy`; but `raised attendance 120%`.
    bool is_share(std::size_t i) const {
        if (i > 1 && word(i - 1) == "of" && is_one_of(word(i - 2), List::shares)) return true;
        if (i > 1 && word(i - 1) == "to" && is_of_rate(i)) return true;
        const std::size_t next = word(i + 1) == "percent" ? i + 2 : i + 1;
        if (is_part_of_them(i, next)) return true;
        for (std::size_t k = next; k < next + 3; ++k) // 101% sample recovery rate
            if (word(k + 1) == "rate" && is_one_of(word(k), List::shares)) return true;
        if (!is_one_of(word(next), List::shares)) return false;
        constexpr std::array<std::string_view, 4> grows{"growth", "increase", "rise", "gain"};
        return !is_one_of(word(next + 1), grows);
    }

    // `raised the pass rate from 80% to 130%`
    bool is_of_rate(std::size_t i) const {
        constexpr std::size_t near = 6;
        constexpr std::array<std::string_view, 9> kinds{"pass",     "success",    "completion",
                                                        "capture",  "retention",  "accuracy",
                                                        "survival", "graduation", "attendance"};
        for (std::size_t k = i; k-- > 1 && k + near > i;)
            if (word(k) == "rate" && is_one_of(word(k - 1), kinds)) return true;
        return false;
    }

    // `of which 115% were put back`, `passed 104% of the welds`; but `120% of the goal`.
    bool is_part_of_them(std::size_t i, std::size_t next) const {
        constexpr std::array<std::string_view, 3> those{"which", "whom", "them"};
        constexpr std::array<std::string_view, 4> are{"were", "are", "was", "is"};
        if (i > 1 && word(i - 2) == "of" && is_one_of(word(i - 1), those)) return true;
        if (is_one_of(word(next), are)) return true;
        if (word(next) != "of") return false;
        constexpr std::size_t near = 6; // words
        bool things = is_one_of(word(next + 1), those);
        for (std::size_t k = next + 1; k < next + near && is_word(k); ++k) {
            if (is_one_of(word(k), List::may_be_exceeded)) return false;
            things = things || (word(k).size() > 3 && word(k).ends_with('s'));
        }
        return things;
    }

    bool is_word(std::size_t i) const {
        return i < tokens_.size() && tokens_[i].kind == english::TokenKind::word;
    }

    bool is_count(std::size_t i) const { // neither money nor a share
        return value_of(word(i)) && word(i).find_first_of("$%") == std::string_view::npos;
    }

    bool is_several(std::size_t i) const { // 15 children, 15 first children
        return word(i).ends_with('s') || is_one_of(word(i), List::those_served);
    }

    // The number that the one at `i` is some of: `16 out of 14`, `44 of 41 nights`.
    std::optional<std::size_t> whole_of(std::size_t i) const {
        if (word(i + 1) == "out" && word(i + 2) == "of" && value_of(word(i + 3))) return i + 3;
        if (!is_count(i) || word(i + 1) != "of") return std::nullopt;
        if (word(i + 2) == "the" && value_of(word(i + 3))) return i + 3;
        const bool joined = i > 1 && (tokens_[i - 1].kind == english::TokenKind::comma ||
                                      word(i - 2) == "and"); // and forwarded 152 of them
        const bool of_them = word(i + 2) == "them" && joined;
        if (word(i + 2) == "whom" || word(i + 2) == "which" || of_them) return count_before(i);
        if (word(i + 2) == "those" || word(i + 2) == "these") return counted_before(i, word(i + 3));
        if (!is_count(i + 2) || !is_word(i + 3)) return std::nullopt;
        if (!is_several(i + 3) && !is_several(i + 4)) return std::nullopt;
        for (std::size_t k = i + 3; k < i + 6; ++k)
            if (is_one_of(word(k), List::kinds_of_things) || word(k) == "each") return std::nullopt;
        return i + 2;
    }

    // `all 6 guides`, before `8 of those guides`
    std::optional<std::size_t> counted_before(std::size_t i, std::string_view things) const {
        while (i-- > 0)
            if (is_count(i) && word(i + 1) == things) return i;
        return std::nullopt;
    }

    // `64 volunteers, 71 of whom`; of `them`, the largest that they may be some of: 48 students in
    // 3 schools, 12 of them
    std::optional<std::size_t> count_before(std::size_t i) const {
        constexpr std::size_t near = 5, far = 12;
        const bool of_them = word(i + 2) == "them";
        std::optional<std::size_t> found;
        for (std::size_t k = i; k-- > 0 && k + (found ? far : near) >= i;) {
            if (!value_of(word(k))) continue;
            if (!found && (!is_count(k) || !of_them))
                return is_count(k) ? std::optional(k) : std::nullopt;
            if (is_count(k) && (!found || *value_of(word(k)) > *value_of(word(*found)))) found = k;
        }
        return found;
    }

    // `9 days a week`, `9,000 hours in 2025`
    bool is_too_often(std::size_t i, std::optional<double> value) const {
        struct Most {
            std::string_view parts, whole;
            double count;
        };
        static constexpr std::array<Most, 6> all{{{"days", "week", 7},
                                                  {"months", "year", 12},
                                                  {"hours", "day", 24},
                                                  {"hours", "week", 168},
                                                  {"hours", "year", 366 * 24},
                                                  {"days", "year", 366}}};
        static constexpr std::array<std::string_view, 4> every{"a", "per", "each", "every"};
        static constexpr std::array<std::string_view, 3> within{"in", "within", "over"};
        if (!value) return false;
        // 9,000 apprentice hours in 2025
        const std::size_t unit = is_word(i + 1) && !word(i + 1).ends_with('s') ? i + 2 : i + 1;
        const bool of_whole = word(unit + 1) == "of"; // 13 months of the year
        const std::size_t article = of_whole ? unit + 2 : unit + 1;
        const bool each = is_one_of(word(article), every) || (of_whole && word(article) == "the");
        const bool in_year = word(unit + 1) == "in" && word(unit + 2).size() == 4 &&
                             value_of(word(unit + 2)).value_or(0) >= trade::first_year;
        // 400 hours of bench time in two weeks
        constexpr std::size_t most_between = 4;
        std::size_t in = unit + 1;
        while (in < unit + 1 + most_between && !is_one_of(word(in), within))
            ++in;
        const double wholes = is_one_of(word(in), within) ? counted(word(in + 1)) : 0;
        return std::ranges::any_of(all, [&](const Most& most) {
            if (word(unit) != most.parts) return false;
            if (wholes > 0 && word(in + 2) == std::string(most.whole) + 's')
                return *value > most.count * wholes;
            return *value > most.count &&
                   ((each && word(article + 1) == most.whole) || (in_year && most.whole == "year"));
        });
    }

    // `Diagnosed 15 vehicles an hour`: far more than one pair of hands can do.
    bool is_too_fast(std::size_t i, double value) const {
        struct Pace {
            std::string_view things, unit, deeds;
            double most;
        };
        static constexpr std::array<Pace, 8> paces{{
            {"words", "minute", "typed type transcribed transcribe", 200},
            {"vehicles", "hour", "diagnosed diagnose repaired repair serviced service fixed", 8},
            {"cars", "hour", "diagnosed diagnose repaired repair serviced service fixed", 8},
            {"patients", "hour", "assessed assess treated treat examined examine bathed bathe", 20},
            {"essays", "hour", "graded grade edited edit read", 60},
            {"papers", "hour", "graded grade edited edit wrote write", 60},
            {"haircuts", "hour", "gave give cut did", 10},
            {"students", "hour", "tutored tutor tested", 60},
        }};
        static constexpr std::array<std::string_view, 3> every{"a", "an", "per"};
        return std::ranges::any_of(paces, [&](const Pace& pace) {
            return word(i + 1) == pace.things && is_one_of(word(i + 2), every) &&
                   word(i + 3) == pace.unit && has_word(pace.deeds, word(0)) && value > pace.most;
        });
    }

    // A number in figures or words; 0 if it is none.
    static double counted(std::string_view word) {
        const auto named = number_named(word);
        return named ? *named : value_of(word).value_or(0);
    }

    // `Filled 150 of 160 places, up from 190`; `raised turnout to 40 guests from 62`.
    void look_behind_reached(std::vector<Finding>& findings) const {
        constexpr std::size_t near = 8;
        for (std::size_t i = 1; i + 1 < tokens_.size(); ++i) {
            const bool stated = word(i - 1) == "up" || word(i - 1) == "down";
            const auto before = stated && word(i) == "from" ? value_of(word(i + 1)) : std::nullopt;
            if (!before) continue;
            for (std::size_t k = i - 1; k-- > 0 && k + near > i;) {
                const auto reached = value_of(word(k));
                if (!reached || (k > 0 && word(k - 1) == "of")) continue;
                if (!is_same_unit(k, i + 1, {})) break;
                const bool wrong = word(i - 1) == "up" ? *reached < *before : *reached > *before;
                if (wrong) tell<messages::wrong_way>(k, i + 1, findings);
                break;
            }
        }
    }

    // `from 12 minutes to 19 a unit`, where both are of one kind.
    std::optional<Change> change_at(std::size_t i) const {
        const auto from = word(i) == "from" ? value_of(word(i + 1)) : std::nullopt;
        if (!from) return std::nullopt;
        std::size_t to = i + 2;
        const std::string_view unit = word(to) == "to" ? std::string_view{} : word(to++);
        if (word(to) != "to" && !unit.empty()) ++to; // two words of what it is
        if (word(to) != "to") return std::nullopt;
        constexpr std::array<std::string_view, 8> about{"under", "over", "about",  "nearly",
                                                        "just",  "only", "almost", "below"};
        while (is_one_of(word(to + 1), about))
            ++to;
        const auto reached = value_of(word(to + 1));
        if (are_years(word(i + 1), word(to + 1))) return std::nullopt;
        if (!reached || !is_same_unit(i + 1, to + 1, unit)) return std::nullopt;
        return Change{*from, *reached, to + 1};
    }

    bool is_same_unit(std::size_t a, std::size_t b, std::string_view unit) const {
        const auto sign = [&](std::size_t i, char c) { return word(i).find(c) != word(i).npos; };
        if (sign(a, '%') != sign(b, '%') || sign(a, '$') != sign(b, '$')) return false;
        const std::string_view next = word(b + 1);
        if (unit.empty() || next.empty() || next == unit) return true;
        constexpr std::array<std::string_view, 20> little{
            "a",  "an",   "per",   "each",  "in", "by",   "with", "and", "for",    "at",
            "on", "over", "after", "while", "as", "when", "or",   "so",  "within", "across"};
        return is_one_of(next, little) || tokens_[b + 1].kind != english::TokenKind::word;
    }

    // The verb of change that is nearest before; a fall, a rise, or neither.
    int direction_before(std::size_t i) const {
        constexpr std::size_t near = 10;
        static constexpr std::array<std::string_view, 10> of_season{
            "the", "in", "each", "every", "last", "this", "of", "for", "by", "and"};
        for (std::size_t k = i; k > 0 && k + near > i; --k) {
            if (word(k - 1) == ";") return 0;
            if (word(k - 1) == "fall" && k > 1 && is_one_of(word(k - 2), of_season)) continue;
            if (is_one_of(word(k - 1), List::verbs_of_cutting) ||
                is_one_of(word(k - 1), List::verbs_of_falling))
                return -1;
            if (is_one_of(word(k - 1), List::verbs_of_rising)) return 1;
        }
        return 0;
    }

    void look_at_changes(std::vector<Finding>& findings) const {
        for (std::size_t i = 0; i < tokens_.size(); ++i) {
            const auto change = change_at(i);
            const int direction = change ? direction_before(i) : 0;
            if (direction == 0) continue;
            const bool wrong =
                direction < 0 ? change->to > change->from : change->to < change->from;
            if (wrong) tell<messages::wrong_way>(i, change->last, findings);
        }
    }

    bool has_any(const auto& list) const {
        return std::ranges::any_of(
            tokens_, [&](const english::Token& one) { return is_one_of(one.lower, list); });
    }

    // `Increased customer happiness by 300%`, `100% guest satisfaction`: nobody can have counted
    // it.
    void look_at_feelings(std::vector<Finding>& findings) const {
        constexpr std::array<std::string_view, 9> measured{"survey", "surveys", "score",
                                                           "scores", "rating",  "ratings",
                                                           "index",  "reviews", "surveyed"};
        constexpr std::size_t near = 5;
        if (has_any(measured)) return;
        for (std::size_t i = 0; i < tokens_.size(); ++i) {
            if (!word(i).ends_with('%') || !value_of(word(i))) continue;
            const std::size_t first = i - std::min(i, near);
            for (std::size_t k = first; k < std::min(i + near, tokens_.size()); ++k) {
                const bool whole = word(i) == "100%" && k > i && word(k) == "satisfaction";
                if (!whole && !is_one_of(word(k), List::feelings)) continue;
                report_feeling(std::min(i, k), std::max(i, k), findings);
                return;
            }
        }
    }

    void report_feeling(std::size_t first, std::size_t last, std::vector<Finding>& findings) const {
        const english::Extent all = extent_of(tokens_, first, last);
        report<messages::unmeasured>(findings, bullet_.place(all), in_quotes(bullet_.words(all)))
            .weight = Weight::should;
    }
};

}

void impossible_figure(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : context.bullets) {
        if (!has_digit(bullet.text)) continue;
        const english::Tokens& tokens = bullet.part.sentence.tokens();
        Figures(bullet, tokens).report_to(findings);
        impossible_sums(bullet, tokens, context, findings);
        impossible_changes(bullet, tokens, findings);
    }
    impossible_measure(context, findings);
}

}
