// What may be had instead of another: `a diploma or a GED`, `a year as an aide, or a clinical
// rotation`, what stands below `one of the following`.
#pragma once

#include "compiler/postings/phrases.hpp"

#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

namespace quoin::postings {

struct Choice {
    std::uint32_t sentence = 0; // of those in which things are chosen together; 0: not known
    std::uint32_t side = 0;     // of its either-or
    std::uint32_t list = 0; // of the side's lists of which any will do; 0: it is asked by itself
    bool within = false;    // it is part of another of its list

    bool operator==(const Choice&) const = default;
};

// Of each phrase its side and list. `any`: what `or` joins is a choice; among the duties, where all
// is to be done, only what is part of another is in one list with it.
std::vector<Choice> choices_in(std::string_view sentence, std::span<const Phrase> phrases,
                               bool any);

// It is another side of the one before: Or two years at sea; a bootcamp is just as good.
bool is_another_side(std::string_view sentence);
bool ends_with_or(std::string_view sentence);       // what follows is another side
bool opens_alternatives(std::string_view sentence); // one of the following:

}
