// Which schools come before college: beside one they are the first to go (common practice).
#pragma once

#include <string_view>

namespace quoin::trade {

// By the school's name, or by what it awards; a certificate for grown-ups may bear the name of one.
bool is_before_college(std::string_view school, std::string_view degree);

}
