#include "compiler/base/wrapped.hpp"

#include "compiler/base/utf8.hpp"

#include <algorithm>

namespace quoin {

std::string wrapped(std::string_view text, std::size_t indent) {
    std::string out;
    std::size_t column = terminal_measure;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find(' '), text.size());
        const std::string_view word = text.substr(0, end);
        const std::size_t width = characters_in(word);
        text.remove_prefix(std::min(end + 1, text.size()));
        if (column + 1 + width > terminal_measure) {
            out.append(out.empty() ? "" : "\n").append(indent, ' ');
            column = indent;
        } else {
            out += ' ';
            ++column;
        }
        out += word;
        column += width;
    }
    return out + '\n';
}

std::string wrapped_lines(std::string_view lines) {
    std::string out;
    while (!lines.empty()) {
        const std::size_t end = std::min(lines.find('\n'), lines.size());
        const std::string_view line = lines.substr(0, end);
        const std::size_t indent = std::min(line.find_first_not_of(' '), line.size());
        out += characters_in(line) > terminal_measure ? wrapped(line.substr(indent), indent)
                                                      : std::string(line) + '\n';
        lines.remove_prefix(std::min(end + 1, lines.size()));
    }
    return out;
}

}
