#include "compiler/office/office.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

namespace quoin::office {

const Asked* Rules::set_by(LimitOf limit) const {
    const auto found = limits_set.find(row_of(limit).label);
    return found == limits_set.end() ? nullptr : &found->second;
}

std::string Office::where(std::uint32_t line) const {
    return fmt::format("{}:{}", path.filename().string(), line);
}

std::string Office::says(std::string_view does, const Asked& asked) const {
    return fmt::format("{} {}, {}{}{}", name, does, where(asked.line),
                       asked.reason.empty() ? "" : ": ", asked.reason);
}

const LimitRow& row_of(LimitOf limit) {
    return *std::ranges::find_if(limit_rows, [&](const LimitRow& row) {
        return row.of == limit || (row.most != nullptr && row.most == limit);
    });
}

namespace {

// "1 page", "2 pages", "1 inch"
std::string unit_of(const LimitRow& row, double number) {
    std::string unit(row.unit);
    if (number != 1 || !unit.ends_with('s')) return unit;
    unit.resize(unit.size() - (unit.ends_with("hes") ? 2 : 1));
    return unit;
}

}

std::string value_text(const LimitRow& row, const Limits& limits) {
    const double least = limits.*row.of, most = row.most ? limits.*row.most : least;
    if (&row == &row_of(&Limits::most_pages) && most == 0) return "by stage";
    const std::string unit = unit_of(row, most);
    if (least == most) return fmt::format("{:.3g} {}", least, unit);
    return fmt::format("{:.3g} to {:.3g} {}", least, most, unit);
}

}
