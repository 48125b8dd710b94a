// The list is searched where it lies: lines of text, halved again and again.
#include "compiler/english/word_list.hpp"

#include "compiler/base/descriptor.hpp"

#include <fmt/format.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <system_error>

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

// There may be none; but of one that fails the same words would be judged otherwise, and nobody
// told.
[[noreturn]] void refuse(const std::filesystem::path& file) {
    throw std::system_error(errno, std::generic_category(),
                            fmt::format("cannot read the list of words '{}'", file.string()));
}

}

WordList::WordList(const std::filesystem::path& file) {
    const Descriptor list(open_calmly(file.c_str(), O_RDONLY | O_CLOEXEC));
    if (list.number() < 0 && errno == ENOENT) return;
    struct stat status {};
    if (list.number() < 0 || ::fstat(list.number(), &status) != 0) refuse(file);
    if (status.st_size == 0) return;
    const auto size = static_cast<std::size_t>(status.st_size);
    void* bytes = ::mmap(nullptr, size, PROT_READ, MAP_PRIVATE, list.number(), 0);
    if (bytes == MAP_FAILED) refuse(file);
    mapping_ = {bytes, [size](const void* begin) { ::munmap(const_cast<void*>(begin), size); }};
    text_ = {static_cast<const char*>(bytes), size};
}

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
