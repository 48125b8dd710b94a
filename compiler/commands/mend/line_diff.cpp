#include "compiler/commands/mend/line_diff.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace quoin::commands {

namespace {

constexpr std::size_t context_lines = 3;

// With their ends; the last may have none.
std::vector<std::string_view> lines_of(std::string_view text) {
    std::vector<std::string_view> lines;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size() - 1) + 1;
        lines.push_back(text.substr(0, end));
        text.remove_prefix(end);
    }
    return lines;
}

void put(std::string& out, char sign, std::string_view line) {
    out += sign;
    out += line;
    if (!line.ends_with('\n')) out += "\n\\ No newline at end of file\n";
}

// As GNU patch takes a name apart: one with blanks ends at a tab, and one that it could take for
// something else is in double quotes, as a string of C.
std::string patch_name(std::string_view name) {
    const bool odd = name.starts_with(' ') || std::ranges::any_of(name, [](char c) {
                         return static_cast<unsigned char>(c) < 0x20 || c == '"' || c == '\\';
                     });
    if (!odd) return std::string(name) + (name.find(' ') == std::string_view::npos ? "" : "\t");
    std::string quoted = "\"";
    for (const char c : name) {
        if (c == '"' || c == '\\')
            (quoted += '\\') += c;
        else if (static_cast<unsigned char>(c) < 0x20)
            quoted += fmt::format("\\{:03o}", static_cast<unsigned char>(c));
        else
            quoted += c;
    }
    return quoted + '"';
}

struct Hunk { // lines [begin, end), from 0
    std::size_t begin = 0, end = 0;
};

std::vector<Hunk> hunks_of(const std::vector<std::string_view>& before,
                           const std::vector<std::string_view>& after) {
    std::vector<Hunk> hunks;
    for (std::size_t at = 0; at < before.size() && at < after.size(); ++at) {
        if (before[at] == after[at]) continue;
        const std::size_t begin = at < context_lines ? 0 : at - context_lines;
        const std::size_t end = std::min(at + context_lines + 1, before.size());
        if (!hunks.empty() && begin <= hunks.back().end)
            hunks.back().end = end;
        else
            hunks.push_back({begin, end});
    }
    return hunks;
}

// Lines that changed one after another go out together, as patch expects them.
void put_hunk(std::string& out, const Hunk& hunk, const std::vector<std::string_view>& before,
              const std::vector<std::string_view>& after) {
    const std::size_t count = hunk.end - hunk.begin;
    out += fmt::format("@@ -{0},{1} +{0},{1} @@\n", hunk.begin + 1, count);
    for (std::size_t at = hunk.begin; at < hunk.end;) {
        std::size_t end = at;
        while (end < hunk.end && before[end] != after[end])
            ++end;
        for (std::size_t i = at; i < end; ++i)
            put(out, '-', before[i]);
        for (std::size_t i = at; i < end; ++i)
            put(out, '+', after[i]);
        if (end < hunk.end) put(out, ' ', before[end++]);
        at = end;
    }
}

}

std::string line_diff(const std::string& name, std::string_view before, std::string_view after) {
    const auto old_lines = lines_of(before), new_lines = lines_of(after);
    const std::vector<Hunk> hunks = hunks_of(old_lines, new_lines);
    if (hunks.empty()) return {};
    std::string out = fmt::format("--- {0}\n+++ {0}\n", patch_name(name));
    for (const Hunk& hunk : hunks)
        put_hunk(out, hunk, old_lines, new_lines);
    return out;
}

}
