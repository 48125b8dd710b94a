// The list is searched where it lies: lines of text, halved again and again.
#include "compiler/english/word_list.hpp"

#include <algorithm>

namespace quoin::english {
namespace {

struct ListLine {
    std::string_view word;
    char rank = WordList::is_none;
    std::size_t next = 0; // where the line after it begins
};

ListLine line_at(std::string_view text, std::size_t begin) {
    const std::size_t tab = std::min(text.find('\t', begin), text.size());
    const std::size_t end = std::min(text.find('\n', tab), text.size());
    const char rank = tab + 1 < end ? text[tab + 1] : WordList::is_none;
    return {text.substr(begin, tab - begin), rank, std::min(end + 1, text.size())};
}

std::size_t line_begin(std::string_view text, std::size_t at, std::size_t low) {
    while (at > low && text[at - 1] != '\n')
        --at;
    return at;
}

}

WordList::WordList(const std::filesystem::path& file) : file_(file), text_(file_.bytes()) {}

std::size_t WordList::first_not_before(std::string_view word) const {
    std::size_t low = 0, high = text_.size();
    while (low < high) {
        const std::size_t begin = line_begin(text_, low + (high - low) / 2, low);
        const ListLine line = line_at(text_, begin);
        if (line.word < word)
            low = line.next;
        else
            high = begin;
    }
    return low;
}

char WordList::class_of(std::string_view word) const {
    const std::size_t at = first_not_before(word);
    if (word.empty() || at == text_.size()) return is_none;
    const ListLine line = line_at(text_, at);
    return line.word == word ? line.rank : is_none;
}

void WordList::visit(std::string_view start,
                     const std::function<void(std::string_view, char)>& each) const {
    for (std::size_t at = first_not_before(start); at < text_.size();) {
        const ListLine line = line_at(text_, at);
        if (!line.word.starts_with(start)) return;
        each(line.word, line.rank);
        at = line.next;
    }
}

}
