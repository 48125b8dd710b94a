// What a heading opens, by its words.
#pragma once

#include "compiler/postings/lines.hpp"
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
    bool sure = true;   // by words that headings of other parts hardly have
    bool whole = false; // it says nothing else
};

// In its comparable form, as a statement: `What will I be doing?` is `what you will be doing`.
std::string heading_words(std::string_view heading);

Part part_headed(std::string_view heading);

// By a heading, comparable, that says nothing but what its part is.
Part part_named_whole(std::string_view lower);

}
