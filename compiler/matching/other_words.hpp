// What else a thing is called, and what is of its kind, from the lists of words/.
#pragma once

#include <string>
#include <vector>

namespace quoin::matching {

struct OtherName {
    enum class As { same, member, job };

    std::vector<std::string> words; // a member's as it is written, else in small letters
    As as{}; // a member of the kind: Excel of spreadsheets; a job of the trade
};

// `lower` is a term's words: the names of the whole, and of words within it (angry guests for upset
// customers).
std::vector<OtherName> other_names_of(const std::vector<std::string>& lower);

}
