// Capitals of titles and roles.
#include "compiler/advice/consistency.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <utility>

namespace quoin::advice {

namespace {

enum class Case { title, sentence, all_capitals, small };
constexpr std::array cases{Case::title, Case::sentence, Case::all_capitals, Case::small};
using Cases = std::set<Case>; // which a text may be in: one word tells less than three

std::string_view case_name(Case which) {
    constexpr std::array names{messages::title_case, messages::sentence_case,
                               messages::all_capitals, messages::small_case};
    return names.at(static_cast<std::size_t>(which)).text;
}

// Titles of works are written as they are called; what is in parentheses is an aside.
std::string plain_words(const model::Text& text) {
    std::string words;
    for (const model::Span& span : text.spans)
        if (!span.marks.emphasis) words += span.text;
    return words.substr(0, words.find('('));
}

// What opens with a figure, a compound or the title of a work does not tell: K-12 tutor, Co-chair.
bool opening_tells(const model::Text& text, std::string_view first) {
    const bool of_title = !text.spans.empty() && text.spans.front().marks.emphasis;
    return !of_title && !has_digit(first) && first.find('-') == std::string_view::npos;
}

Cases cases_of_first(std::string_view first) {
    if (is_small_letter(first.front())) return {Case::small};
    return {Case::title, Case::sentence};
}

// Empty where it cannot be told: some words with capitals and some without, a short word in
// capitals.
Cases cases_of(const model::Text& text) {
    constexpr std::size_t longer_than_acronym = 5;
    const std::string plain = plain_words(text);
    const auto words = words_in(plain);
    if (words.empty() || !opening_tells(text, words.front().word)) return {};
    std::size_t capitals = 0, smalls = 0, letters = 0;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string_view word = words[i].word;
        letters += word.size();
        const bool minor = is_one_of(lower_case(word), List::minor_words);
        const bool acronym = word.size() > 1 && is_capital_letter(word[1]);
        if (i == 0 || minor || acronym || word.size() == 1 || has_digit(word)) continue;
        if (is_capital_letter(word.front())) ++capitals;
        if (is_small_letter(word.front())) ++smalls;
    }
    if (!std::ranges::any_of(plain, is_small_letter))
        return letters > longer_than_acronym ? Cases{Case::all_capitals} : Cases{};
    const std::string_view first = words.front().word;
    if (first.size() > 1 && is_capital_letter(first[1]) && smalls + capitals == 0) return {};
    if (capitals > 0 && smalls > 0) return {};
    Cases found = cases_of_first(first);
    if (capitals > 0) found = found.contains(Case::title) ? Cases{Case::title} : Cases{};
    if (smalls > 0) found.erase(Case::title);
    return found;
}

struct Cased {
    const model::Text* text = nullptr;
    Place place;
    Cases cases;
};

void add_case(const model::Text* text, Place place, std::vector<Cased>& all) {
    if (!text) return;
    if (Cases of_text = cases_of(*text); !of_text.empty())
        all.push_back({text, place, std::move(of_text)});
}

// The case that most may be in.
Case usual_case(const std::vector<Cased>& all) {
    return *std::ranges::max_element(cases, {}, [&](Case one) {
        return std::ranges::count_if(all,
                                     [&](const Cased& each) { return each.cases.contains(one); });
    });
}

void report_cases(const std::vector<Cased>& all, const char* what, std::vector<Finding>& findings) {
    if (all.empty()) return;
    const Case usual = usual_case(all);
    for (const Cased& each : all)
        if (!each.cases.contains(usual)) {
            report<messages::two_cases>(findings, each.place, in_quotes(each.text->plain()),
                                        case_name(*each.cases.begin()), what, case_name(usual));
            return;
        }
}

}

void capitals(const ProofContext& context, std::vector<Finding>& findings) {
    std::vector<Cased> titles, roles;
    for (const model::Section& section : context.resume.sections)
        add_case(&section.title, section.place, titles);
    for (const Position& position :
         positions(context.resume, {trade::Holds::experience, trade::Holds::activities}))
        if (const model::Field* role = position.entry->find(trade::FieldName::role))
            add_case(text_in(role), role->place, roles);
    report_cases(titles, "titles", findings);
    report_cases(roles, "roles", findings);
}

}
