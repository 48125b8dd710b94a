// Stems of English words, by Snowball: `ecology` and `ecological` have one.
#pragma once

#include <memory>
#include <string>
#include <string_view>

struct sb_stemmer;

namespace quoin::english {

class Stemmer {
public:
    Stemmer();

    std::string stem(std::string_view word) const; // of a word in small letters

private:
    std::string read_stem(std::string_view word) const;

    std::unique_ptr<sb_stemmer, void (*)(sb_stemmer*)> stemmer_;
};

}
