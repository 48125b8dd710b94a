// What headline and summary say of the degree, against the education section: its grades, its date,
// its field.
#include "compiler/advice/study_differs.hpp"

#include "compiler/advice/date_order.hpp"
#include "compiler/advice/degree_claims.hpp"
#include "compiler/advice/gpa.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/trade/months.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>

namespace quoin::advice {

namespace {

using trade::FieldName;

// `3.5 GPA`, `GPA of 3.5`: the figure.
std::optional<WordAt> gpa_in(std::string_view text) {
    constexpr std::size_t longest = 4; // 3.62
    const std::size_t at = find_phrase(lower_case(text), "gpa");
    if (at == text.npos) return std::nullopt;
    constexpr std::string_view figures = "0123456789.";
    const std::string_view before = trimmed(text.substr(0, at));
    const std::size_t begin = before.find_last_not_of(figures);
    std::string_view value = before.substr(begin == before.npos ? 0 : begin + 1);
    if (value.empty()) {
        const std::size_t next = text.find_first_of(figures, at);
        if (next == text.npos || next > at + 8) return std::nullopt;
        value = text.substr(next, text.find_first_not_of(figures, next) - next);
    }
    value = trimmed(value, ".");
    if (value.size() < 3 || value.size() > longest || value[1] != '.') return std::nullopt;
    return WordAt{value, static_cast<std::size_t>(value.data() - text.data())};
}

// As far as the shorter is given: 3.5 for 3.52, and 3.6 where it is rounded up from 3.58.
bool is_same_gpa(double told, double shown) {
    constexpr double rounding = 0.051;
    return std::abs(told - shown) < rounding;
}

// The GPA of the page, if it is another; null where one is the same, or cannot be read.
const model::Field* another_gpa(const model::Resume& resume, double told) {
    const model::Field* shown = nullptr;
    for (const Position& position : positions(resume, {trade::Holds::education}))
        if (const model::Field* field = position.entry->find(FieldName::gpa)) {
            const auto gpa = read_gpa(plain_in(field));
            if (!gpa || is_same_gpa(told, gpa->value)) return nullptr;
            shown = field;
        }
    return shown;
}

// `graduating May 2027`, `class of 2027`, `May 2027 graduate`: the date, and where it stands.
struct GraduationTold {
    model::Date date;
    WordAt words;
};

std::optional<GraduationTold> graduation_in(const TextInResume& part,
                                            const page_words::DateWords& date_words) {
    constexpr std::array<std::string_view, 6> verbs{"graduating", "graduate", "graduates",
                                                    "graduation", "class",    "degree"};
    const auto& words = part.words;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const bool month = trade::month_named(words[i].word).has_value() && i + 1 < words.size();
        const WordAt& year = month ? words[i + 1] : words[i];
        if (year.word.size() != 4 || !all_figures(year.word)) continue; // dates are dear to read
        const std::string_view typed =
            std::string_view(part.plain)
                .substr(words[i].offset, year.offset + year.word.size() - words[i].offset);
        const auto read = model::read_dates(typed, model::LocalDates(date_words));
        const auto* range = std::get_if<model::DateRange>(&read);
        if (!range || range->start || !range->end) continue;
        const auto is_said = [&](std::size_t k) {
            return k < words.size() && is_one_of(part.small(words[k]), verbs);
        };
        const bool joined = i > 0 && (words[i - 1].word == "in" || words[i - 1].word == "of");
        if (is_said(i - (joined ? 2 : 1)) || (month && is_said(i + 2)))
            return GraduationTold{*range->end, {typed, words[i].offset}};
        if (month) ++i;
    }
    return std::nullopt;
}

bool may_be_same(const model::Date& told, const model::Date& shown) {
    return told.year == shown.year && (!told.month || !shown.month || told.month == shown.month);
}

// The graduation of the page, if it is another; null where one is the same, or there is none.
const model::Field* another_graduation(const model::Resume& resume, const model::Date& told) {
    const model::Field* shown = nullptr;
    for (const Position& position : positions(resume, {trade::Holds::education})) {
        const model::Field* field = position.entry->find(FieldName::graduation);
        const model::DateRange* range = dates_in(field);
        if (!range || !range->end || is_before_college(*position.entry)) continue;
        if (may_be_same(told, *range->end)) return nullptr;
        shown = field;
    }
    return shown;
}

void graduation_differs(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        if (!is_claim(part) || !has_digit(part.plain)) continue;
        const auto told = graduation_in(part, context.resume.words.dates);
        const model::Field* shown = told ? another_graduation(context.resume, told->date) : nullptr;
        if (!shown) continue;
        report<messages::figures_differ>(
            findings, part.text.place(told->words.offset, told->words.word.size()),
            in_quotes(told->words.word), in_quotes(dates_in(shown)->typed), shown->place.line);
    }
}

void gpa_differs(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        if (!is_claim(part)) continue;
        const auto told = gpa_in(part.plain);
        const auto value = told ? read_gpa(told->word) : std::nullopt;
        if (!value) continue;
        if (const model::Field* shown = another_gpa(context.resume, value->value))
            report<messages::figures_differ>(
                findings, part.text.place(told->offset, told->word.size()), in_quotes(told->word),
                in_quotes(plain_in(shown)), shown->place.line);
    }
}

// --- the field

// The families of the fields that a text names, parted by blanks: of botany, life.
std::string families_in(std::string_view lower) {
    std::string families;
    for (const WordAt& word : words_in(lower))
        if (const auto said = said_of(word.word, lines_of(List::families_of_study)))
            families += ' ' + std::string(*said);
    return families;
}

bool have_one_in_common(const std::string& a, const std::string& b) {
    return std::ranges::any_of(parted(a, " "), [&](auto& family) { return has_word(b, family); });
}

// `Chemistry` of `Chemistry junior, careful bench work`: the words before what makes them a field
// of study; not of `chemistry student assistant`, nor of `former biology major`.
std::optional<english::Extent> field_in(const TextInResume& part) {
    constexpr std::array<std::string_view, 7> students{
        "student", "junior", "senior", "sophomore", "freshman", "major", "undergraduate"};
    constexpr std::array<std::string_view, 5> left{"former", "ex", "formerly", "past", "minor"};
    constexpr std::size_t most = 3; // words of a field
    const auto& words = part.words;
    for (std::size_t i = 1; i < words.size(); ++i) {
        if (!is_one_of(part.small(words[i]), students)) continue;
        const std::size_t end = words[i].offset + words[i].word.size();
        const bool closes = i + 1 == words.size() || part.plain[end] != ' ' ||
                            is_one_of(part.small(words[i + 1]), List::function_words);
        std::size_t first = i;
        while (first > 0 && i - first < most &&
               words[first - 1].offset + words[first - 1].word.size() + 1 == words[first].offset)
            --first;
        const bool gone =
            std::any_of(words.begin() + static_cast<std::ptrdiff_t>(first),
                        words.begin() + static_cast<std::ptrdiff_t>(i),
                        [&](auto& word) { return is_one_of(part.small(word), left); });
        if (!closes || gone || first == i) return std::nullopt;
        return english::Extent{words[first].offset, words[i].offset - 1 - words[first].offset};
    }
    return std::nullopt;
}

// Biology, of a Bachelor of Science in Biology.
std::string_view name_of_field(std::string_view degree) {
    const std::size_t in = degree.find(" in ");
    return in == degree.npos ? degree : degree.substr(in + 4);
}

// Of Natural Resource Management, management alone is in a family, and tells little.
bool is_known_whole(std::string_view field) {
    return std::ranges::all_of(words_in(field), [](const WordAt& word) {
        return is_one_of(word.word, List::families_of_study) ||
               is_one_of(word.word, List::function_words);
    });
}

struct FieldsShown {
    std::string families;
    const model::Field* first = nullptr;
};

// Of all that has been studied, or is; none if one of them is not known.
FieldsShown fields_shown(const model::Resume& resume) {
    constexpr std::array named{FieldName::degree, FieldName::major, FieldName::minor};
    FieldsShown shown;
    for (const Position& position : positions(resume, {trade::Holds::education}))
        for (const model::Field& field : position.entry->fields) {
            if (std::ranges::find(named, field.name) == named.end()) continue;
            const std::string lower = lower_case(plain_in(&field));
            if (!is_known_whole(name_of_field(lower))) return {};
            shown.families += families_in(lower);
            if (!shown.first) shown.first = &field;
        }
    return shown;
}

void field_differs(const ProofContext& context, std::vector<Finding>& findings) {
    const FieldsShown shown = fields_shown(context.resume);
    if (!shown.first) return;
    for (const TextInResume& part : context.texts) {
        const auto field = is_claim(part) ? field_in(part) : std::nullopt;
        if (!field) continue;
        const std::string claimed =
            families_in(std::string_view(part.lower).substr(field->offset, field->length));
        if (claimed.empty() || have_one_in_common(claimed, shown.families)) continue;
        report<messages::figures_differ>(findings, part.text.place(field->offset, field->length),
                                         in_quotes(part.plain.substr(field->offset, field->length)),
                                         in_quotes(plain_in(shown.first)), shown.first->place.line);
    }
}

// --- the age that is taught

// `secondary`, of `secondary education senior`; `special education aide` is a job.
std::optional<english::Extent> level_studied(std::string_view lower) {
    constexpr std::array<std::string_view, 7> students{"student",  "senior", "junior",  "sophomore",
                                                       "freshman", "major",  "graduate"};
    for (const std::string_view level : listed(List::levels_taught)) {
        const std::size_t at = find_phrase(lower, level);
        if (at == lower.npos) continue;
        const auto words = words_in(lower.substr(at + level.size()));
        if (words.size() > 1 && words[0].word == "education" && is_one_of(words[1].word, students))
            return english::Extent{at, level.size()};
    }
    return std::nullopt;
}

bool names_level(std::string_view lower) {
    return std::ranges::any_of(listed(List::levels_taught),
                               [&](std::string_view level) { return has_phrase(lower, level); });
}

// `Secondary education senior` in the headline of who studies elementary education.
void level_differs(const ProofContext& context, std::vector<Finding>& findings) {
    const model::Field* shown = nullptr;
    std::string all;
    for (const Position& position : positions(context.resume, {trade::Holds::education}))
        for (const model::Field& field : position.entry->fields) {
            const std::string lower = lower_case(plain_in(&field));
            if (!names_level(lower)) continue;
            all += ' ' + lower;
            shown = &field;
        }
    for (const TextInResume& part : context.texts) {
        const auto told = shown && is_claim(part) ? level_studied(part.lower) : std::nullopt;
        if (!told || has_phrase(all, part.lower.substr(told->offset, told->length))) continue;
        report<messages::figures_differ>(findings, part.text.place(told->offset, told->length),
                                         in_quotes(part.plain.substr(told->offset, told->length)),
                                         in_quotes(plain_in(shown)), shown->place.line);
    }
}

// --- the year of study

struct Standing {
    std::string_view name;
    int least = 0, most = 0; // months to graduation, of four years (common practice)
};
constexpr std::array standings{Standing{"freshman", 26, 60}, Standing{"sophomore", 16, 42},
                               Standing{"junior", 5, 30}, Standing{"senior", -1, 18}};

struct StandingTold {
    const Standing& standing;
    english::Extent words;
};

std::optional<StandingTold> standing_in(const TextInResume& part) {
    constexpr std::array<std::string_view, 4> behind{"in", "at", "with", "who"};
    const auto& words = part.words;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const auto named = std::ranges::find(standings, part.small(words[i]), &Standing::name);
        const std::size_t end = words[i].offset + words[i].word.size();
        const bool closes = i + 1 == words.size() || part.plain[end] != ' ' ||
                            is_one_of(part.small(words[i + 1]), behind);
        if (named != standings.end() && closes)
            return StandingTold{*named, {words[i].offset, words[i].word.size()}};
    }
    return std::nullopt;
}

// The one degree of four years that is still to come; null if there are others.
const model::Field* bachelor_ahead(const ProofContext& context) {
    const model::Field* ahead = nullptr;
    for (const Position& position : positions(context.resume, {trade::Holds::education})) {
        const model::Field* graduation = position.entry->find(FieldName::graduation);
        const model::DateRange* range = dates_in(graduation);
        if (!range || !range->end || !range->end->month ||
            !surely_before(context.today, *range->end))
            continue;
        const std::string degree = lower_case(plain_in(position.entry->find(FieldName::degree)));
        if (ahead || !degree.starts_with("bachelor")) return nullptr;
        ahead = graduation;
    }
    return ahead;
}

void standing_differs(const ProofContext& context, std::vector<Finding>& findings) {
    const model::Field* graduation = bachelor_ahead(context);
    if (!graduation) return;
    const int ahead = months_between(context.today, *dates_in(graduation)->end);
    for (const TextInResume& part : context.texts) {
        const auto told = is_claim(part) ? standing_in(part) : std::nullopt;
        if (!told || (told->standing.least <= ahead && ahead <= told->standing.most)) continue;
        report<messages::figures_differ>(
            findings, part.text.place(told->words.offset, told->words.length),
            in_quotes(part.plain.substr(told->words.offset, told->words.length)),
            in_quotes(dates_in(graduation)->typed), graduation->place.line)
            .weight = Weight::should;
    }
}

}

void study_differs(const ProofContext& context, std::vector<Finding>& findings) {
    gpa_differs(context, findings);
    graduation_differs(context, findings);
    field_differs(context, findings);
    level_differs(context, findings);
    standing_differs(context, findings);
}

}
