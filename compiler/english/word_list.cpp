// The list is searched where it lies: lines of text, halved again and again, and by an index of
// hashes once many have been asked for.
#include "compiler/english/word_list.hpp"

#include <algorithm>
#include <bit>
#include <cstring> // memrchr

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
    const void* before = memrchr(text.data() + low, '\n', at - low);
    return before ? static_cast<std::size_t>(static_cast<const char*>(before) - text.data()) + 1
                  : low;
}

// A tab comes before all that words are made of, so that lines are in the order of their words.
bool is_before(std::string_view line, std::string_view word) {
    const int order = line.compare(0, word.size(), word);
    return order < 0 || (order == 0 && line.size() < word.size());
}

}

WordList::WordList(const std::filesystem::path& file) : file_(file), text_(file_.bytes()) {}

std::size_t WordList::first_not_before(std::string_view word) const {
    std::size_t low = 0, high = text_.size();
    while (low < high) {
        const std::size_t begin = line_begin(text_, low + (high - low) / 2, low);
        if (is_before(text_.substr(begin), word))
            low = std::min(text_.find('\n', begin), text_.size() - 1) + 1;
        else
            high = begin;
    }
    return low;
}

// At most half of it is filled, so that a word that is not there is soon known.
void WordList::make_index() const {
    const auto lines = static_cast<std::size_t>(std::ranges::count(text_, '\n')) + 1;
    index_.resize(std::bit_ceil(2 * lines));
    const std::size_t last = index_.size() - 1;
    for (std::size_t at = 0; at < text_.size();) {
        const ListLine line = line_at(text_, at);
        std::size_t slot = std::hash<std::string_view>{}(line.word) & last;
        while (index_[slot] != 0)
            slot = (slot + 1) & last;
        index_[slot] = static_cast<std::uint32_t>(at + 1);
        at = line.next;
    }
}

char WordList::class_by_index(std::string_view word) const {
    const std::size_t last = index_.size() - 1;
    std::size_t slot = std::hash<std::string_view>{}(word)&last;
    for (; index_[slot] != 0; slot = (slot + 1) & last) {
        const std::size_t at = index_[slot] - 1, tab = at + word.size();
        // the tab is looked at first: most lines that share a slot have it elsewhere
        if (tab < text_.size() && text_[tab] == '\t' && text_.compare(at, word.size(), word) == 0)
            return line_at(text_, at).rank;
    }
    return is_none;
}

char WordList::class_of(std::string_view word) const {
    constexpr std::uint32_t most_by_halves = 5000;
    if (asked_.load(std::memory_order_relaxed) > most_by_halves) {
        std::call_once(indexed_, [this] { make_index(); });
        return class_by_index(word);
    }
    asked_.fetch_add(1, std::memory_order_relaxed);
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
