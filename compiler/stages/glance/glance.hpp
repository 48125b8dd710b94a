// What of a page a reader takes in first, and when: a model, and no promise.
//
// A first reading is no reading from top to bottom. The eye goes to what stands out and takes in
// the words there, and then to what stands out next. Two things are therefore put together: how
// much words stand out on the page, and how fast words are read.
//
// - Words are read at 450 a minute, the rate of skimming (Carver, "Reading rate: theory, research,
//   and practical implications", Journal of Reading 36, 1992), for a first look skims. Silent
//   reading of every word goes at 238 (Brysbaert, "How many words do we read per minute?", Journal
//   of Memory and Language 109, 2019).
// - What stands out is larger, heavier, higher on the page, with white above it, at the beginning
// of
//   its line rather than the end (common practice; the weights given to each are the model's own).
// - What the eye rests on draws its neighbours along: the words to the right within one look's span
//   (Rayner, "Eye movements in reading and information processing", Psychological Bulletin 124,
//   1998), and the line below that belongs to it.
//
// Both papers are cited from memory.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/pages/pages.hpp"
#include "compiler/trade/limits.hpp"

#include <cstddef>
#include <cstdint>
#include <limits>
#include <string>
#include <vector>

namespace quoin::glance {

constexpr double words_a_minute = 450;
using trade::first_look;
constexpr double never = std::numeric_limits<double>::infinity(); // seconds

struct Look {                               // words of one run on one line, taken in together
    std::size_t page = 0;                   // from 0
    std::size_t placed = 0;                 // of the page's runs
    std::size_t run_begin = 0, run_end = 0; // bytes of the run's text
    std::uint32_t paragraph = 0;            // of the composition
    std::size_t begin = 0, end = 0;         // bytes of its text, its label's left out
    std::string text;                       // without spaces and separators around it
    std::size_t words = 0;
    double weight = 0; // how much it stands out; 1: the beginning of a line of text at the top
    double at = 0;     // seconds, when its last word has been read
};

// All words of the pages, in the order in which they are taken in.
std::vector<Look> looks(const composition::Composition& composition, const pages::Pages& pages);

// When the last word of bytes [begin, end) of a paragraph's text, its label's left out, has been
// read. `never` if no word of it is on the pages.
double reached_at(const std::vector<Look>& looks, std::uint32_t paragraph, std::size_t begin,
                  std::size_t end);

// The pages with all in pale grey that has not been read after so many seconds; rules and icons
// too.
pages::Pages greyed(const std::vector<Look>& looks, const composition::Composition& composition,
                    pages::Pages pages, double seconds);

}
