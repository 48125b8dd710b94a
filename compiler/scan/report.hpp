// A scan as people and as programs read it.
#pragma once

#include "compiler/scan/scan.hpp"

#include <nlohmann/json_fwd.hpp>

#include <string>
#include <string_view>

namespace quoin {

std::string report_text(std::string_view file, const Scan& scan);

// Keys are stable: further ones may come, none goes or changes its meaning.
nlohmann::ordered_json report_json(std::string_view file, const Scan& scan);
nlohmann::ordered_json report_json(std::string_view file, const std::string& unreadable);

}
