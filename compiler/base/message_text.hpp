// Messages with what was found put into them.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>

namespace quoin {

// Each `{}` of the message takes the next of `found`, as it is.
std::string fill(std::string_view message, std::initializer_list<std::string_view> found);

}
