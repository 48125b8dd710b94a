// The words that one which is in no dictionary may be a slip for. Those with one beginning are
// gathered when they are first asked for, and kept: a page of unknown words would read the list of
// words as often as it has words.
#pragma once

#include "compiler/english/slips.hpp"
#include "compiler/english/word_list.hpp"

#include <deque>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::english {

class NearWords {
public:
    explicit NearWords(const WordList& words) : words_(words) {}
    NearWords(const NearWords&) = delete;
    NearWords& operator=(const NearWords&) = delete;

    // Best first, at most five. Of a word of ASCII letters; others have none.
    std::vector<std::string> search(const std::string& word);

private:
    struct Listed {
        std::string_view word; // as it is written
        Compared small;
        char rank;
    };
    class Nearest;

    const std::vector<Listed>& starting(const std::string& start);
    const std::vector<Listed>& of_trades();
    const std::vector<Listed>& technical();

    const WordList& words_;
    std::map<std::string, std::vector<Listed>> starting_;
    std::vector<Listed> of_trades_, technical_;
    std::deque<std::string> small_names_; // what `small` of a name is in
};

}
