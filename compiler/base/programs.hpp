// Where programs are looked for.
#pragma once

#include <string>
#include <string_view>

namespace quoin {

// The absolute folders of PATH with colons between them: what a relative one leads to hangs on
// where quoin was called, and may be anybody's.
std::string program_path();

// Empty if it is in none of them.
std::string find_program(std::string_view name);

}
