// JSON as it is written.
#pragma once

#include <nlohmann/json_fwd.hpp>

#include <string>

namespace quoin {

// Indented, with a line feed at its end. Bytes that are no UTF-8, as file names may have, become
// U+FFFD.
std::string json_text(const nlohmann::ordered_json& json);

double in_thousandths(double value); // rounded so, for a reader

}
