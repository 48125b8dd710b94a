// GNU make 4.3 is the judge of what a name may hold, and how (tests/outside/check_depfiles.py).
#include "compiler/commands/set/depfile.hpp"

#include <string_view>

namespace quoin::commands {

namespace {

std::string escaped(std::string_view path) {
    constexpr std::string_view wants_backslash = " #:";
    std::string out;
    std::size_t backslashes = 0; // right before this character
    for (const char c : path) {
        // make halves backslashes only where they stand before one of these
        if (wants_backslash.find(c) != std::string_view::npos) out.append(backslashes + 1, '\\');
        if (c == '$') out += '$';
        out += c;
        backslashes = c == '\\' ? backslashes + 1 : 0;
    }
    return out;
}

}

std::string_view unholdable(std::string_view path) {
    constexpr std::string_view anywhere = ";|%=\t\n\r", at_end = "\\& ";
    const std::size_t at = path.find_first_of(anywhere);
    if (at != std::string_view::npos) return path.substr(at, 1);
    const bool ends = !path.empty() && at_end.find(path.back()) != std::string_view::npos;
    return ends ? path.substr(path.size() - 1) : std::string_view{};
}

std::string depfile(std::span<const std::string> targets,
                    std::span<const std::filesystem::path> prerequisites) {
    std::string out;
    for (const std::string& target : targets)
        out += (out.empty() ? "" : " ") + escaped(target);
    out += ':';
    for (const auto& path : prerequisites)
        out += " \\\n  " + escaped(path.string());
    out += '\n';
    for (const auto& path : prerequisites)
        out += '\n' + escaped(path.string()) + ":\n";
    return out;
}

}
