// What an office asks for beside the checks of the trade, by its own file of rules. Without one
// they find nothing.
#include "compiler/advice/office_words.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"

#include <algorithm>
#include <array>

namespace quoin::advice {

namespace {

Place place_or_name(const ProofContext& context, const Place& place, bool stated) {
    const model::Field* name = context.resume.find(trade::FieldName::name);
    return stated || !name ? place : name->place;
}

template<typename Value>
std::vector<std::string_view> names_allowed(const office::Allowed<Value>& allowed) {
    std::vector<std::string_view> names;
    for (const Value& value : allowed.values)
        if constexpr (std::is_enum_v<Value>)
            names.push_back(trade::name_of(value));
        else
            names.push_back(value);
    return names;
}

void office_order(const ProofContext& context, std::vector<Finding>& findings) {
    const auto& order = context.rules().order;
    const auto rank = [&](const model::Section& section) {
        return std::ranges::find(order.values, section.holds) - order.values.begin();
    };
    const model::Section* above = nullptr;
    for (const model::Section& section : context.resume.sections) {
        if (!is_one_of(section.holds, order.values) || section.entries.empty()) continue;
        if (above && rank(section) < rank(*above)) {
            Finding& finding = report<messages::section_order>(findings, above->place,
                                                               in_quotes(above->title.plain()),
                                                               in_quotes(section.title.plain()));
            finding.suggestion = fill<messages::ordered_so>(joined(names_allowed(order), ", "));
            add_office(finding, context.office->says(fill<messages::office_asks>(), order.asked));
            return;
        }
        above = &section;
    }
}

void office_theme(const ProofContext& context, std::vector<Finding>& findings) {
    const auto& themes = context.rules().themes;
    if (!context.typeset || themes.values.empty()) return;
    const std::string& name = context.typeset->theme.name;
    if (is_one_of(name, themes.values)) return;
    const auto& setting = context.resume.settings.theme;
    Finding& finding = report<messages::other_theme>(
        findings, place_or_name(context, setting.place, setting.stated()), name);
    finding.suggestion = fill<messages::choose_theme>(listed(names_allowed(themes)));
    add_office(finding, context.office->says(fill<messages::office_asks>(), themes.asked));
}

void office_dates(const ProofContext& context, std::vector<Finding>& findings) {
    const auto& forms = context.rules().date_forms;
    const auto& setting = context.resume.settings.dates_as;
    if (forms.values.empty() || is_one_of(*setting, forms.values)) return;
    Finding& finding = report<messages::other_dates>(
        findings, place_or_name(context, setting.place, setting.stated()),
        trade::name_of(*setting));
    finding.suggestion = fill<messages::choose_dates>(listed(names_allowed(forms)));
    add_office(finding, context.office->says(fill<messages::office_asks>(), forms.asked));
}

constexpr std::string_view own_rules = "the office's own file of rules, grammar/office.md";

constexpr std::array office_table{
    Check{"office-words", Weight::should, "office",
          "No word stands there that the office would have avoided, in whatever form.",
          "The office has seen what its employers pass over.", own_rules,
          "- Utilized synergy, where the office avoids it", "- Shared 9 sites with 2 teams",
          office_words},
    Check{"office-phrases", Weight::should, "office",
          "No phrase stands there that the office has advice on; how much it weighs the office "
          "says.",
          "The office has met it often enough to know what to put in its place.", own_rules,
          "Proficient in GIS, where the office asks what was made with it", "Mapped 9 sites in GIS",
          office_phrases},
    Check{"office-order", Weight::should, "office",
          "Sections stand in the order that the office asks for at this stage.",
          "Its employers look for things where they are used to find them.", own_rules,
          "Skills above Education, where the office has it below", "Education above Skills",
          office_order},
    Check{"office-theme", Weight::should, "office", "The theme is one that the office allows.",
          "The office knows what its employers' portals and printers take.", own_rules,
          "a theme that the office does not name", "theme: turnstone", office_theme},
    Check{"office-dates", Weight::should, "office",
          "Dates are printed in a form that the office allows.",
          "One form across a college's résumés is read without a thought.", own_rules,
          "dates-as: 2026-06, where the office has 'Jun 2026'", "dates-as: Jun 2026", office_dates},
    Check{"office-names", Weight::should, "office",
          "An employer, school or course that the office knows is spelled as the office has it.",
          "A name that is nearly right is found by no search, and is noticed by whoever bears it.",
          own_rules, "employer: Marrow Bay Kelp Coop", "employer: Marrow Bay Kelp Co-op",
          office_names},
};

}

std::span<const Check> office_checks() {
    return office_table;
}

}
