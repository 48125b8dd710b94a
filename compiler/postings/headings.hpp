// What a heading opens, by its words.
#pragma once

#include "compiler/postings/lines.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/parts.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace quoin::postings {

struct Part {
    bool known = false;
    bool not_read = false;
    Standing standing = Standing::elsewhere;
    bool sure = true; // by words that headings of other parts hardly have
};

Part part_headed(std::string_view heading);

// By a heading, comparable, that says nothing but what its part is.
Part part_named_whole(std::string_view lower);

struct PhrasesSeen { // phrases of a list that are in a sentence
    int sure = 0, unsure = 0;

    // Under a heading that asks for something, a sentence asks.
    bool enough(bool asked) const {
        return asked ? sure > 1 || (sure > 0 && unsure > 1) : sure > 0 || unsure > 2;
    }
    bool some() const { return sure > 0 || unsure > 1; }
};

// Of a text in its comparable form.
PhrasesSeen seen_of(std::string_view lower, List list);
bool says_any(std::string_view lower, List list);

// In small letters, dashes and dots as blanks: what phrases are looked for in.
std::string comparable(std::string_view text);

}
