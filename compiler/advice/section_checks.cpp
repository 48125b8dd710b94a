// Checks of sections: those expected, empty ones, titles, order.
#include "compiler/advice/check.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/spelling_messages.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/english/stems.hpp"
#include "compiler/trade/section_titles.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <set>

namespace quoin::advice {

namespace {

using enum trade::Holds;

Place place_for(const ProofContext& context) {
    if (!context.resume.sections.empty()) return context.resume.sections.front().place;
    const model::Field* name = context.resume.find(trade::FieldName::name);
    return name ? name->place : Place{};
}

bool is_empty(const model::Section& section) {
    return std::ranges::all_of(section.entries, [](const model::Entry& entry) {
        return entry.fields.empty() && entry.bullets.empty() && entry.further.empty();
    });
}

// Research, leadership or service under its own title is experience, whatever form it has.
bool tells_of_work(const model::Section& section) {
    const bool may =
        section.holds == projects || section.holds == activities || section.holds == other;
    const std::string title = lower_case(section.title.plain());
    return may && !is_empty(section) &&
           std::ranges::any_of(listed(List::titles_of_work),
                               [&](auto word) { return has_phrase(title, word); });
}

bool has_section(const model::Resume& resume, trade::Holds kind) {
    return std::ranges::any_of(resume.sections, [&](const model::Section& section) {
        return section.holds == kind || (kind == experience && tells_of_work(section));
    });
}

void section_missing(const ProofContext& context, std::vector<Finding>& findings) {
    for (const trade::Holds kind : {education, experience}) {
        if (has_section(context.resume, kind)) continue;
        report<messages::no_section>(findings, place_for(context), name_of(kind)).suggestion =
            kind == education ? fill<messages::add_education>() : fill<messages::unpaid_counts>();
    }
}

void empty_section(const ProofContext& context, std::vector<Finding>& findings) {
    for (const model::Section& section : context.resume.sections)
        if (is_empty(section))
            report<messages::empty_section>(findings, section.place,
                                            in_quotes(section.title.plain()));
}

void section_twice(const ProofContext& context, std::vector<Finding>& findings) {
    std::map<std::string, Place> seen;
    for (const model::Section& section : context.resume.sections) {
        if (!section.tags.empty()) continue; // another one for another build
        const auto [before, is_new] =
            seen.emplace(lower_case(section.title.plain()), section.place);
        if (!is_new)
            report<messages::section_twice>(findings, section.place,
                                            in_quotes(section.title.plain()))
                .suggestion = fill<messages::join_sections>(before->second.line);
    }
}

// What makes a title in the writer's own words of the field known: titles that portals know, and
// the words of headline, degrees and roles.
struct Company {
    std::set<trade::Holds> with_usual_title;
    std::set<std::string> stems;
};

Company company_in(const model::Resume& resume, const english::Stemmer& stemmer) {
    Company company;
    for (const model::Section& section : resume.sections)
        if (trade::usual_holds(section.title.plain()))
            company.with_usual_title.insert(section.holds);
    const auto add = [&](const std::string& text) {
        for (const WordAt& word : words_in(text))
            company.stems.insert(stemmer.stem(lower_case(word.word)));
    };
    add(plain_in(resume.find(trade::FieldName::headline)));
    for (const Position& position : positions(resume, {education, experience}))
        for (const trade::FieldName name : {trade::FieldName::degree, trade::FieldName::minor,
                                            trade::FieldName::role, trade::FieldName::courses})
            add(plain_in(position.entry->find(name)));
    return company;
}

// Right English, in no talking tone.
bool may_be_title(const std::vector<WordAt>& words, const english::Language& language) {
    constexpr std::array<std::string_view, 8> chatty{"i",   "me",   "my",  "where",
                                                     "how", "what", "who", "about"};
    return std::ranges::all_of(words, [&](const WordAt& word) {
        return language.spelled_right(word.word) && !is_one_of(word.word, chatty);
    });
}

// `Hobbies`, of `Hobbys`, which is no word
std::optional<std::string> meant_by_title(const std::string& title,
                                          const english::Language& language) {
    if (trade::usual_holds(title) || language.spelled_right(title)) return std::nullopt;
    const auto meant = trade::slip_of_title(title);
    return meant ? std::optional{capitalised(std::string(*meant))} : std::nullopt;
}

void section_title(const ProofContext& context, std::vector<Finding>& findings) {
    const english::Stemmer stemmer;
    std::optional<Company> company; // where a title asks for it
    for (const model::Section& section : context.resume.sections) {
        const std::string title = section.title.plain();
        if (const auto meant = meant_by_title(title, context.language)) {
            report<messages::unknown_title>(findings, section.place, in_quotes(title)).suggestion =
                fill<messages::title_meant>(*meant);
            continue;
        }
        const std::string_view usual = trade::usual_title(section.holds);
        if (usual.empty() || trade::usual_holds(title) || is_empty(section)) continue;
        const std::string lower = lower_case(title);
        if (has_phrase(lower, "references")) continue; // for `references-line`
        if (section.holds == prose && has_phrase(lower, "personal")) continue; // no summary
        const auto words = words_in(lower);
        if (!company) company = company_in(context.resume, stemmer);
        const auto is_of_field = [&](const WordAt& word) {
            return word.word.size() > 3 && company->stems.contains(stemmer.stem(word.word));
        };
        const bool beside = company->with_usual_title.contains(section.holds) && words.size() > 1;
        if (may_be_title(words, context.language) &&
            (beside || std::ranges::any_of(words, is_of_field)))
            continue;
        report<messages::unknown_title>(findings, section.place, in_quotes(title)).suggestion =
            fill<messages::usual_title>(usual);
    }
}

// What may stand above a student's education: a line about the person, the licence that the work
// asks for, and work of the field.
void education_first(const ProofContext& context, std::vector<Finding>& findings) {
    if (!is_student(*context.resume.settings.stage)) return;
    if (!context.rules().order.values.empty()) return; // for `office-order`
    const model::Section* above = nullptr;
    bool worked = false;
    for (const model::Section& section : context.resume.sections) {
        if (section.holds == education) {
            if (above && !worked)
                report<messages::education_below>(findings, above->place,
                                                  in_quotes(above->title.plain()),
                                                  in_quotes(section.title.plain()));
            return;
        }
        if (section.holds == prose || section.holds == credentials || is_empty(section)) continue;
        worked = worked || section.holds == experience;
        above = above ? above : &section;
    }
}

constexpr std::array section_table{
    Check{
        "section-missing", Weight::should, "sections",
        "There are sections of education and of experience, which research, leadership or service "
        "may stand for; of skills, see skills-missing.",
        "Portals have a form for each and send you back to fill it by hand.", "common practice",
        "a résumé without 'section: Experience'", "section: Experience", section_missing},
    Check{"empty-section", Weight::must, "sections", "A section holds something.",
          "A heading with nothing below it looks like a page that did not load.", "common practice",
          "section: Honors, and nothing below it", "section: Honors", empty_section},
    Check{"section-twice", Weight::should, "sections", "No two sections have one title.",
          "A portal keeps one of the two.", "common practice",
          "section: Experience, and again section: Experience",
          "section: Research Experience, and section: Additional Experience", section_twice},
    Check{"section-title", Weight::consider, "sections",
          "A title has a word that tells what the section holds.",
          "Portals sort what they read by titles that they know.", "common practice",
          "section: Where I Have Been", "section: Experience", section_title},
    Check{
        "education-first", Weight::consider, "sections",
        "A student's or recent graduate's education stands first; a summary, a licence and work of "
        "the field may stand above it.",
        "Employers of students hire the degree first.", "common practice",
        "section: Skills above section: Education", "section: Education above all others",
        education_first},
};

}

std::span<const Check> section_checks() {
    return section_table;
}

}
