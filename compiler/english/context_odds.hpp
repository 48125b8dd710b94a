// How sure it is, by what stands beside a word and near it, that it was typed for another:
// log-odds.
#pragma once

#include "compiler/english/sentence.hpp"
#include "compiler/english/word_contexts.hpp"

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

namespace quoin::english {

struct LikelyWord {
    std::string_view meant;
    double odds = 0;
};

class ContextOdds {
public:
    ContextOdds(const Sentence& sentence, const WordContexts& contexts);

    // What the word at `i` may have been typed for, in no order.
    std::vector<LikelyWord> at(std::size_t i) const;

private:
    using Number = WordContexts::Number;
    struct Beside { // of one side
        std::optional<Number> word;
        bool edge = false;
    };

    std::optional<Number> number_at(std::size_t i, bool from_left) const;
    Beside before(std::size_t i) const;
    Beside behind(std::size_t i) const;
    double of(std::size_t i, Number typed, Number meant, std::uint8_t why) const;
    double nearness(Number word) const;

    const Sentence& sentence_;
    const WordContexts& contexts_;
    std::optional<Number> number_, end_; // how any figure is read, and the end of a sentence
    std::vector<Number> all_;            // words of the sentence, each once
};

}
