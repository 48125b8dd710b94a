#include "compiler/base/json_text.hpp"

#include <nlohmann/json.hpp>

#include <cmath>

namespace quoin {

std::string json_text(const nlohmann::ordered_json& json) {
    return json.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + '\n';
}

double in_thousandths(double value) {
    return std::round(value * 1000) / 1000;
}

}
