// How sure it is, by what stands beside a word and near it, that it was typed for another:
// log-odds.
#pragma once

#include "compiler/english/sentence.hpp"
#include "compiler/english/word_contexts.hpp"

#include <cstddef>
#include <functional>
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

    // What the word at `i` may have been typed for, where its odds are above `least`, with those
    // that `further` has for it; in no order.
    std::vector<LikelyWord> above(double least, std::size_t i,
                                  const std::function<double(std::string_view)>& further) const;

private:
    using Number = WordContexts::Number;
    struct Beside { // of one side
        std::optional<Number> word;
        bool edge = false;
    };
    struct Spot { // of the word that was typed
        std::size_t i = 0;
        Number typed{};
        Beside left, right;
    };

    std::optional<Number> number_at(std::size_t i, bool from_left) const;
    Beside before(std::size_t i) const;
    Beside behind(std::size_t i) const;
    double beside(const Spot& spot, Number meant) const;
    double of(const Spot& spot, Number meant, std::uint8_t why) const; // without what is near
    double nearness(Number word) const;

    const Sentence& sentence_;
    const WordContexts& contexts_;
    std::vector<std::optional<Number>> numbers_; // of each token
    std::vector<Number> all_;                    // words of the sentence, each once
};

}
