// Figures with a unit that cannot be where they stand: an oven of 4,750°F, a pH of 17, June 31.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/numbers.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/trade/months.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace quoin::advice {

namespace {

struct Amount {
    double value = 0;
    std::size_t begin = 0, end = 0; // bytes
};

// `-80`, but not of `2-80` or `CH-47`.
bool is_negative(std::string_view text, std::size_t at) {
    const std::string_view before = text.substr(0, at);
    for (const std::string_view sign : {"-", "\u2212", "\u2011", "\u2013"}) {
        if (!before.ends_with(sign)) continue;
        const std::size_t begin = at - sign.size();
        return begin == 0 || text[begin - 1] == ' ' || text[begin - 1] == '(';
    }
    return false;
}

// Numbers that begin where a word may; none of names, nor of minutes: B12, 6:30.
std::vector<Amount> amounts_of(std::string_view text) {
    std::vector<Amount> amounts;
    for (std::size_t at = 0; at < text.size();) {
        if (!is_figure(text[at])) {
            ++at;
            continue;
        }
        std::size_t end = at;
        while (end < text.size() &&
               (is_figure(text[end]) || ((text[end] == ',' || text[end] == '.') &&
                                         end + 1 < text.size() && is_figure(text[end + 1]))))
            ++end;
        const bool named = at > 0 && (is_ascii_letter(text[at - 1]) || text[at - 1] == ':');
        const auto value = grouped_number(text.substr(at, end - at));
        const double sign = is_negative(text, at) ? -1 : 1;
        if (value && !named) amounts.push_back({sign * value.value_or(0), at, end});
        at = end;
    }
    return amounts;
}

constexpr double degrees_of_celsius = 1.8, freezing_point = 32; // in degrees Fahrenheit

// What stands behind a figure of a temperature; none behind others.
enum class Scale { fahrenheit, celsius, unsaid };
std::optional<std::pair<Scale, std::size_t>> scale_at(std::string_view rest) {
    struct Sign {
        std::string_view typed;
        Scale scale{};
    };
    static constexpr std::array signs{
        Sign{"°f", Scale::fahrenheit},        Sign{"° f", Scale::fahrenheit},
        Sign{"°c", Scale::celsius},           Sign{"° c", Scale::celsius},
        Sign{"degrees f", Scale::fahrenheit}, Sign{"degrees c", Scale::celsius},
        Sign{"deg f", Scale::fahrenheit},     Sign{"deg c", Scale::celsius},
        Sign{"degrees", Scale::unsaid},       Sign{"°", Scale::unsaid}};
    const std::size_t blank = rest.starts_with(' ') ? 1 : 0;
    for (const Sign& sign : signs)
        if (rest.substr(blank).starts_with(sign.typed))
            return std::pair(sign.scale, blank + sign.typed.size());
    return std::nullopt;
}

// Of `pH`: between the letters and their figure.
bool leads_to_figure(std::string_view between) {
    constexpr std::array<std::string_view, 12> words{
        "of", "to", "at", "from", "near", "about", "over", "under", "above", "below", "is", "was"};
    const auto all = words_in(between);
    return all.size() < 2 &&
           std::ranges::all_of(all, [&](const WordAt& one) { return is_one_of(one.word, words); });
}

// Nothing that is counted stands behind: `pH at 15 sites`.
bool counts_nothing(std::string_view rest) {
    constexpr std::array<std::string_view, 14> words{"before",  "in",    "with",  "for",   "by",
                                                     "during",  "after", "until", "while", "using",
                                                     "through", "so",    "on",    "when"};
    if (rest.empty() || std::string_view(",.;)").find(rest.front()) != rest.npos) return true;
    const auto next = words_in(rest.substr(0, 12));
    return !next.empty() && is_one_of(next.front().word, words);
}

class Measured { // in a bullet
public:
    Measured(const WordedBullet& bullet, std::vector<Finding>& findings)
        : bullet_(bullet), lower_(bullet.part.lower), findings_(findings) {}

    void look() const {
        for (const Amount& one : amounts_of(lower_)) {
            look_at_heat(one);
            look_at_acid(one);
            look_at_share(one);
            look_at_bounds(one);
            look_at_hours(one);
            look_at_clock(one);
            look_at_day(one);
        }
    }

private:
    std::string_view after(const Amount& one) const {
        return std::string_view(lower_).substr(one.end);
    }
    std::string_view before(const Amount& one) const {
        return trimmed(std::string_view(lower_).substr(0, one.begin));
    }
    bool has(std::string_view phrase) const { return has_phrase(lower_, phrase); }

    // The last word before the figure, in small letters.
    std::string_view word_before(const Amount& one) const {
        const std::string_view text = before(one);
        const std::size_t space = text.find_last_of(" (,");
        return text.substr(space == text.npos ? 0 : space + 1);
    }

    // The degrees that are the most here, and the word that says so.
    std::pair<double, std::string_view> hottest() const {
        std::pair<double, std::string_view> most{0, {}};
        for (const WordAt& one : bullet_.part.words)
            if (const std::string_view word = bullet_.part.small(one);
                const auto said = said_of(word, lines_of(List::hottest)))
                if (const double degrees = *grouped_number((*said)); degrees > most.first)
                    most = {degrees, word};
        return most;
    }

    void look_at_heat(const Amount& one) const {
        constexpr double coldest = -459.67, turns = 360; // of a circle
        const auto scale = scale_at(after(one));
        if (!scale || (scale->first == Scale::unsaid && one.value <= turns)) return;
        const double degrees = scale->first == Scale::celsius
                                   ? one.value * degrees_of_celsius + freezing_point
                                   : one.value;
        const std::size_t end = one.end + scale->second;
        if (degrees < coldest - 1) return tell(one.begin, end, fill<messages::too_cold>());
        const auto [most, why] = hottest();
        if (most > 0 && degrees > most)
            tell(one.begin, end, fill<messages::too_hot>(in_quotes(why)));
    }

    void look_at_acid(const Amount& one) const {
        constexpr double most = 14;
        const std::string_view text = before(one);
        const std::size_t at = text.rfind("ph");
        if (one.value <= most || at == text.npos || (at > 0 && text[at - 1] != ' ')) return;
        if (at + 2 < text.size() && text[at + 2] != ' ') return;
        if (leads_to_figure(text.substr(at + 2)) && counts_nothing(after(one)))
            tell(at, one.end, fill<messages::beyond_acids>());
    }

    // `humidity at 140%`, `105% on the state exam`, `in the 103rd percentile`
    void look_at_share(const Amount& one) const {
        constexpr double whole = 100;
        const std::string_view rest = after(one);
        if (one.value < whole) return;
        if (rest.size() > 2 && rest.substr(2).starts_with(" percentile"))
            return tell(one.begin, one.end + 2, fill<messages::beyond_percentiles>());
        const bool percent = rest.starts_with('%') || rest.starts_with(" percent");
        if (one.value == whole || !percent || has_phrase(rest.substr(0, 12), "of")) return;
        const std::size_t near = before(one).size() - std::min<std::size_t>(before(one).size(), 24);
        const bool shares = std::ranges::any_of(words_in(before(one).substr(near)), is_share) ||
                            std::ranges::any_of(words_in(rest.substr(0, 24)), is_share);
        constexpr std::array<std::string_view, 3> held{"at", "of", "above"};
        const bool at_rate = is_one_of(word_before(one), held) &&
                             std::ranges::any_of(words_in(before(one).substr(near)), is_rate);
        const bool scored = has("exam") && (has("scored") || has("passed") || has("earned"));
        if (shares || at_rate || scored)
            tell(one.begin, one.end + 1, fill<messages::beyond_whole>());
    }
    static bool is_rate(const WordAt& one) { return is_one_of(one.word, List::measured_rates); }
    static bool is_share(const WordAt& one) { return is_one_of(one.word, List::measured_shares); }

    void look_at_bounds(const Amount& one) const {
        constexpr double oxygen = 60, salt = 345, pulse = 1300, pulse_of_man = 300, blood = 300,
                         speed = 200;
        const std::string_view rest = trimmed(after(one).substr(0, 8));
        const std::size_t end = one.end + after(one).find(rest);
        const bool parts = rest.starts_with("mg/l") || rest.starts_with("ppm");
        if (parts && has("oxygen") && one.value > oxygen)
            tell(one.begin, end + (rest.starts_with('p') ? 3 : 4),
                 fill<messages::beyond_solution>());
        const bool salts = rest.starts_with("ppt") || rest.starts_with("psu");
        if (salts && has("salinity") && one.value > salt)
            tell(one.begin, end + 3, fill<messages::beyond_solution>());
        const bool human = has("patient") || has("patients") || has("resting") || has("residents");
        if (rest.starts_with("bpm") && (has("heart") || has("pulse")) &&
            one.value > (human ? pulse_of_man : pulse))
            tell(one.begin, end + 3, fill<messages::beyond_pulse>());
        if (rest.starts_with('/') && has("blood pressure") && one.value > blood)
            tell(one.begin, one.end, fill<messages::beyond_pressure>());
        if (rest.starts_with("mph") && one.value > speed && drives())
            tell(one.begin, end + 3, fill<messages::beyond_speed>());
    }

    bool drives() const {
        return std::ranges::any_of(bullet_.part.words, [&](const WordAt& word) {
            return is_one_of(bullet_.part.small(word), List::vehicles);
        });
    }

    void look_at_hours(const Amount& one) const { // 25-hour days
        constexpr double of_day = 24;
        for (const std::string_view day : {"-hour days", "-hour day"})
            if (one.value > of_day && after(one).starts_with(day))
                return tell(one.begin, one.end + day.size(), fill<messages::beyond_day>());
    }

    void look_at_clock(const Amount& one) const { // at 9:75, 14 p.m.
        constexpr double noon = 12, of_day = 24, of_hour = 60;
        constexpr std::array<std::string_view, 7> times{"at", "from",   "until", "to",
                                                        "by", "before", "after"};
        const std::string_view rest = after(one);
        const bool timed = is_one_of(word_before(one), times);
        const auto minutes = rest.starts_with(':') && rest.size() > 2
                                 ? grouped_number((rest.substr(1, 2)))
                                 : std::nullopt;
        if (timed && minutes && one.value <= of_day && *minutes >= of_hour)
            return tell(one.begin, one.end + 3, fill<messages::beyond_clock>());
        const std::string_view half = trimmed(rest.substr(minutes ? 3 : 0).substr(0, 5));
        const bool halved = half.starts_with("a.m.") || half.starts_with("p.m.") || half == "am" ||
                            half == "pm" || half.starts_with("am ") || half.starts_with("pm ");
        if (halved && one.value > noon && one.value <= of_day + 75)
            tell(one.begin, one.end, fill<messages::beyond_clock>());
    }

    void look_at_day(const Amount& one) const { // June 31
        constexpr std::array<int, trade::months_of_year> days{31, 29, 31, 30, 31, 30,
                                                              31, 31, 30, 31, 30, 31};
        constexpr int most = 40;
        const std::string_view name = word_before(one);
        const auto month = trade::month_named(name);
        if (!month || one.end - one.begin != 2 || one.value > most) return;
        const std::size_t at = before(one).size() - name.size();
        const int last = days.at(static_cast<std::size_t>(month->month) - 1);
        const bool named = is_capital_letter(bullet_.text[at]);
        if (named && one.value > last && counts_nothing(after(one)))
            tell(at, one.end,
                 fill<messages::beyond_month>(
                     trade::month_names.at(static_cast<std::size_t>(month->month) - 1), last));
    }

    void tell(std::size_t begin, std::size_t end, const std::string& why) const {
        const english::Extent extent{begin, std::min(end, bullet_.text.size()) - begin};
        report<messages::impossible_value>(findings_, bullet_.place(extent),
                                           in_quotes(bullet_.words(extent)), why);
    }

    const WordedBullet& bullet_;
    const std::string& lower_;
    std::vector<Finding>& findings_;
};

}

void impossible_measure(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : context.bullets)
        if (bullet.text.size() < longest_bullet && has_digit(bullet.text))
            Measured(bullet, findings).look();
}

}
