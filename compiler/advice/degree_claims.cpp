#include "compiler/advice/degree_claims.hpp"

#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/date_order.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>

namespace quoin::advice {

namespace {

using trade::FieldName;

// The degree that is to come, where none has been earned.
const model::Entry* degree_ahead(const ProofContext& context) {
    const model::Entry* ahead = nullptr;
    for (const Position& position : positions(context.resume, {trade::Holds::education})) {
        if (is_before_college(*position.entry)) continue;
        const model::DateRange* range = dates_in(position.entry->find(FieldName::graduation));
        if (!range || !range->end) return nullptr;
        if (!range->expected && !surely_before(context.today, *range->end)) return nullptr;
        ahead = position.entry;
    }
    return ahead;
}

// `biology graduate`; but `graduate student`, `to graduate`, `graduate in May 2027`.
std::optional<WordAt> graduate_in(const std::vector<WordAt>& words) {
    constexpr std::array<std::string_view, 11> before{
        "to",   "will",          "school", "post",  "soon",       "future",
        "upon", "undergraduate", "before", "until", "prospective"};
    constexpr std::array<std::string_view, 20> after{
        "student", "students",  "school", "program", "programs",   "research",  "researcher",
        "level",   "teaching",  "study",  "studies", "work",       "in",        "fellow",
        "seminar", "assistant", "degree", "course",  "coursework", "admissions"};
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (words[i].word != "graduate" && words[i].word != "graduated") continue;
        const std::string_view next = i + 1 < words.size() ? words[i + 1].word : "";
        if (i == 0 || is_one_of(words[i - 1].word, before) || is_one_of(next, after)) continue;
        return words[i];
    }
    return std::nullopt;
}

// `Professional Engineer`: a title that the law gives to those who hold a degree and a licence.
std::optional<WordAt> title_of_licence(std::string_view lower) {
    constexpr std::array<std::string_view, 11> not_yet{
        "future",   "aspiring", "candidate", "student of", "exam",       "eligible",
        "training", "become",   "toward",    "pre",        "prospective"};
    if (std::ranges::any_of(not_yet, [&](auto one) { return has_phrase(lower, one); }))
        return std::nullopt;
    for (const std::string_view title : listed(List::licensed_titles))
        if (const std::size_t at = find_phrase(lower, title); at != lower.npos)
            return WordAt{title, at};
    return std::nullopt;
}

bool holds_credential(const model::Resume& resume, std::string_view title) {
    for (const Position& position : positions(resume, {trade::Holds::credentials}))
        for (const model::Field& field : position.entry->fields)
            if (has_phrase(lower_case(plain_in(&field)), title)) return true;
    return false;
}

// A rank of degree by the words that it goes by; of its abbreviations, by their first letter.
struct DegreeRank {
    std::array<std::string_view, 3> names; // lower case
    char letter;
};
constexpr std::array degree_ranks{DegreeRank{{"bachelor of", "bachelor's", "bachelors"}, 'b'},
                                  DegreeRank{{"master of", "master's", "masters"}, 'm'},
                                  DegreeRank{{"doctor of", "doctoral", "doctorate"}, 'd'}};

bool is_of_kind(const std::string& degree, const DegreeRank& kind) {
    if (std::ranges::any_of(kind.names,
                            [&](auto name) { return degree.find(name) != degree.npos; }))
        return true;
    const auto words = words_in(degree);
    return !words.empty() && (words.front().word.front() == kind.letter ||
                              (kind.letter == 'd' && words.front().word.starts_with("ph")));
}

// `Master of Social Work student`, where the page shows a bachelor's alone.
std::optional<WordAt> studied_elsewhere(const ProofContext& context, std::string_view lower) {
    if (!has_phrase(lower, "student") && !has_phrase(lower, "candidate")) return std::nullopt;
    for (const DegreeRank& kind : degree_ranks)
        for (const std::string_view name : kind.names) {
            const std::size_t at = find_phrase(lower, name);
            if (at == lower.npos) continue;
            std::size_t degrees = 0;
            for (const Position& position : positions(context.resume, {trade::Holds::education}))
                if (const model::Field* field = position.entry->find(FieldName::degree)) {
                    if (is_of_kind(lower_case(plain_in(field)), kind)) return std::nullopt;
                    ++degrees;
                }
            return degrees > 0 ? std::optional(WordAt{name, at}) : std::nullopt;
        }
    return std::nullopt;
}

void other_degree(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        if (!is_claim(part)) continue;
        if (const auto found = studied_elsewhere(context, part.lower))
            report<messages::other_degree>(
                findings, part.text.place(found->offset, found->word.size()),
                in_quotes(part.plain.substr(found->offset, found->word.size())));
    }
}

}

bool is_claim(const TextInResume& part) {
    return part.field && (part.field->name == FieldName::headline ||
                          (part.field->name == FieldName::text && !part.in_heading));
}

void degree_claimed(const ProofContext& context, std::vector<Finding>& findings) {
    other_degree(context, findings);
    const model::Entry* ahead = degree_ahead(context);
    if (!ahead) return;
    for (const TextInResume& part : context.texts) {
        if (!is_claim(part)) continue;
        const std::string &text = part.plain, &lower = part.lower;
        auto claimed = graduate_in(words_in(lower));
        if (const auto title = title_of_licence(lower);
            !claimed && title && !holds_credential(context.resume, title->word))
            claimed = title;
        if (!claimed) continue;
        report<messages::degree_claimed>(
            findings, part.text.place(claimed->offset, claimed->word.size()),
            in_quotes(text.substr(claimed->offset, claimed->word.size())), called(*ahead));
    }
}

}
