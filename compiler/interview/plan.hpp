// Which questions are asked at a stage and in a field, in their order: the lists of words/plans.txt
// and words/fields.txt, read.
#pragma once

#include "compiler/interview/draft.hpp"
#include "compiler/trade/kinds.hpp"

#include <compare>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::interview {

constexpr std::string_view choice_section =
    "Beginning"; // the section that asks for stage and field
constexpr std::string_view bullet_label = "bullet", more_groups = "another group";

struct PlannedSection {
    std::string_view name;             // as the plan and what is kept have it
    std::string_view title;            // as it is to stand on the page
    std::optional<trade::Holds> holds; // none: the heading, or the beginning
    std::vector<std::string_view> labels;

    bool has_entries() const; // of which there may be several, each called by its first label
};
using Plan = std::vector<PlannedSection>;

Plan plan_for(trade::Stage stage, std::string_view field);
Plan plan_for(const Draft& draft); // by its stage and field; until they are given, the least

std::vector<std::string_view> field_names();
// What a field has for a label of a kind of section; none if it has nothing of its own.
std::optional<std::string_view> of_field(std::string_view field, std::string_view key);

// --- the order of questions

struct Spot { // where one question stands
    std::size_t section = 0, entry = 0, step = 0, line = 0;

    auto operator<=>(const Spot&) const = default;
};

// Every question there is for what has been answered, those of entries and lines yet to come
// included, in the order in which they are asked.
std::vector<Spot> all_spots(const Plan& plan, const Draft& draft);

std::string_view label_at(const Plan& plan, const Spot& spot);
bool asks_for_lines(std::string_view label); // bullets and groups, one after the other
std::string answer_at(const Plan& plan, const Draft& draft, const Spot& spot);
// Puts the answer there; an empty one takes it out, and an entry goes with what it is called by.
void put_answer(const Plan& plan, Draft& draft, const Spot& spot, std::string text);

}
