// Units and notations that a page mixes: Celsius and Fahrenheit, `lb` and `pounds`, `%` and
// `percent`, 5 p.m. and 17:00.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/consistency.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace quoin::advice {

namespace {

// One of the ways to write what a family of units has in common. Behind a figure.
struct UnitForm {
    std::string_view typed; // as it stands, in small letters but for those of the clock
    std::string_view family, form;
};
constexpr std::array unit_forms_known{UnitForm{"°f", "heat", "f"},
                                      UnitForm{"°c", "heat", "c"},
                                      UnitForm{"degrees f", "heat", "f"},
                                      UnitForm{"degrees c", "heat", "c"},
                                      UnitForm{"lb", "weight", "lb"},
                                      UnitForm{"lbs", "weight", "lb"},
                                      UnitForm{"pounds", "weight", "lb"},
                                      UnitForm{"pound", "weight", "lb"},
                                      UnitForm{"kg", "weight", "kg"},
                                      UnitForm{"kilograms", "weight", "kg"},
                                      UnitForm{"lb", "pounds", "lb"},
                                      UnitForm{"lbs", "pounds", "lbs"},
                                      UnitForm{"pounds", "pounds", "word"},
                                      UnitForm{"miles", "distance", "mile"},
                                      UnitForm{"mile", "distance", "mile"},
                                      UnitForm{"km", "distance", "km"},
                                      UnitForm{"kilometers", "distance", "km"},
                                      UnitForm{"miles", "miles", "word"},
                                      UnitForm{"mi", "miles", "mi"},
                                      UnitForm{"gal", "volume", "gal"},
                                      UnitForm{"gallons", "volume", "gal"},
                                      UnitForm{"gallon", "volume", "gal"},
                                      UnitForm{"liters", "volume", "liter"},
                                      UnitForm{"liter", "volume", "liter"},
                                      UnitForm{"in.", "inches", "in."},
                                      UnitForm{"inch", "inches", "inch"},
                                      UnitForm{"inches", "inches", "inch"},
                                      UnitForm{"\"", "inches", "sign"},
                                      UnitForm{"ft", "feet", "ft"},
                                      UnitForm{"feet", "feet", "word"},
                                      UnitForm{"oz", "ounces", "oz"},
                                      UnitForm{"ounces", "ounces", "word"},
                                      UnitForm{"%", "percent", "sign"},
                                      UnitForm{"percent", "percent", "word"},
                                      UnitForm{"a.m.", "clock", "a.m."},
                                      UnitForm{"p.m.", "clock", "a.m."},
                                      UnitForm{"am", "clock", "am"},
                                      UnitForm{"pm", "clock", "am"}};

// What is written with capitals and without; behind a figure, as it stands.
struct UnitCase {
    std::string_view family, typed;
};
constexpr std::array unit_cases{
    UnitCase{"psi", "psi"}, UnitCase{"psi", "PSI"}, UnitCase{"ml", "mL"},   UnitCase{"ml", "ml"},
    UnitCase{"ml", "ML"},   UnitCase{"rpm", "rpm"}, UnitCase{"rpm", "RPM"}, UnitCase{"mph", "mph"},
    UnitCase{"mph", "MPH"}, UnitCase{"kg", "kg"},   UnitCase{"kg", "Kg"},   UnitCase{"kg", "KG"},
    UnitCase{"kwh", "kWh"}, UnitCase{"kwh", "KWH"}, UnitCase{"kwh", "kwh"}, UnitCase{"gb", "GB"},
    UnitCase{"gb", "gb"},   UnitCase{"mg", "mg"},   UnitCase{"mg", "Mg"},   UnitCase{"cm", "cm"},
    UnitCase{"cm", "CM"},   UnitCase{"mm", "mm"},   UnitCase{"mm", "MM"}};

struct UnitSpot {
    std::string typed; // the figure with its unit
    Place place;
    std::size_t count = 0;
};

class UnitForms {
public:
    void look_at(const model::Text& text) {
        const std::string plain = text.plain(), lower = lower_case(plain);
        std::map<std::string_view, std::map<std::string_view, UnitSpot>> here;
        for (std::size_t at = 0; at < lower.size();) {
            const std::size_t begin = at;
            if (!is_figure(lower[at++])) continue;
            while (at < lower.size() && (is_figure(lower[at]) || lower[at] == ',' ||
                                         lower[at] == '.' || lower[at] == ':'))
                ++at;
            while (at > begin + 1 && !is_figure(lower[at - 1]))
                --at;
            add_forms({plain, lower, begin, at}, text, here);
        }
        for (auto& [family, forms] : here)
            if (forms.size() == 1 || !is_converted(family)) // 246°C (475°F)
                for (auto& [form, spot] : forms)
                    keep(family, form, std::move(spot));
    }

    void report_to(std::vector<Finding>& findings) const {
        for (const auto& [family, forms] : seen_) {
            if (forms.size() < 2) continue;
            const auto fewer = [](const auto& a, const auto& b) {
                return a.second.count < b.second.count ||
                       (a.second.count == b.second.count &&
                        a.second.place.line > b.second.place.line);
            };
            const auto odd = std::ranges::min_element(forms, fewer);
            const auto usual = std::ranges::max_element(forms, fewer);
            report<messages::unit_in_two_forms>(
                findings, odd->second.place, in_quotes(odd->second.typed),
                in_quotes(usual->second.typed), usual->second.place.line);
        }
    }

private:
    struct Figure {
        const std::string &plain, &lower;
        std::size_t begin = 0, end = 0;
    };
    using Forms = std::map<std::string_view, std::map<std::string_view, UnitSpot>>;

    static bool is_converted(std::string_view family) {
        return family == "heat" || family == "weight" || family == "distance" || family == "volume";
    }

    static bool ends_word(std::string_view rest, std::string_view unit) {
        const bool letters = is_ascii_letter(unit.back());
        return rest.size() == unit.size() || !letters || !is_word_byte(rest[unit.size()]);
    }

    void add_forms(const Figure& one, const model::Text& text, Forms& here) const {
        std::string_view rest = std::string_view(one.lower).substr(one.end);
        const std::size_t gap = rest.starts_with(' ') || rest.starts_with('-') ? 1 : 0;
        rest.remove_prefix(gap);
        for (const UnitForm& known : unit_forms_known) {
            if (!rest.starts_with(known.typed) || !ends_word(rest, known.typed)) continue;
            if (gap > 0 && (known.typed == "%" || known.typed == "\"")) continue;
            add(known.family, known.form, one, gap + known.typed.size(), text, here);
        }
        const std::string_view plain = std::string_view(one.plain).substr(one.end + gap);
        for (const UnitCase& known : unit_cases)
            if (plain.starts_with(known.typed) && ends_word(plain, known.typed))
                add(known.family, known.typed, one, gap + known.typed.size(), text, here);
        add_clock(one, text, here);
        add_thousands(one, text, here);
    }

    // 17:00, but no score and no time of a race
    void add_clock(const Figure& one, const model::Text& text, Forms& here) const {
        const std::string_view figure(one.lower.data() + one.begin, one.end - one.begin);
        const std::string_view before = trimmed(std::string_view(one.lower).substr(0, one.begin));
        constexpr std::array<std::string_view, 8> times{"at",     "from", "until", "to",
                                                        "before", "by",   "till",  "after"};
        const std::size_t space = before.rfind(' ');
        const bool timed = is_one_of(before.substr(space == before.npos ? 0 : space + 1), times);
        const bool late = figure.size() == 5 && figure[2] == ':' && figure.substr(0, 2) >= "13" &&
                          figure.substr(0, 2) <= "24" && figure[3] <= '5';
        if (timed && late) add("clock", "24", one, 0, text, here);
    }

    // $2K beside $14,000
    void add_thousands(const Figure& one, const model::Text& text, Forms& here) const {
        const bool money = one.begin > 0 && one.lower[one.begin - 1] == '$';
        const std::string_view figure(one.lower.data() + one.begin, one.end - one.begin);
        const std::string_view rest = std::string_view(one.lower).substr(one.end);
        if (figure.size() > 4 && figure[figure.size() - 4] == ',')
            return add("thousands", "comma", one, 0, text, here);
        if (!money) return;
        if (rest.starts_with('k') && (rest.size() == 1 || !is_word_byte(rest[1])))
            add("thousands", "k", one, 1, text, here);
    }

    static void add(std::string_view family, std::string_view form, const Figure& one,
                    std::size_t more, const model::Text& text, Forms& here) {
        UnitSpot& spot = here[family][form];
        if (spot.count++ > 0) return;
        const std::size_t length = one.end - one.begin + more;
        spot.typed = one.plain.substr(one.begin, length);
        spot.place = text.place(one.begin, length);
    }

    void keep(std::string_view family, std::string_view form, UnitSpot spot) {
        UnitSpot& kept = seen_[family][form];
        const std::size_t count = kept.count + spot.count;
        if (kept.count == 0) kept = std::move(spot);
        kept.count = count;
    }

    Forms seen_;
};

// `cooled it to 4`: of what?
std::optional<english::Extent> degrees_without_unit(const TextInResume& part) {
    constexpr std::array<std::string_view, 6> verbs{"cooled", "heated",   "chilled",
                                                    "warmed", "annealed", "tempered"};
    constexpr std::size_t near = 4;
    const auto& words = part.words;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (!is_one_of(part.small(words[i]), verbs)) continue;
        for (std::size_t k = i + 1; k + 1 < words.size() && k < i + 1 + near; ++k) {
            const bool leads = part.small(words[k]) == "to" || part.small(words[k]) == "at";
            if (!leads || !all_figures(words[k + 1].word)) continue;
            const std::size_t end = words[k + 1].offset + words[k + 1].word.size();
            const std::string_view rest = std::string_view(part.lower).substr(end);
            const bool bare = rest.empty() || rest.starts_with(" for ") ||
                              rest.starts_with(" with ") || rest.starts_with(" in ") ||
                              ((rest[0] == ',' || rest[0] == ';') && rest.starts_with(", "));
            if (bare) return english::Extent{words[i].offset, end - words[i].offset};
        }
    }
    return std::nullopt;
}

}

void unit_forms(const ProofContext& context, std::vector<Finding>& findings) {
    UnitForms forms;
    for (const TextInResume& part : context.texts) {
        const std::string& text = part.plain;
        if (!is_wording(part) || !has_digit(text) || text.size() > longest_bullet) continue;
        forms.look_at(part.text);
        if (!part.bullet) continue;
        if (const auto bare = degrees_without_unit(part))
            report<messages::no_unit>(findings, part.text.place(bare->offset, bare->length),
                                      in_quotes(text.substr(bare->offset, bare->length)));
    }
    forms.report_to(findings);
}

// `flipped bags & sold 9`; but Hale & Sons, R&D
std::optional<std::size_t> ampersand_in(std::string_view text) {
    for (std::size_t at = text.find(" & "); at != text.npos; at = text.find(" & ", at + 1)) {
        const std::size_t space = at == 0 ? at : text.rfind(' ', at - 1);
        const std::size_t begin = space == text.npos ? 0 : space + 1;
        if (begin >= at || at + 3 >= text.size()) continue;
        const bool opens = begin == 0 && is_small_letter(text[at - 1]); // Washed & folded
        const bool small = opens || is_small_letter(text[begin]) || is_figure(text[begin]);
        if (small && is_small_letter(text[at + 3])) return at + 1;
    }
    return std::nullopt;
}

// Told where the page writes 'and' elsewhere, more often.
void ampersands(const ProofContext& context, std::vector<Finding>& findings) {
    std::ptrdiff_t words = 0;
    std::vector<Place> signs;
    for (const WordedBullet& bullet : context.bullets) {
        if (const auto at = ampersand_in(bullet.text)) signs.push_back(bullet.place({*at, 1}));
        if (bullet.text.find(" and ") != bullet.text.npos) ++words;
    }
    if (words <= std::ssize(signs)) return;
    for (const Place& place : signs)
        report<messages::ampersand>(findings, place);
}

}
