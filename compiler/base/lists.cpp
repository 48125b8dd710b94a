#include "compiler/base/lists.hpp"

#include <cstring> // memrchr
#include <map>
#include <utility>

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

// FNV-1a, as make_lists.py has it.
std::uint32_t hash_of(std::string_view word) {
    std::uint32_t number = 2166136261U;
    for (const char c : word)
        number = (number ^ static_cast<unsigned char>(c)) * 16777619U;
    return number;
}

// Where the line begins that holds the byte at `at`.
std::size_t line_begin(std::string_view lines, std::size_t at) {
    const void* before = memrchr(lines.data(), '\n', at);
    return before ? static_cast<std::size_t>(static_cast<const char*>(before) - lines.data()) + 1
                  : 0;
}

}

std::optional<std::string_view> said_of(std::string_view word, const Lines& lines) {
    const std::size_t last = lines.slots.size() - 1; // of as many as a power of two
    for (std::size_t at = hash_of(word) & last; lines.slots[at] > 0; at = (at + 1) & last) {
        const std::size_t begin = lines.slots[at] - 1, end = begin + word.size();
        // its end is looked at first: most others that share a slot are longer or shorter
        if (end >= lines.text.size() || (lines.text[end] != '\t' && lines.text[end] != '\n') ||
            lines.text.compare(begin, word.size(), word) != 0)
            continue;
        return parted_line(lines.text.substr(begin, lines.text.find('\n', end) - begin)).said;
    }
    return std::nullopt;
}

// A tab comes before all that words are made of, so that lines are in the order of their words.
std::optional<std::string_view> said_of(std::string_view word, std::string_view lines) {
    while (!lines.empty()) {
        const std::size_t begin = line_begin(lines, lines.size() / 2);
        const std::string_view from = lines.substr(begin);
        int order = from.compare(0, word.size(), word);
        if (order == 0) {
            const char next = from.size() > word.size() ? from[word.size()] : '\n';
            if (next == '\t' || next == '\n')
                return parted_line(from.substr(0, from.find('\n'))).said;
            order = 1;
        }
        lines = order > 0 ? lines.substr(0, begin)
                          : lines.substr(std::min(lines.find('\n', begin), lines.size() - 1) + 1);
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

const std::vector<std::string_view>& listed_once(std::string_view lines) {
    static thread_local std::map<std::pair<const char*, std::size_t>, std::vector<std::string_view>>
        all;
    const auto [found, is_new] = all.try_emplace({lines.data(), lines.size()});
    if (is_new) found->second = listed(lines);
    return found->second;
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
