// A résumé file and all that it includes, read into the model.
#include "compiler/stages/model/build.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/suggest.hpp"
#include "compiler/stages/model/build_steps.hpp"
#include "compiler/stages/model/guesses.hpp"
#include "compiler/stages/model/messages.hpp"
#include "compiler/stages/model/odd_values.hpp"
#include "compiler/stages/model/own_name.hpp"
#include "compiler/stages/syntax/parse.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <tuple>
#include <utility>

namespace quoin::model {
namespace {

bool all_comments(const syntax::Block& block) {
    return std::ranges::all_of(
        block, [](const syntax::Node& node) { return node.kind == syntax::Node::Kind::comment; });
}

bool says_nothing(const syntax::Tree& tree) {
    return tree.sections.empty() && std::ranges::all_of(tree.heading, all_comments);
}

// A slip in the label itself has been reported as one.
bool misspells_name(const syntax::Tree& tree) {
    constexpr std::array<std::string_view, 1> wanted{"name"};
    return std::ranges::any_of(tree.heading, [&](const syntax::Block& block) {
        return std::ranges::any_of(block, [&](const syntax::Node& node) {
            return node.kind == syntax::Node::Kind::field && !trade::find_word(node.label.text) &&
                   nearest(node.label.text, wanted);
        });
    });
}

// A heading line that could not be read may have been the name's: one message for it is enough.
bool heading_has_fault(const Diagnostics& diagnostics, const syntax::Tree& tree) {
    const std::uint32_t end =
        tree.sections.empty() ? UINT32_MAX : tree.sections.front().opening.place.line;
    return std::ranges::any_of(diagnostics.all(), [&](const Diagnostic& fault) {
        return fault.severity == Severity::error && fault.place.file == tree.file &&
               fault.place.line < end;
    });
}

// `# Tamsin Okoro` at the top, where other markup has the title.
const syntax::Node* name_as_comment(const syntax::Tree& tree) {
    if (tree.heading.empty() || tree.heading.front().empty()) return nullptr;
    const syntax::Node& first = tree.heading.front().front();
    if (first.kind != syntax::Node::Kind::comment || first.value.empty()) return nullptr;
    const std::string text = first.value.joined();
    const auto words = pieces_of(trimmed(text), " ");
    const bool name = std::ranges::all_of(words, [](std::string_view word) {
        return !word.empty() && is_capital_letter(word.front()) && !has_digit(word);
    });
    constexpr std::size_t most_words = 4;
    return name && words.size() > 1 && words.size() <= most_words ? &first : nullptr;
}

void require_name(const Build& build, const syntax::Tree& tree) {
    if (build.resume.find(trade::FieldName::name) || misspells_name(tree)) return;
    if (const syntax::Node* comment = name_as_comment(tree)) {
        const std::string text = comment->value.joined(), name(trimmed(text));
        build.diagnostics.error(comment->place, fill<messages::name_as_comment>(name),
                                {{comment->place, "name: " + name}});
        return;
    }
    build.diagnostics.error(Place{tree.file, 1, 0, 0}, fill<messages::no_name>());
}

void report_either_order(const Field& field, Diagnostics& diagnostics) {
    const auto* range = std::get_if<DateRange>(&field.value);
    if (!range) return;
    for (const WrittenDate& day : range->either_order) {
        Place place = field.place;
        place.column += static_cast<std::uint32_t>(day.offset);
        place.length = static_cast<std::uint32_t>(day.length);
        const Date as_month{day.date.year, *day.date.month, {}, {}};
        const Date as_day{day.date.year, *day.date.day, {}, {}};
        diagnostics.error(place, fill<messages::either_order>(
                                     in_quotes(range->typed.substr(day.offset, day.length)),
                                     edtf(as_month), edtf(as_day)));
    }
}

void each_field(const Resume& resume, const auto& visit) {
    const auto look = [&](const Entry& entry) { std::ranges::for_each(entry.fields, visit); };
    for (const Section& section : resume.sections)
        for (const Entry& entry : section.entries) {
            look(entry);
            std::ranges::for_each(entry.further, look);
        }
}

struct DayForms { // of days in figures, `15/6/2026`, that can be read in one way alone
    bool day_first = false, month_first = false;
};

DayForms day_forms(const Field& field) {
    constexpr int months = 12;
    DayForms forms;
    const auto* range = std::get_if<DateRange>(&field.value);
    for (const std::string& word : parted(range ? range->typed : "", " -,;&")) {
        const auto parts = pieces_of(word, "/");
        if (parts.size() != 3 || !std::ranges::all_of(parts, all_figures)) continue;
        const bool first = parts[0].size() == 2 && parts[0] > std::to_string(months);
        const bool second = parts[1].size() == 2 && parts[1] > std::to_string(months);
        forms.day_first = forms.day_first || (first && !second);
        forms.month_first = forms.month_first || (second && !first);
    }
    return forms;
}

// Some begin with the day where it must be so, and none must begin with the month.
bool has_days_first(const Resume& resume) {
    DayForms all;
    each_field(resume, [&](const Field& field) {
        const DayForms forms = day_forms(field);
        all.day_first = all.day_first || forms.day_first;
        all.month_first = all.month_first || forms.month_first;
    });
    return all.day_first && !all.month_first;
}

// Where the language is not that of the United States, a day in figures may begin with the month or
// not: `01/02/2025`. So it may beside one that begins with the day: `6/5/2026 - 31/8/2026`.
void refuse_either_order(const Resume& resume, Diagnostics& diagnostics) {
    const std::string& language = *resume.settings.language;
    const bool us = language == "en" || language == "en-US";
    const bool all = !us || has_days_first(resume);
    each_field(resume, [&](const Field& field) {
        if (all || day_forms(field).day_first) report_either_order(field, diagnostics);
    });
}

// Its line may stand below others that have dates in files they take in, so it is looked for first.
// What is no tag at all is reported where settings are read.
void take_words(Build& build, const syntax::Tree& tree, const std::filesystem::path& folder) {
    Settings asked;
    Diagnostics unheard;
    for (const syntax::Block& block : tree.heading)
        for (const syntax::Node& node : block)
            if (is_label(node, "language") && !asked.language.stated())
                read_setting(trade::SettingName::language, node, asked, unheard);
    build.resume.words = page_words::read_words(build.sources, folder, *asked.language,
                                                asked.language.place, build.diagnostics);
    build.dates = LocalDates(build.resume.words.dates);
    build.dates.know_others([&build]() -> const auto& { return build.others.dates(); });
}

// Of one place there is one message: the label that is mistyped may stand for another, too.
void join_by_place(Diagnostics& diagnostics) {
    Diagnostics joined;
    std::map<std::tuple<std::uint32_t, std::uint32_t, std::uint32_t>, Diagnostics> errors;
    for (const Diagnostic& one : diagnostics.all()) {
        const Place& at = one.place;
        if (one.severity == Severity::error && at.column > 0)
            errors[{at.file, at.line, at.column}].error(at, one.text, one.mend);
        else if (one.severity == Severity::note)
            joined.note(at, one.text);
        else if (one.severity == Severity::warning)
            joined.warning(at, one.text, one.mend);
        else
            joined.error(at, one.text, one.mend);
    }
    for (const auto& [place, found] : errors)
        report_together(found, joined);
    diagnostics = std::move(joined);
}

void settle_defaults(Settings& settings) {
    if (settings.pages.stated()) return;
    switch (*settings.stage) {
    case trade::Stage::undergraduate:
    case trade::Stage::recent_graduate:
        settings.pages.value = 1;
        return;
    case trade::Stage::graduate_applicant:
    case trade::Stage::experienced:
        settings.pages.value = 2;
        return;
    case trade::Stage::academic: // whose publications are all of them there
        settings.pages.value = 6;
        return;
    }
}

}

std::optional<Resume> build_resume(Sources& sources, std::uint32_t file,
                                   const std::filesystem::path& words, Diagnostics& diagnostics) {
    const std::size_t errors_before = diagnostics.count(Severity::error);
    syntax::Tree tree = syntax::parse(sources, file, diagnostics);
    open_sections(tree, diagnostics);
    const bool heading_was_read = !heading_has_fault(diagnostics, tree);
    if (says_nothing(tree)) {
        if (diagnostics.count(Severity::error) == errors_before)
            diagnostics.error(Place{file, 1, 0, 0}, fill<messages::says_nothing>());
        return std::nullopt;
    }
    Build build{sources, diagnostics, {}, {}, {sources, words}, {}, 0, 0, {}};
    open_first(build, file);
    take_words(build, tree, words);
    build_heading(build, tree);
    build_sections(build, tree);
    warn_of_lone_tags(tree, diagnostics);
    if (heading_was_read) require_name(build, tree);
    refuse_either_order(build.resume, diagnostics);
    mark_own_name(build.resume);
    settle_defaults(build.resume.settings);
    if (diagnostics.count(Severity::error) == errors_before) return std::move(build.resume);
    join_by_place(diagnostics);
    return std::nullopt;
}

}
