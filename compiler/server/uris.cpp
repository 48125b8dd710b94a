#include "compiler/server/uris.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/numbers.hpp"

#include <algorithm>

namespace quoin::server {

namespace {

constexpr std::string_view file_scheme = "file";

// Of RFC 3986, section 3.1; empty if there is none.
std::string scheme_of(std::string_view uri) {
    const std::string_view scheme = uri.substr(0, uri.find(':'));
    const bool is_one = scheme.size() < uri.size() && !scheme.empty() &&
                        is_ascii_letter(scheme.front()) && std::ranges::all_of(scheme, [](char c) {
                            return is_letter_or_figure(c) || c == '+' || c == '-' || c == '.';
                        });
    return is_one ? lower_case(scheme) : std::string{};
}

std::optional<std::string> percent_decoded(std::string_view text) {
    std::string decoded;
    for (std::size_t at = 0; at < text.size(); ++at) {
        if (text[at] != '%') {
            decoded += text[at];
            continue;
        }
        const std::string_view figures = text.substr(at + 1, 2);
        const auto byte = number_from<unsigned>(figures, 16);
        if (figures.size() < 2 || byte.value_or(0) == 0) return std::nullopt;
        decoded += static_cast<char>(*byte);
        at += 2;
    }
    return decoded;
}

bool stands_for_itself(char c) { // in a path: RFC 3986, section 3.3
    return is_letter_or_figure(c) ||
           std::string_view("/-._~!$&'()*+,;=:@").find(c) != std::string_view::npos;
}

}

std::optional<std::filesystem::path> path_of_uri(std::string_view uri) {
    const std::string scheme = scheme_of(uri);
    if (scheme.empty() || uri.find('\0') != uri.npos) return std::nullopt;
    if (scheme != file_scheme) return std::filesystem::path(uri);
    std::string_view rest = uri.substr(file_scheme.size() + 1);
    if (rest.starts_with("//localhost/"))
        rest.remove_prefix(std::string_view("//localhost").size());
    if (rest.starts_with("///")) rest.remove_prefix(2);
    if (!rest.starts_with('/') || rest.starts_with("//")) return std::nullopt;
    const auto decoded = percent_decoded(rest);
    if (!decoded) return std::nullopt;
    return std::filesystem::path(*decoded).lexically_normal();
}

std::string uri_of_path(const std::filesystem::path& path) {
    if (!path.is_absolute()) return path.string();
    constexpr std::string_view figures = "0123456789ABCDEF";
    std::string uri = "file://";
    for (const char c : path.string()) {
        if (stands_for_itself(c)) {
            uri += c;
            continue;
        }
        const auto byte = static_cast<unsigned char>(c);
        uri += {'%', figures[byte >> 4U], figures[byte & 15U]};
    }
    return uri;
}

}
