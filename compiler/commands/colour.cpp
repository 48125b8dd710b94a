// Escape sequences are those of ECMA-48, 8.3.117 (SGR).
#include "compiler/commands/colour.hpp"

#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <utility>

namespace quoin::commands {

namespace {

constexpr std::string_view red = "\x1b[1;31m", yellow = "\x1b[1;33m", cyan = "\x1b[1;36m",
                           bold = "\x1b[1m", plain = "\x1b[0m";

constexpr std::pair<std::string_view, std::string_view> weights[] = {
    {"error: ", red},     {"warning: ", yellow}, {"note: ", cyan},    {"must [", red},
    {"should [", yellow}, {"consider [", cyan},  {"reminder [", cyan}};

enum class When { automatic, always, never };
When when_colours = When::automatic; // set once, by the command line

// https://no-color.org: set, and not empty.
bool terminal_has_colours(int descriptor) {
    const char *refused = std::getenv("NO_COLOR"), *terminal = std::getenv("TERM");
    return ::isatty(descriptor) == 1 && (refused == nullptr || *refused == '\0') &&
           terminal != nullptr && *terminal != '\0' && std::string_view(terminal) != "dumb";
}

bool colours_wanted(int descriptor) {
    return when_colours == When::always ||
           (when_colours == When::automatic && terminal_has_colours(descriptor));
}

void add_coloured(std::string& out, std::string_view colour, std::string_view words) {
    out.append(colour).append(words).append(plain);
}

// A quotation begins after a space or a parenthesis and ends before what is no letter: an
// apostrophe is none.
std::size_t end_of_quotation(std::string_view text, std::size_t begin) {
    constexpr std::string_view before = " (", after = " ,;:.)?";
    if (text[begin] != '\'' || (begin > 0 && before.find(text[begin - 1]) == before.npos))
        return begin;
    for (std::size_t end = text.find('\'', begin + 1); end != text.npos;
         end = text.find('\'', end + 1))
        if (end + 1 == text.size() || after.find(text[end + 1]) != after.npos) return end + 1;
    return begin;
}

void add_words(std::string& out, std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = end_of_quotation(text, at);
        if (end > at)
            add_coloured(out, bold, text.substr(at, end - at));
        else
            out += text[at];
        at = std::max(end, at + 1);
    }
}

bool is_pointer(std::string_view line) {
    const std::size_t first = line.find_first_not_of(' ');
    return first != line.npos && first >= 2 && line[first] == '^' &&
           line.find_first_not_of('~', first + 1) == line.npos;
}

void add_line(std::string& out, std::string_view line) {
    if (is_pointer(line)) return add_coloured(out, red, line);
    // a place has no space behind its colon; what the line says of it has one
    const std::size_t said = line.find(": ");
    if (said == line.npos || line.starts_with(' ')) return void(out += line);
    const std::string_view words = line.substr(said + 2);
    for (const auto& [weight, colour] : weights)
        if (words.starts_with(weight)) {
            add_coloured(out.append(line.substr(0, said + 2)), colour,
                         weight.substr(0, weight.find_first_of(": ")));
            return add_words(out, words.substr(weight.find_first_of(": ")));
        }
    out += line;
}

}

void choose_colours(std::string_view when) {
    when_colours = when == "always"  ? When::always
                   : when == "never" ? When::never
                                     : When::automatic;
}

std::string with_colours(std::string text, int descriptor) {
    if (!colours_wanted(descriptor)) return text;
    std::string out;
    for (std::size_t begin = 0; begin < text.size();) {
        const std::size_t end = std::min(text.find('\n', begin), text.size());
        add_line(out, std::string_view(text).substr(begin, end - begin));
        if (end < text.size()) out += '\n';
        begin = end + 1;
    }
    return out;
}

}
