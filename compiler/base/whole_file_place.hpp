// The place of what is said of a file as a whole.
#pragma once

#include "compiler/base/place.hpp"

namespace quoin {

constexpr Place whole_file(std::uint32_t file) {
    return {file, 0, 0, 0};
}

}
