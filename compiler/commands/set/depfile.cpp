#include "compiler/commands/set/depfile.hpp"

#include <string_view>

namespace quoin::commands {

namespace {

std::string escaped(std::string_view path) {
    std::string out;
    std::size_t backslashes = 0; // right before this character
    for (const char c : path) {
        // make halves backslashes only where they stand before a space or `#`
        if (c == ' ' || c == '\t' || c == '#') out.append(backslashes + 1, '\\');
        if (c == '$') out += '$';
        out += c;
        backslashes = c == '\\' ? backslashes + 1 : 0;
    }
    return out;
}

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
