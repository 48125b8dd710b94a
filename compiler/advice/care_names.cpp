// Names of those in the writer's care: patients, pupils, children.
#include "compiler/advice/care_names.hpp"

#include "compiler/advice/lists.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/english/nouns.hpp"

#include <algorithm>
#include <array>
#include <charconv>

namespace quoin::advice {

namespace {

class Names { // in a bullet
public:
    Names(const WordedBullet& bullet, const english::Language& language)
        : text_(bullet.text), language_(language), part_(bullet.part), words_(part_.words) {}

    std::optional<english::Extent> in_care() const {
        if (const auto name = owned_name()) return name;
        if (const auto name = led_name()) return name;
        if (const auto name = aged_name()) return name;
        if (const auto name = described_name()) return name;
        if (const auto name = disciplined_name()) return name;
        if (const auto name = name_beside_illness()) return name;
        if (const auto name = name_with_age()) return name;
        if (const auto name = accused_name()) return name;
        return single_name();
    }

private:
    std::string_view word(std::size_t i) const {
        return i < words_.size() ? words_[i].word : std::string_view{};
    }
    std::string_view lower(std::size_t i) const {
        return i < words_.size() ? part_.small(words_[i]) : std::string_view{};
    }

    bool is_title(std::size_t i) const { return is_one_of(lower(i), List::titles_of_persons); }

    bool is_capital(std::size_t i) const {
        const std::string_view one = word(i);
        return one.size() > 1 && is_capital_letter(one[0]) && is_small_letter(one[1]);
    }

    // In no dictionary but as a name.
    bool may_be_name(std::size_t i) const {
        return is_capital(i) && !language_.spelled_right(lower(i));
    }

    bool stand_together(std::size_t i) const { // with a blank between
        return i + 1 < words_.size() &&
               words_[i].offset + words_[i].word.size() + 1 == words_[i + 1].offset;
    }

    std::string_view after(std::size_t i) const {
        return std::string_view(text_).substr(words_[i].offset + words_[i].word.size());
    }

    // `Maria Delgado`, `Mr. Falk`
    bool is_name_at(std::size_t i) const {
        if (!is_capital(i) || !is_capital(i + 1)) return false;
        if (is_title(i)) return true;
        return stand_together(i) && may_be_name(i) && may_be_name(i + 1);
    }

    english::Extent extent(std::size_t first, std::size_t last) const {
        const std::size_t begin = words_[first].offset;
        return {begin, words_[last].offset + words_[last].word.size() - begin};
    }

    bool is_in_care(std::size_t i) const {
        return !word(i).empty() && is_small_letter(word(i).front()) &&
               is_one_of(word(i), List::in_care);
    }

    bool is_person(std::size_t i) const {
        return !word(i).empty() && is_small_letter(word(i).front()) &&
               english::is_person_noun(word(i), {});
    }

    // The word behind the verb and its particle, if the bullet opens with a verb of care.
    std::optional<std::size_t> after_care_verb() const {
        if (words_.empty()) return std::nullopt;
        const auto base = language_.base_of(lower(0));
        const bool cares =
            (base && is_one_of(*base, List::care_verbs)) || is_one_of(lower(0), List::care_verbs);
        if (!cares) return std::nullopt;
        constexpr std::array<std::string_view, 4> particles{"for", "after", "to", "with"};
        return is_one_of(word(1), particles) ? 2 : 1;
    }

    // Mateo Quiroga's progress
    std::optional<english::Extent> owned_name() const {
        for (std::size_t i = 1; i + 2 < words_.size(); ++i) {
            const bool owns = word(i + 1).ends_with("'s") || word(i + 1).ends_with("\u2019s");
            if (owns && is_one_of(lower(i + 2), List::told_of_those_in_care) && is_name_at(i))
                return extent(i, i + 1);
        }
        return std::nullopt;
    }

    // patient Maria Delgado; Mr. Abelard, a patient; Cared for Mrs. Lowell
    std::optional<english::Extent> led_name() const {
        bool of_care = false;
        for (std::size_t i = 0; i < words_.size(); ++i)
            of_care = of_care || is_in_care(i);
        const auto object = after_care_verb();
        for (std::size_t i = 0; i + 1 < words_.size(); ++i) {
            const bool titled = of_care && is_title(i);
            // Rehabbed the knee of goalkeeper Jonah Pike
            const bool led = i > 0 && (is_in_care(i - 1) || (object && is_person(i - 1)));
            const bool named =
                is_name_at(i) || (led && stand_together(i) && may_be_name(i) && is_capital(i + 1) &&
                                  after(i + 1).starts_with(", who"));
            if ((titled || led || object == i) && named) return extent(i, i + 1);
        }
        return std::nullopt;
    }

    // A number of years under 18 at `text`, of one person or of several, and no range.
    static bool is_age(std::string_view text) {
        constexpr int grown = 18;
        int years = 0;
        const auto end = std::from_chars(text.data(), text.data() + text.size(), years);
        if (end.ec != std::errc{} || years == 0 || years >= grown) return false;
        text.remove_prefix(static_cast<std::size_t>(end.ptr - text.data()));
        return !text.starts_with(" to ") && !text.starts_with('-') && !text.starts_with("\u2013") &&
               !text.starts_with(" through ") && !text.starts_with('+') && !text.starts_with('%');
    }

    // Lila Pruett, ages 4 and 6; Lily (6)
    std::optional<english::Extent> aged_name() const {
        constexpr std::array<std::string_view, 4> of_teams{"coach", "counsel", "represent",
                                                           "transport"};
        const auto verb = words_.empty() ? std::nullopt : language_.base_of(lower(0));
        const bool cares = after_care_verb().has_value() && !(verb && is_one_of(*verb, of_teams));
        for (std::size_t i = 1; i < words_.size(); ++i) {
            const std::string_view rest = after(i);
            const bool of_one = rest.starts_with(", age ") || rest.starts_with(", aged ");
            if (!may_be_name(i) && !((cares || of_one) && is_capital(i))) continue;
            for (const std::string_view age : {", age ", ", ages ", ", aged ", " (age ", " (ages "})
                if (rest.starts_with(age) && is_age(rest.substr(age.size()))) return extent(i, i);
            const bool alone = rest.starts_with(" (") && is_age(rest.substr(2));
            if (cares && alone && rest.find(')') <= 4) return extent(i, i);
        }
        return std::nullopt;
    }

    bool is_full_name(std::size_t i) const { // Marcus Bell: the one or the other is a name alone
        return stand_together(i) && is_capital(i) && is_capital(i + 1) &&
               (may_be_name(i) || may_be_name(i + 1));
    }

    // Helped Timmy Oakes, a child with dyslexia
    std::optional<english::Extent> described_name() const {
        constexpr std::array<std::string_view, 8> goes_on{"with", "who",  "aged", "age",
                                                          "in",   "from", "at",   "of"};
        for (std::size_t i = 1; i + 3 < words_.size(); ++i) {
            const std::string_view rest = after(i + 1);
            if (!is_full_name(i) || !(rest.starts_with(", a ") || rest.starts_with(", an ")))
                continue;
            for (std::size_t k = i + 3; k < i + 6 && k < words_.size(); ++k) {
                const bool cared = is_one_of(lower(k), List::those_cared_for) || is_in_care(k);
                if (cared && (k + 1 == words_.size() || is_one_of(lower(k + 1), goes_on)))
                    return extent(i, i + 1);
            }
        }
        return std::nullopt;
    }

    // Handled the firing of Marcus Bell
    std::optional<english::Extent> disciplined_name() const {
        constexpr std::array<std::string_view, 9> measures{"firing",    "termination", "suspension",
                                                           "dismissal", "arrest",      "eviction",
                                                           "divorce",   "demotion",    "layoff"};
        for (std::size_t i = 2; i + 1 < words_.size(); ++i)
            if (lower(i - 1) == "of" && is_one_of(lower(i - 2), measures) && is_full_name(i))
                return extent(i, i + 1);
        return std::nullopt;
    }

    // What stands before may be of the name; a verb that opens the bullet and a title are not.
    bool may_begin_before(std::size_t i) const {
        return is_capital(i - 1) && !is_title(i - 1) && (i > 1 || may_be_name(i - 1));
    }

    // Guided Mrs. Dorothea Hale, 81, through exercises
    std::optional<english::Extent> name_with_age() const {
        for (std::size_t i = 1; i + 1 < words_.size(); ++i) {
            const bool titled = is_title(i - 1) && is_capital(i);
            const std::size_t last = is_capital(i + 1) && stand_together(i) ? i + 1 : i;
            if (!titled && (!is_full_name(i) || may_begin_before(i))) continue;
            const std::string_view rest = after(last);
            if (!rest.starts_with(", ")) continue;
            const std::size_t end = std::min(rest.find_first_not_of("0123456789", 2), rest.size());
            const bool age = end > 2 && end < 5 && (end == rest.size() || rest[end] == ',');
            if (age) return extent(titled ? i - 1 : i, last);
        }
        return std::nullopt;
    }

    // Investigated a complaint against night foreman Ty Belford
    std::optional<english::Extent> accused_name() const {
        constexpr std::array<std::string_view, 4> beside{"with", "under", "by", "for"};
        bool accused = false;
        for (std::size_t i = 2; i + 1 < words_.size(); ++i) {
            accused = accused || is_one_of(lower(i - 1), List::misconduct);
            if (!accused) continue;
            const bool person = is_person(i - 1) && !is_one_of(lower(i - 2), beside);
            const bool led = person || lower(i - 1) == "against" || lower(i - 1) == "between";
            if (led && is_full_name(i)) return extent(i, i + 1);
        }
        return std::nullopt;
    }

    // Placed the sons of Loretta Vance, then in detox; not one's own teacher or doctor
    std::optional<english::Extent> name_beside_illness() const {
        constexpr std::array<std::string_view, 8> beside{"with", "under", "by",        "dr",
                                                         "for",  "from",  "professor", "nurse"};
        constexpr std::size_t near = 8, told_near = 16; // words behind the name
        for (std::size_t i = 1; i + 1 < words_.size(); ++i) {
            const bool patient = is_title(i - 1) && is_capital(i); // Mrs. Varga
            if (!patient && (!is_full_name(i) || may_begin_before(i))) continue;
            const std::string_view rest =
                after(i + 1); // Harold Vance, 84, …; Ethan Marsh, who has …
            const bool told = rest.starts_with(", who ") ||
                              (rest.size() > 2 && rest.starts_with(", ") && is_figure(rest[2]));
            if (!told && is_one_of(lower(i - 1), beside)) continue;
            for (std::size_t k = i + 2; k < words_.size() && k < i + 2 + (told ? told_near : near);
                 ++k)
                if (is_small_letter(word(k).front()) && is_one_of(word(k), List::illness))
                    return extent(i, i + 1);
                else if (word(k) == "hiv" || word(k) == "HIV" || word(k) == "AIDS")
                    return extent(i, i + 1);
        }
        return std::nullopt;
    }

    // Tutored Jaylen, a fourth grader
    std::optional<english::Extent> single_name() const {
        const auto object = after_care_verb();
        if (!object || !may_be_name(*object)) return std::nullopt;
        const std::string_view rest = after(*object);
        constexpr std::size_t near = 40; // bytes
        const bool told = rest.starts_with(", a ") || rest.starts_with(", an ");
        if (rest.starts_with(", who ")) return extent(*object, *object);
        if (!told) return std::nullopt;
        for (const WordAt& one : words_in(rest.substr(0, near)))
            if (is_one_of(one.word, List::those_cared_for)) return extent(*object, *object);
        return std::nullopt;
    }

    const std::string& text_;
    const english::Language& language_;
    const TextInResume& part_;
    const std::vector<WordAt>& words_;
};

}

std::optional<english::Extent> name_in_care(const WordedBullet& bullet,
                                            const english::Language& language) {
    return Names(bullet, language).in_care();
}

}
