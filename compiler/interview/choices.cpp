#include "compiler/interview/choices.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/interview/lists.hpp"
#include "compiler/interview/messages.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace quoin::interview {

// `recent-graduate` is what a command line has for `recent graduate`.
std::optional<std::string_view> Choices::chosen(std::string_view typed) const {
    std::string name = lower_case(typed);
    std::ranges::replace(name, '-', ' ');
    for (std::size_t at = 0; at < all.size(); ++at)
        if (all[at].name == name || std::to_string(at + 1) == typed) return all[at].name;
    return std::nullopt;
}

std::string Choices::meant(std::string_view typed) const {
    std::vector<std::string_view> names;
    for (const Choice& each : all)
        names.push_back(each.name);
    return did_you_mean(typed, names);
}

std::string Choices::refusal(std::string_view typed) const {
    return fill<messages::no_choice>(in_quotes(typed), meant(typed));
}

std::string Choices::names() const {
    return joined(all, " or ", all_of_them, [](const Choice& each) { return each.name; });
}

std::string Choices::listed() const {
    std::string text;
    for (std::size_t at = 0; at < all.size(); ++at)
        text += fmt::format("  {} {}{}{}\n", at + 1, all[at].name, all[at].told.empty() ? "" : ": ",
                            all[at].told);
    return text;
}

Choices choices_for(std::string_view label) {
    Choices choices;
    each_listed(lines_of(label == "stage" ? List::stages : List::fields),
                [&](std::string_view name, std::string_view told) {
                    choices.all.push_back({name, told});
                });
    return choices;
}

}
