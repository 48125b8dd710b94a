#include "compiler/interview/questions.hpp"

#include "compiler/advice/proof.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/interview/lists.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <fmt/format.h>

#include <array>

namespace quoin::interview {

namespace {

constexpr std::size_t columns = 4;
using Row = std::array<std::string_view, columns>;

std::string kind_of(const PlannedSection& section) {
    return section.holds ? std::string(trade::name_of(*section.holds)) : lower_case(section.name);
}

std::string_view row_text(std::string_view kind, std::string_view label) {
    std::string_view found, of_any_group;
    for (std::size_t at = 0; at < list_count; ++at)
        if (name_of(static_cast<List>(at)) == kind)
            each_listed(lines_of(static_cast<List>(at)),
                        [&](std::string_view word, std::string_view said) {
                            if (word == label) found = said;
                            if (word == "group") of_any_group = said;
                        });
    return found.empty() ? of_any_group : found;
}

Row row_of(std::string_view kind, std::string_view label) {
    Row row{};
    std::size_t column = 0;
    for (const std::string_view piece : pieces_of(row_text(kind, label), "|"))
        if (column < columns) row.at(column++) = trimmed(piece);
    return row;
}

std::vector<std::string_view> checks_in(std::string_view names) {
    std::vector<std::string_view> checks;
    for (const std::string_view name : pieces_of(names, " "))
        if (const auto several = said_of(name, lines_of(List::looked_at)))
            for (const std::string_view each : pieces_of(*several, " "))
                checks.push_back(each);
        else
            checks.push_back(name);
    return checks;
}

std::string_view example_in(const std::string& kind, std::string_view label, std::string_view field,
                            std::string_view usual) {
    const auto of_kind = of_field(field, fmt::format("{} {}", kind, label));
    return of_kind ? *of_kind : of_field(field, label).value_or(usual);
}

}

Question question_at(const PlannedSection& section, std::string_view label,
                     std::string_view field) {
    const std::string kind = kind_of(section);
    const auto [goes_in, example, told, looked_at] = row_of(kind, label);
    return {goes_in, std::string(example_in(kind, label, field, example)), told,
            checks_in(looked_at)};
}

std::string Question::why() const {
    const advice::Check* check = advice::find_check(told);
    return check ? fmt::format("{} {}", check->looks_at, check->why) : std::string(told);
}

std::string help_on(const Question& question) {
    std::string text;
    for (const std::string_view name : question.looked_at) {
        const advice::Check* check = advice::find_check(name);
        if (check && name != question.told)
            text += fmt::format("  {} {}\n    not so: {}\n    but so: {}\n", check->looks_at,
                                check->why, check->bad, check->good);
    }
    return text;
}

}
