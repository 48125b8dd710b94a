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
    bool sure = true; // by words that headings of other parts hardly have
};

Part part_headed(std::string_view heading);

// By a heading, comparable, that says nothing but what its part is.
Part part_named_whole(std::string_view lower);

}
