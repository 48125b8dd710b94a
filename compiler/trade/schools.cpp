#include "compiler/trade/schools.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/phrases.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace quoin::trade {

namespace {

constexpr std::array<std::string_view, 8> names_before_college{
    "high school",      "secondary school", "preparatory academy", "preparatory school",
    "preparatory high", "prep academy",     "prep school",         "senior high"};

}

bool is_before_college(std::string_view school, std::string_view degree) {
    const std::string name = lower_case(school), award = lower_case(degree);
    if (has_phrase(award, "high school diploma")) return true;
    if (has_phrase(award, "certificate")) return false;
    return name.ends_with(" high") || std::ranges::any_of(names_before_college, [&](auto known) {
               return has_phrase(name, known);
           });
}

}
