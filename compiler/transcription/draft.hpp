// A draft résumé made of an old document: what the source file will say.
#pragma once

#include "compiler/trade/kinds.hpp"

#include <optional>
#include <string>
#include <vector>

namespace quoin::transcription {

struct DraftField {
    std::string label; // empty: a bare line
    std::string value; // as on the old page, not yet in the markup's form
};

struct DraftBullet {
    std::string text;
    int level = 1;
};

struct DraftEntry {
    std::vector<std::string> guesses; // labels
    std::string heads;                // the old page's own words, for who doubts a guess
    std::vector<std::string> remarks; // sentences, each a comment
    std::vector<DraftField> fields;
    std::vector<DraftBullet> bullets;
    std::vector<std::string> old; // all that the old page says here
    bool further = false;         // a position at the employer of the entry above

    DraftField* find(std::string_view label);
    void add(std::string_view label, std::string value);
};

struct DraftSection {
    std::string title;
    trade::Holds holds = trade::Holds::other;
    std::vector<DraftEntry> entries;
    bool guessed = false;           // what it holds
    std::vector<std::string> after; // sentences below its entries, each a comment
};

struct Draft {
    std::vector<std::string> remarks; // on the whole document
    DraftEntry heading;
    std::vector<DraftSection> sections;
};

}
