// Symbols of units, which stand with the figure before them.
#pragma once

#include <algorithm>
#include <array>
#include <string_view>

namespace quoin::trade {

// SI Brochure, 9th edition, tables 2, 4 and 8; NIST Handbook 44, appendix C; those of screens and
// machines (common practice). Neither words nor `in`, which is one.
constexpr std::array<std::string_view, 73> unit_symbols{
    "%",   "‰",   "°",   "°C",   "°F",   "nm",   "µm",   "μm",  "mm", "cm", "m",  "km",  "ha",
    "ft",  "yd",  "mi",  "lb",   "oz",   "gal",  "µg",   "μg",  "mg", "g",  "kg", "µL",  "μL",
    "mL",  "ml",  "L",   "mol",  "mM",   "µM",   "μM",   "ns",  "µs", "ms", "s",  "min", "h",
    "Hz",  "kHz", "MHz", "GHz",  "W",    "kW",   "MW",   "kWh", "V",  "mV", "N",  "J",   "kJ",
    "Pa",  "kPa", "dB",  "kB",   "MB",   "GB",   "TB",   "mph", "Ω",  "A",  "K",  "hp",  "rpm",
    "psi", "px",  "fps", "kcal", "µmol", "μmol", "Mbps", "mAh"};

// `km/h` is the unit of its first part.
constexpr bool is_unit_symbol(std::string_view word) {
    return std::ranges::find(unit_symbols, word.substr(0, word.find('/'))) != unit_symbols.end();
}

}
