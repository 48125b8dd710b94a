// A president by the headline who is vice president below, a scholarship of two years, a show of
// two titles, a hospital of two names.
#include "compiler/advice/names_differ.hpp"

#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/degree_claims.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace quoin::advice {

namespace {

using trade::FieldName;

// --- a title

// `president`, where no `vice` stands before it.
std::size_t find_president(std::string_view lower) {
    const std::size_t at = find_phrase(lower, "president");
    const std::string_view before = at == lower.npos ? "" : trimmed(lower.substr(0, at), " -");
    return before.ends_with("vice") || before.ends_with("past") ? lower.npos : at;
}

// The role of a vice president, if nobody on the page is president.
const model::Field* vice_president(const model::Resume& resume) {
    const model::Field* vice = nullptr;
    for (const model::Section& section : resume.sections)
        for (const Position& position : positions(resume, {section.holds})) {
            const model::Field* role = position.entry->find(FieldName::role);
            const std::string lower = lower_case(plain_in(role));
            if (find_president(lower) != lower.npos) return nullptr;
            if (find_phrase(lower, "president") != lower.npos) vice = role;
        }
    return vice;
}

void titles_differ(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        const std::size_t at = is_claim(part) ? find_president(part.lower) : std::string::npos;
        const model::Field* vice =
            at == std::string::npos ? nullptr : vice_president(context.resume);
        if (!vice) continue;
        constexpr std::size_t length = 9;
        report<messages::figures_differ>(findings, part.text.place(at, length),
                                         in_quotes(part.plain.substr(at, length)),
                                         in_quotes(plain_in(vice)), vice->place.line);
    }
}

// --- an award

// `Ruddock Drafting Scholarship (2025)`: its name and its year.
struct YearOfHonor {
    std::string name, year;
    std::uint32_t line = 0;
};

std::optional<YearOfHonor> year_of(const model::Text& honor) {
    const std::string text = honor.plain();
    const std::size_t sign = text.find(" (");
    if (sign == text.npos || text.size() != sign + 7 || !text.ends_with(')')) return std::nullopt;
    const std::string year = text.substr(sign + 2, 4);
    if (!all_figures(year)) return std::nullopt;
    return YearOfHonor{lower_case(text.substr(0, sign)), year, honor.place(0, 1).line};
}

void years_differ(const ProofContext& context, std::vector<Finding>& findings) {
    std::vector<YearOfHonor> years;
    for (const Position& school : positions(context.resume, {trade::Holds::education}))
        if (const auto* honors = items_in(school.entry->find(FieldName::honors)))
            for (const model::Text& honor : *honors)
                if (auto year = year_of(honor)) years.push_back(*std::move(year));
    for (const Position& award : positions(context.resume, {trade::Holds::honors})) {
        const std::string name = lower_case(plain_in(award.entry->find(FieldName::award)));
        const model::Field* dates = award.entry->find(FieldName::dates);
        const model::DateRange* range = dates_in(dates);
        const auto same = std::ranges::find(years, name, &YearOfHonor::name);
        if (same == years.end() || !range || range->start || !range->end ||
            std::to_string(range->end->year) == same->year)
            continue;
        report<messages::figures_differ>(findings, dates->place, in_quotes(range->typed),
                                         in_quotes(same->year), same->line);
    }
}

// --- names

// `Salt and Cedar`, of `Cedar and Salt`: its words in another order, both in italics.
void titles_turned(const ProofContext& context, std::vector<Finding>& findings) {
    struct Title {
        std::vector<std::string> words; // sorted
        std::string text;
        std::uint32_t line = 0;
    };
    constexpr std::size_t most = 60, telling = 3;
    std::vector<Title> titles;
    for (const TextInResume& part : context.texts) {
        std::size_t offset = 0;
        for (const model::Span& span : part.text.spans) {
            const std::size_t begin = std::exchange(offset, offset + span.text.size());
            if (!span.marks.emphasis || titles.size() == most) continue;
            Title title{{}, span.text, part.text.place(begin, span.text.size()).line};
            for (const WordAt& word : words_in(span.text))
                title.words.push_back(lower_case(word.word));
            std::ranges::sort(title.words);
            const auto other = std::ranges::find_if(titles, [&](const Title& one) {
                return one.words == title.words && lower_case(one.text) != lower_case(title.text);
            });
            if (title.words.size() >= telling && other != titles.end())
                report<messages::name_elsewhere>(findings, part.text.place(begin, span.text.size()),
                                                 in_quotes(span.text), in_quotes(other->text),
                                                 other->line);
            titles.push_back(std::move(title));
        }
    }
}

bool names_house(const TextInResume& part) {
    constexpr std::array named{FieldName::employer, FieldName::school};
    return part.field && std::ranges::find(named, part.field->name) != named.end();
}

// Words that tell one house from its neighbour: Port Ellery Middle School, High School.
bool tells_apart(std::string_view word) {
    constexpr std::array<std::string_view, 14> kinds{
        "high",  "middle", "elementary", "primary", "junior",  "senior", "north",
        "south", "east",   "west",       "public",  "private", "upper",  "community"};
    return is_one_of(lower_case(word), kinds);
}

// The words of `bullet` from `at` on that are `name` but for one within it.
std::optional<english::Extent> name_but_one(const std::vector<WordAt>& bullet, std::size_t at,
                                            const std::vector<WordAt>& name) {
    if (at + name.size() > bullet.size()) return std::nullopt;
    std::size_t other = 0, others = 0;
    for (std::size_t i = 0; i < name.size(); ++i) {
        if (!is_capitalised(bullet[at + i].word)) return std::nullopt;
        if (bullet[at + i].word == name[i].word) continue;
        other = i;
        ++others;
    }
    if (others != 1 || other == 0 || other + 1 == name.size() || tells_apart(name[other].word) ||
        tells_apart(bullet[at + other].word))
        return std::nullopt;
    const WordAt& last = bullet[at + name.size() - 1];
    return english::Extent{bullet[at].offset, last.offset + last.word.size() - bullet[at].offset};
}

// `Cormorant Point Hospital`, of `Cormorant Bay Hospital`.
void houses_differ(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::size_t telling = 3;
    std::vector<std::string> known;
    for (const TextInResume& part : context.texts)
        if (names_house(part)) known.push_back(part.plain);
    for (const TextInResume& part : context.texts) {
        if (!names_house(part) || part.words.size() < telling) continue;
        for (const WordedBullet& bullet : context.bullets)
            for (std::size_t at = 0; at < bullet.part.words.size(); ++at) {
                const auto typed = name_but_one(bullet.part.words, at, part.words);
                if (!typed || std::ranges::find(known, bullet.words(*typed)) != known.end())
                    continue;
                report<messages::name_elsewhere>(findings, bullet.place(*typed),
                                                 in_quotes(bullet.words(*typed)),
                                                 in_quotes(part.plain), part.field->place.line);
            }
    }
}

}

void names_differ(const ProofContext& context, std::vector<Finding>& findings) {
    titles_differ(context, findings);
    years_differ(context, findings);
    titles_turned(context, findings);
    if (context.bullets.size() <= most_bullets) houses_differ(context, findings);
}

}
