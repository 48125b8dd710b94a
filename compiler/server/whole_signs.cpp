#include "compiler/server/whole_signs.hpp"

#include "compiler/base/numbers.hpp"

#include <cstddef>
#include <optional>
#include <string_view>

namespace quoin::server {

namespace {

constexpr std::size_t escape_size = 6; // \uXXXX

// The number of an escape that stands there; none if there is no such.
std::optional<unsigned> escaped_at(std::string_view json, std::size_t at) {
    const std::string_view text = json.substr(at < json.size() ? at : json.size(), escape_size);
    if (text.size() < escape_size || !text.starts_with("\\u")) return std::nullopt;
    return number_from<unsigned>(text.substr(2), 16);
}

bool is_first_half(unsigned code) {
    return code >= 0xD800 && code <= 0xDBFF;
}

bool is_second_half(unsigned code) {
    return code >= 0xDC00 && code <= 0xDFFF;
}

}

std::string whole_signs(std::string json) {
    for (std::size_t at = json.find('\\'); at < json.size(); at = json.find('\\', at)) {
        const auto code = escaped_at(json, at);
        if (!code) {
            at += 2; // another escape
            continue;
        }
        const auto next = escaped_at(json, at + escape_size);
        if (is_first_half(*code) && next && is_second_half(*next)) {
            at += 2 * escape_size;
            continue;
        }
        if (is_first_half(*code) || is_second_half(*code)) json.replace(at, escape_size, "\\uFFFD");
        at += escape_size;
    }
    return json;
}

}
