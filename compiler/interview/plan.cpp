#include "compiler/interview/plan.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/interview/lists.hpp"
#include "compiler/trade/section_titles.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <utility>

namespace quoin::interview {

namespace {

// A list is found by its name, in which `_` stands for a space.
std::optional<List> list_named(std::string_view name) {
    std::string wanted(name);
    std::ranges::replace(wanted, ' ', '_');
    for (std::size_t at = 0; at < list_count; ++at)
        if (name_of(static_cast<List>(at)) == wanted) return static_cast<List>(at);
    return std::nullopt;
}

std::optional<std::string_view> said_in_order(List list, std::string_view key) {
    std::optional<std::string_view> found;
    each_listed(lines_of(list), [&](std::string_view word, std::string_view said) {
        if (word == key) found = said;
    });
    return found;
}

// The groups that a field names, and then any other.
std::vector<std::string_view> groups_of(std::string_view field) {
    std::vector<std::string_view> groups = pieces_of(of_field(field, "groups").value_or(""), "; ");
    groups.push_back(more_groups);
    return groups;
}

PlannedSection planned(std::string_view name, std::string_view labels, std::string_view field) {
    PlannedSection section{name, of_field(field, name).value_or(name), trade::usual_holds(name),
                           pieces_of(labels, " ")};
    if (section.holds == trade::Holds::skills) section.labels = groups_of(field);
    return section;
}

bool takes_entries(trade::Holds holds) {
    return holds != trade::Holds::skills && holds != trade::Holds::prose;
}

}

bool PlannedSection::has_entries() const {
    return holds && takes_entries(*holds);
}

std::optional<std::string_view> of_field(std::string_view field, std::string_view key) {
    const auto list = is_one_of(field, field_names()) ? list_named(field) : std::nullopt;
    return list ? said_in_order(*list, key) : std::nullopt;
}

std::vector<std::string_view> field_names() {
    return listed(List::fields);
}

Plan plan_for(trade::Stage stage, std::string_view field) {
    Plan plan{{choice_section, choice_section, std::nullopt, {"stage", "field"}}};
    each_listed(lines_of(*list_named(name_of(stage))),
                [&](std::string_view name, std::string_view labels) {
                    plan.push_back(planned(name, labels, field));
                });
    return plan;
}

Plan plan_for(const Draft& draft) {
    const auto stage = trade::named<trade::Stage>(draft.value(choice_section, "stage"));
    const std::string_view field = draft.value(choice_section, "field");
    return plan_for(stage.value_or(trade::Stage::undergraduate),
                    field.empty() ? field_names().front() : field);
}

}
