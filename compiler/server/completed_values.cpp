#include "compiler/advice/degree_names.hpp"
#include "compiler/advice/language_levels.hpp"
#include "compiler/advice/proof.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/base/data_places.hpp"
#include "compiler/interview/plan.hpp"
#include "compiler/server/completing.hpp"
#include "compiler/server/markup_advice.hpp"
#include "compiler/stages/selection/select.hpp"
#include "compiler/stages/theme/theme.hpp"
#include "compiler/trade/months.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <system_error>

namespace quoin::server {

namespace {

namespace fs = std::filesystem;

using Fill = void (*)(const Completing& at, Candidates& candidates);

void add_words(const auto& words, Candidates& candidates, std::string_view advice = {}) {
    for (const auto& word : words)
        candidates.all.push_back(
            {std::string(word), CandidateKind::value, std::string(advice), {}});
}

template<typename Value>
void named_values(const Completing&, Candidates& candidates) {
    add_words(trade::names_of<Value>(), candidates);
}

void add_themes(const Completing& at, Candidates& candidates) {
    const fs::path folder = themes_in(at.desk.session.means().data);
    Sources sources;
    Diagnostics ignored;
    for (const std::string& name : theme::theme_names(folder))
        if (const auto theme = theme::read_theme(sources, folder, name, folder, {}, ignored))
            candidates.all.push_back({name, CandidateKind::value, theme->use, {}});
}

void add_languages(const Completing& at, Candidates& candidates) {
    std::error_code fault;
    for (const auto& file :
         fs::directory_iterator(page_words_in(at.desk.session.means().data), fault))
        candidates.all.push_back({file.path().filename().string(),
                                  CandidateKind::value,
                                  "the words that the page says by itself",
                                  {}});
    std::ranges::sort(candidates.all, {}, &Candidate::text);
}

// Behind the last `;`.
void add_checks(const Completing& at, Candidates& candidates) {
    const std::size_t from = at.spot.value.rfind(';');
    if (from != std::string::npos)
        candidates.typed = trimmed(std::string_view(at.spot.value).substr(from + 1)).size();
    for (const advice::Check* check : advice::all_checks())
        candidates.all.push_back({std::string(check->name), CandidateKind::value,
                                  std::string(check->looks_at), fmt::format("{} ()", check->name),
                                  std::string(check->why)});
}

void add_includes(const Completing& at, Candidates& candidates) {
    constexpr std::size_t most = 200;
    constexpr int deepest = 2; // folders
    const fs::path folder = at.path.parent_path();
    std::error_code fault;
    for (fs::recursive_directory_iterator it(folder, fault), end; !fault && it != end;
         it.increment(fault)) {
        if (it.depth() >= deepest) it.disable_recursion_pending();
        if (it->path().extension() != ".resume" || it->path() == at.path) continue;
        candidates.all.push_back({it->path().lexically_relative(folder).generic_string(),
                                  CandidateKind::file,
                                  "its sections are taken in here",
                                  {}});
        if (candidates.all.size() == most) break;
    }
    std::ranges::sort(candidates.all, {}, &Candidate::text);
}

void add_titles(const Completing& at, Candidates& candidates) {
    std::set<std::string> titles;
    for (const std::string_view field : interview::field_names())
        for (const interview::PlannedSection& section : interview::plan_for(at.stage(), field))
            if (section.holds && titles.emplace(section.title).second)
                candidates.all.push_back(
                    {std::string(section.title),
                     CandidateKind::value,
                     fmt::format("opens {}", trade::section_of(*section.holds)),
                     {}});
}

void add_degrees(const Completing&, Candidates& candidates) {
    add_words(advice::usual_degrees(), candidates);
}

std::string date_text(std::size_t month, int year, trade::DateForm form) {
    constexpr std::size_t short_name = 3; // letters
    const std::string_view name = trade::month_names.at(month);
    switch (form) {
    case trade::DateForm::month_slash_year:
        return fmt::format("{:02}/{}", month + 1, year);
    case trade::DateForm::year_month:
        return fmt::format("{}-{:02}", year, month + 1);
    case trade::DateForm::long_month:
        return fmt::format("{} {}", name, year);
    case trade::DateForm::short_month:
        return fmt::format("{} {}", name.substr(0, short_name), year);
    }
    return {};
}

// As the résumé's other dates are written.
void add_dates(const Completing& at, Candidates& candidates) {
    const trade::DateForm form =
        at.settings() ? *at.settings()->dates_as : trade::DateForm::short_month;
    const std::size_t word = at.spot.value.find_last_of(" -(") + 1; // 0 if there is none
    candidates.typed = at.spot.value.size() - word;
    const int year = at.desk.session.means().read_on.year;
    for (std::size_t month = 0; month < trade::month_names.size(); ++month) {
        const std::string name(trade::month_names.at(month));
        candidates.all.push_back({date_text(month, year, form), CandidateKind::value, name, {}});
    }
    add_words(std::array{"present", "expected"}, candidates);
}

// In the parentheses behind a language.
void add_levels(const Completing& at, Candidates& candidates) {
    const std::size_t open = at.spot.value.rfind('(');
    if (open == std::string::npos || at.spot.value.find(')', open) != std::string::npos) return;
    candidates.typed = at.spot.value.size() - open - 1;
    add_words(advice::usual_levels(), candidates, "how well you speak it");
}

void add_example(const Completing& at, Candidates& candidates) {
    if (!at.spot.value.empty()) return;
    const LabelAdvice advice =
        advice_on(at.spot.label, at.spot.holds, at.desk.session.means().data);
    if (advice.example.empty()) return;
    candidates.all.push_back(
        {advice.example, CandidateKind::text, "an example: " + advice.goes_in, {}, advice.why});
}

struct ValueRow {
    std::string_view label;
    Fill fill;
};

constexpr auto no_more_than_yes_and_no = [](const Completing&, Candidates& candidates) {
    add_words(std::array{"yes", "no"}, candidates);
};
constexpr auto side_alone = [](const Completing&, Candidates& candidates) {
    add_words(std::array{"side"}, candidates, "the narrow column of a theme of two");
};

constexpr ValueRow value_rows[] = {
    {"stage", named_values<trade::Stage>},
    {"paper", named_values<trade::Paper>},
    {"dates-as", named_values<trade::DateForm>},
    {"holds", named_values<trade::Holds>},
    {"column", side_alone},
    {"hyphenate", no_more_than_yes_and_no},
    {"theme", add_themes},
    {"language", add_languages},
    {"accept", add_checks},
    {"include", add_includes},
    {"section", add_titles},
    {"degree", add_degrees},
};

bool is_of_dates(std::string_view label) {
    const trade::Word* word = trade::find_word(label);
    return word && word->value == trade::ValueKind::dates;
}

}

Candidates value_candidates(const Completing& at) {
    Candidates candidates;
    candidates.typed = at.spot.value.size();
    const auto row = std::ranges::find(value_rows, at.spot.label, &ValueRow::label);
    if (row != std::end(value_rows))
        row->fill(at, candidates);
    else if (is_of_dates(at.spot.label))
        add_dates(at, candidates);
    else if (at.spot.holds && trade::has_groups(*at.spot.holds))
        add_levels(at, candidates);
    if (candidates.all.empty()) add_example(at, candidates);
    return candidates;
}

Candidates tag_candidates(const Completing& at) {
    Candidates candidates;
    const std::string& before = at.spot.before;
    const bool in_line = at.spot.label == "for";
    const std::size_t brace = before.rfind('{');
    const bool in_braces =
        brace != std::string::npos && before.find('}', brace) == std::string::npos;
    if ((!in_line && !in_braces) || !at.last || !at.last->read.resume) return candidates;
    candidates.typed = before.size() - (before.find_last_of(" {!:") + 1);
    add_words(selection::tags_of(*at.last->read.resume), candidates, "a tag in use");
    return candidates;
}

}
