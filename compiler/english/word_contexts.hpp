// Which words are typed for which, and how likely a word stands behind another or near it, from the
// file that make_contexts.py writes.
#pragma once

#include "compiler/english/mapped_file.hpp"

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <span>
#include <string_view>

namespace quoin::english {

class WordContexts {
public:
    using Number = std::uint16_t; // of a word
    using Counts = std::span<const std::uint8_t>;

    // Why a word may be typed for another, a bit each.
    static constexpr std::uint8_t is_listed = 1, sounds_alike = 2, has_letters_swapped = 4;

    struct Meant { // what a word may be typed for, and why
        std::span<const Number> words;
        Counts why;
    };

    explicit WordContexts(const std::filesystem::path& file); // without words if there is none

    std::optional<Number> number_of(std::string_view word) const; // in small letters
    std::optional<Number> figure() const { return figure_; }      // as any is read
    std::optional<Number> joint() const { return joint_; }        // and
    std::optional<Number> end() const { return end_; }            // of a sentence
    std::string_view word(Number number) const;
    Meant meant_for(Number typed) const;

    // Logarithms of likelihoods: of the word by itself, and behind another.
    double likelihood(Number word) const;
    double likelihood_behind(Number before, Number word) const;
    // Of how much more often than by chance they stand in one entry of a dictionary; 0 if not much.
    double nearness(Number word, Number other) const;

private:
    struct Group { // by a word: where its entries begin, other words, and a number of each
        std::span<const std::uint32_t> begins;
        std::span<const Number> words;
        Counts counts;

        Meant of(Number key) const;
        std::optional<std::uint8_t> count(Number key, Number word) const;
    };

    MappedFile file_;
    std::span<const std::uint32_t> ends_; // of each word in letters_, the first before it
    Group meant_, behind_, near_;
    Counts likelihood_, backoff_;
    std::string_view letters_;
    std::optional<Number> figure_, joint_, end_;
};

}
