// Which part of a posting each of its stretches is, how likely: a chain in which each part tells
// what may follow it, and the signs of a stretch tell the part. The figures were fitted to the
// labelled postings of tests/postings, whose headings half of the time said nothing: multinomial
// logistic regression for the signs, counts for the chain, forward and backward for the two
// together (Rabiner, "A tutorial on hidden Markov models", Proceedings of the IEEE 77, 1989).
#pragma once

#include "compiler/postings/part_signs.hpp"

#include <array>
#include <cstddef>
#include <span>
#include <vector>

namespace quoin::postings {

enum class PartKind { out, required, preferred, duties };
constexpr std::size_t part_kinds = 4;
using PartChances = std::array<double, part_kinds>; // of each kind; they sum to 1

// Titles are passed over.
std::vector<PartChances> chances_of(std::span<const Stretch> stretches,
                                    std::span<const Line> lines);

PartKind likeliest_read(const PartChances& chances); // of those that are not left out

}
