// The words that one which is in no dictionary may be a slip for. Those with one beginning are
// gathered when they are first asked for, and kept: a page of unknown words would read the list of
// words as often as it has words.
#pragma once

#include "compiler/english/slips.hpp"
#include "compiler/english/word_list.hpp"

#include <deque>
#include <filesystem>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::english {

// What a word may be a slip for, best first, at most five, and the log-odds that it is one.
struct NearWords {
    std::vector<std::string> words;
    double odds = 0;
};

class NearWordSearch {
public:
    // `letters`: the file of runs of three letters, as unknown_word.hpp has it.
    NearWordSearch(const WordList& words, const std::filesystem::path& letters)
        : words_(words), letters_(letters) {}
    NearWordSearch(const NearWordSearch&) = delete;
    NearWordSearch& operator=(const NearWordSearch&) = delete;

    // Of a word of ASCII letters; others have none.
    NearWords search(const std::string& word);

private:
    struct Listed {
        std::string_view word; // as it is written
        Compared small;
        char rank;
    };
    class Nearest;

    using ByLength = std::vector<std::vector<Listed>>; // each in the order of the list of words

    const ByLength& starting(const std::string& start);
    void offer_starting(const std::string& start, std::size_t length, Nearest& nearest);
    const std::vector<Listed>& of_trades();
    const std::vector<Listed>& technical();
    void offer_near(const std::string& small, Nearest& nearest);

    const WordList& words_;
    WordList letters_;
    std::map<std::string, ByLength> starting_;
    std::vector<Listed> of_trades_, technical_;
    std::deque<std::string> small_names_; // what `small` of a name is in
};

}
