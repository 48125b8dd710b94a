// What a heading opens: by its words, and where these say nothing known, by the items below it.
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
};

Part part_headed(std::string_view heading);

// Of the items that `lines` begin with: benefits are not read, deeds are duties, and experience,
// knowledge and the like are asked for. None where most items are of none of these.
std::optional<Part> part_of_items(std::span<const Line> lines);

// In small letters, dashes and dots as blanks: what phrases are looked for in.
std::string comparable(std::string_view text);

}
