// GNU make 4.3 is the judge of what a name may hold, and how (tests/commands/depfile_test.cpp).
#include "compiler/commands/set/depfile.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"

#include <algorithm>
#include <array>
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

// A target of make's own, such as `.IGNORE`, whose prerequisites are something else to it
// (section 4.9 of its manual), or what begins a directive.
bool is_word_of_make(std::string_view path) {
    constexpr std::array<std::string_view, 2> directives{"define", "undefine"};
    const bool own = path.starts_with('.') && path.size() > 1 &&
                     std::ranges::all_of(path.substr(1),
                                         [](char c) { return is_capital_letter(c) || c == '_'; });
    return own || is_one_of(path, directives);
}

}

std::string_view unholdable(std::string_view path) {
    // what a backslash before a sign of a pattern comes to hangs on whether there is such a file
    constexpr std::string_view anywhere = ";|%=*?[\t\n\r", at_end = "\\& ";
    const std::size_t at = path.find_first_of(anywhere);
    if (at != std::string_view::npos) return path.substr(at, 1);
    if (path.starts_with('~')) return path.substr(0, 1); // somebody's home
    if (is_word_of_make(path)) return path;
    const std::size_t member = path.find('('); // of an archive: `lib(member)`
    if (path.ends_with(')') && member != std::string_view::npos) return path.substr(member, 1);
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
