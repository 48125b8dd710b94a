#include "compiler/base/lists.hpp"

namespace quoin {
namespace {

struct ListedLine {
    std::string_view word, said;
};

ListedLine parted_line(std::string_view line) {
    const std::size_t tab = line.find('\t');
    if (tab == line.npos) return {line, {}};
    return {line.substr(0, tab), line.substr(tab + 1)};
}

}

std::optional<std::string_view> said_of(std::string_view word, std::string_view lines) {
    while (!lines.empty()) {
        const std::size_t before = lines.substr(0, lines.size() / 2).rfind('\n');
        const std::size_t begin = before == lines.npos ? 0 : before + 1;
        const std::size_t end = lines.find('\n', begin);
        const ListedLine middle = parted_line(lines.substr(begin, end - begin));
        if (middle.word == word) return middle.said;
        lines = word < middle.word ? lines.substr(0, begin) : lines.substr(end + 1);
    }
    return std::nullopt;
}

bool has_word(std::string_view words, std::string_view word) {
    while (!words.empty()) {
        const std::size_t end = std::min(words.find(' '), words.size());
        if (words.substr(0, end) == word) return true;
        words.remove_prefix(std::min(end + 1, words.size()));
    }
    return false;
}

void each_listed(std::string_view lines,
                 const std::function<void(std::string_view word, std::string_view said)>& visit) {
    while (!lines.empty()) {
        const std::size_t end = lines.find('\n');
        const ListedLine line = parted_line(lines.substr(0, end));
        visit(line.word, line.said);
        lines.remove_prefix(end + 1);
    }
}

std::vector<std::string_view> listed(std::string_view lines) {
    std::vector<std::string_view> words;
    each_listed(lines, [&](std::string_view word, std::string_view) { words.push_back(word); });
    return words;
}

std::vector<std::string> parted(std::string_view text, std::string_view signs) {
    std::vector<std::string> parts;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find_first_of(signs, at), text.size());
        if (end > at) parts.emplace_back(text.substr(at, end - at));
        at = end + 1;
    }
    return parts;
}

std::vector<std::string_view> pieces_of(std::string_view text, std::string_view sign) {
    std::vector<std::string_view> pieces;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find(sign), text.size());
        pieces.push_back(text.substr(0, end));
        text.remove_prefix(std::min(end + sign.size(), text.size()));
    }
    return pieces;
}

}
