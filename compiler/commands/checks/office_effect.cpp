#include "compiler/commands/checks/office_effect.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <utility>
#include <vector>

namespace quoin::commands {

namespace {

using office::Office;
using office::Rules;
using TextAt = std::function<std::string(const Rules&)>; // empty: nothing there

struct StagesTold { // of which the same is said
    std::string text;
    std::vector<std::string_view> stages;
};

std::string with_stages(const StagesTold& told) {
    if (told.stages.size() == office::stage_count) return told.text;
    return fmt::format("{}, for {}", told.text, joined(told.stages, " and "));
}

// What differs by stage is told with the stages that it holds at; alike at all, without.
std::vector<std::string> by_stage(const Office& office, const TextAt& text_at) {
    std::vector<StagesTold> told;
    for (const std::string_view name : trade::names_of<trade::Stage>()) {
        const std::string text = text_at(office.at(*trade::named<trade::Stage>(name)));
        auto same = std::ranges::find(told, text, &StagesTold::text);
        if (same == told.end()) same = told.insert(told.end(), {text, {}});
        same->stages.push_back(name);
    }
    std::vector<std::string> texts;
    for (const StagesTold& one : told)
        if (!one.text.empty()) texts.push_back(with_stages(one));
    return texts;
}

std::string line_told(const Office& office, const office::Asked& asked) {
    return fmt::format(" ({}{}{})", office.where(asked.line), asked.reason.empty() ? "" : ": ",
                       asked.reason);
}

std::string ruling_on(const advice::Check& check, const Office& office, const Rules& rules) {
    std::string text;
    if (const auto rule = rules.checks.find(check.name); rule != rules.checks.end()) {
        const auto& weight = rule->second.weight;
        text = fmt::format("{} → {}{}", name_of(check.weight), weight ? name_of(*weight) : "off",
                           line_told(office, rule->second.asked));
    }
    if (const auto kept = rules.not_acceptable.find(check.name); kept != rules.not_acceptable.end())
        text += fmt::format("{}not to be set aside{}", text.empty() ? "" : "; ",
                            line_told(office, kept->second));
    return text;
}

std::string row_text(std::string_view label, const Office& office, const TextAt& text_at) {
    std::string text;
    for (const std::string& one : by_stage(office, text_at))
        text += fmt::format("  {:<20} {}\n", label, one);
    return text;
}

template<typename Rule>
TextAt listed_words(std::vector<Rule> Rules::*list, std::string Rule::*words) {
    return [=](const Rules& rules) {
        return joined(rules.*list, ", ", 6, [&](const Rule& rule) { return rule.*words; });
    };
}

template<typename Value>
TextAt names_of_allowed(office::Allowed<Value> Rules::*allowed) {
    return [=](const Rules& rules) {
        return joined((rules.*allowed).values, ", ", all_of_them, [](const Value& value) {
            if constexpr (std::is_enum_v<Value>)
                return std::string(trade::name_of(value));
            else
                return value;
        });
    };
}

}

std::string effect_on(const advice::Check& check, const Office& office) {
    std::string text;
    for (const std::string& one :
         by_stage(office, [&](const Rules& rules) { return ruling_on(check, office, rules); }))
        text += fmt::format("{:<23}{}\n", "", one);
    return text;
}

std::string numbers_of(const Office& office) {
    std::string text = "\nnumbers\n";
    for (const office::LimitRow& row : office::limit_rows) {
        const std::string usual = value_text(row, {});
        text += row_text(row.label, office, [&](const Rules& rules) {
            const office::Asked* asked = rules.set_by(row.of);
            return asked ? fmt::format("{} → {}{}", usual, value_text(row, rules.limits),
                                       line_told(office, *asked))
                         : usual;
        });
        text += fmt::format("{:<23}{}: {}\n", "", row.check, row.does);
    }
    return text;
}

std::string asked_by(const Office& office) {
    using namespace office;
    std::string text = fmt::format("\n{}\n", office.name);
    const std::pair<std::string_view, TextAt> rows[] = {
        {"avoid", listed_words(&Rules::avoid, &WordToAvoid::words)},
        {"prefer", listed_words(&Rules::prefer, &PreferredVerb::verb)},
        {"phrase", listed_words(&Rules::phrases, &OfficePhrase::words)},
        {"order", names_of_allowed(&Rules::order)},
        {"themes", names_of_allowed(&Rules::themes)},
        {"dates-as", names_of_allowed(&Rules::date_forms)},
        {"employers", listed_words(&Rules::employers, &KnownName::name)},
        {"schools", listed_words(&Rules::schools, &KnownName::name)},
        {"courses", listed_words(&Rules::courses, &KnownName::name)},
        {"closing", [&](const Rules&) { return office.closing; }}};
    for (const auto& [label, text_at] : rows)
        text += row_text(label, office, text_at);
    return text;
}

}
