// What a finding says: a row of messages.hpp.
#pragma once

#include <string_view>

namespace quoin::advice::messages {

struct FindingRow {
    std::string_view text;      // what is wrong here, with places for the words and figures found
    std::string_view mend = {}; // how to mend it; empty if that depends, or is the writer's to know
};

}
