#include "compiler/commands/mend/line_diff.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <span>
#include <utility>
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

struct Step { // of the way from one text to the other
    char sign = ' ';
    std::string_view line;
};

// How many lines of each differ before both go on alike: the fewest, of those near.
std::pair<std::size_t, std::size_t> lines_apart(std::span<const std::string_view> before,
                                                std::span<const std::string_view> after) {
    constexpr std::size_t farthest = 24; // a mend stays near its place
    for (std::size_t both = 1; both <= farthest; ++both)
        for (std::size_t out = 0; out <= both; ++out) {
            const std::size_t in = both - out;
            if (out < before.size() && in < after.size() && before[out] == after[in])
                return {out, in};
        }
    return {std::min<std::size_t>(1, before.size()), std::min<std::size_t>(1, after.size())};
}

std::vector<Step> steps_between(std::span<const std::string_view> before,
                                std::span<const std::string_view> after) {
    std::vector<Step> steps;
    while (!before.empty() || !after.empty()) {
        if (!before.empty() && !after.empty() && before.front() == after.front()) {
            steps.push_back({' ', before.front()});
            before = before.subspan(1);
            after = after.subspan(1);
            continue;
        }
        const auto [out, in] = lines_apart(before, after);
        for (const std::string_view line : before.first(out))
            steps.push_back({'-', line});
        for (const std::string_view line : after.first(in))
            steps.push_back({'+', line});
        before = before.subspan(out);
        after = after.subspan(in);
    }
    return steps;
}

// Lines that changed one after another go out together, as patch expects them.
void put_change(std::string& out, std::span<const Step> steps) {
    for (const char sign : {'-', '+'})
        for (const Step& step : steps)
            if (step.sign == sign) put(out, sign, step.line);
}

std::size_t end_of_change(std::span<const Step> steps, std::size_t at) {
    while (at < steps.size() && steps[at].sign != ' ')
        ++at;
    return at;
}

// The steps [begin, end) with the numbers of the lines they begin at, from 1.
void put_hunk(std::string& out, std::span<const Step> steps, std::size_t old_line,
              std::size_t new_line) {
    const auto count = [&](char other) {
        return std::ranges::count_if(steps, [&](const Step& step) { return step.sign != other; });
    };
    const auto old_count = count('+'), new_count = count('-');
    out += fmt::format("@@ -{},{} +{},{} @@\n", old_line - (old_count == 0), old_count,
                       new_line - (new_count == 0), new_count);
    for (std::size_t at = 0; at < steps.size();) {
        const std::size_t end = end_of_change(steps, at);
        put_change(out, steps.subspan(at, end - at));
        if (end < steps.size()) put(out, ' ', steps[end].line);
        at = end + 1;
    }
}

// Where a hunk ends that begins before the change at `at`: three lines after the last change that
// is not six lines or more from the one before it.
std::size_t end_of_hunk(std::span<const Step> steps, std::size_t at) {
    std::size_t alike = 0;
    for (; at < steps.size() && alike <= 2 * context_lines; ++at)
        alike = steps[at].sign == ' ' ? alike + 1 : 0;
    return alike > context_lines ? at - (alike - context_lines) : at;
}

}

std::string line_diff(const std::string& name, std::string_view before, std::string_view after) {
    const std::vector<std::string_view> old_lines = lines_of(before), new_lines = lines_of(after);
    const std::vector<Step> steps = steps_between(old_lines, new_lines);
    const std::span<const Step> all{steps};
    std::string out;
    std::size_t old_line = 1, new_line = 1, told = 0;
    for (std::size_t at = 0; at < steps.size(); ++at) {
        if (steps[at].sign != ' ' && at >= told) {
            const std::size_t begin = std::max(told, at - std::min(at, context_lines));
            const std::size_t lead = at - begin;
            told = end_of_hunk(all, at);
            if (out.empty()) out = fmt::format("--- {0}\n+++ {0}\n", patch_name(name));
            put_hunk(out, all.subspan(begin, told - begin), old_line - lead, new_line - lead);
        }
        old_line += steps[at].sign != '+';
        new_line += steps[at].sign != '-';
    }
    return out;
}

}
