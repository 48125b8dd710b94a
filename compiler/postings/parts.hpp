// The parts of a posting: what of it asks for something, how strongly, and what is left out.
#pragma once

#include "compiler/postings/lines.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::postings {

enum class Standing { required, preferred, duties, elsewhere };
enum class LeftOut { pay, equality, applying, employer, heading, not_asked, wording };

std::string_view name_of(Standing standing); // `required`
std::string_view name_of(LeftOut reason);    // `pay and benefits`

struct Statement { // a sentence, an item or a heading
    std::string text;
    Standing standing = Standing::elsewhere;
    std::optional<LeftOut> left_out;
    bool heading = false;
    bool item = false;
    bool headed = false;   // under a heading that says what its part is
    bool outside = false;  // of the parts, in a posting that has some
    bool doubtful = false; // it has words of what is left out, too few to be so
    bool touched = false;  // it has one of them
    bool unsure = false;   // its part may be one that is left out
    std::uint32_t line = 0;
};

std::vector<Statement> statements(std::span<const Line> lines);

}
