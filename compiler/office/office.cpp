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

std::string value_text(const LimitRow& row, const Limits& limits) {
    const double least = limits.*row.of, most = row.most ? limits.*row.most : least;
    if (&row == &row_of(&Limits::most_pages) && most == 0) return "by stage";
    if (least == most) return fmt::format("{:.3g} {}", least, row.unit);
    return fmt::format("{:.3g} to {:.3g} {}", least, most, row.unit);
}

}
