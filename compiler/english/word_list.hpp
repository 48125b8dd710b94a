// The words that are spelled right, from the file that make_words.py writes.
#pragma once

#include "compiler/english/mapped_file.hpp"

#include <atomic>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <mutex>
#include <string_view>
#include <vector>

namespace quoin::english {

class WordList {
public:
    // As make_words.py has them.
    static constexpr char is_rare = '0', is_met = '1', is_ordinary = '2', is_frequent = '3';
    static constexpr char is_of_resumes = 'r'; // rare or met, but in résumés often
    static constexpr char is_hidden = 'x';     // never suggested
    static constexpr char is_beside = 'w';     // right, though Hunspell's dictionary lacks it
    static constexpr char is_none = '\0';

    explicit WordList(const std::filesystem::path& file); // empty if there is none

    bool empty() const { return text_.empty(); }
    char class_of(std::string_view word) const; // as it is written; is_none if it is not there
    void visit(std::string_view start,
               const std::function<void(std::string_view, char)>& each) const;

private:
    std::size_t first_not_before(std::string_view word) const; // the offset of a line
    void make_index() const;
    char class_by_index(std::string_view word) const;

    MappedFile file_;
    std::string_view text_; // lines in the order of their bytes: a word, a tab, its class
    // Where a word's line begins, and 1; 0 where none has that hash. Made once so many words have
    // been asked for that it pays: a page alone asks for few.
    mutable std::vector<std::uint32_t> index_;
    mutable std::atomic<std::uint32_t> asked_ = 0;
    mutable std::once_flag indexed_;
};

constexpr bool is_in_use(char rank) { // and no rare word
    return rank == WordList::is_met || rank == WordList::is_ordinary ||
           rank == WordList::is_frequent || rank == WordList::is_of_resumes;
}

}
