// What keeps a mail address from being one.
#pragma once

#include <string>
#include <string_view>

namespace quoin::advice {

struct AddressFault {
    std::string found, mend;
};

// Of what is no addr-spec of RFC 5322, section 3.4.1.
AddressFault fault_of_address(std::string_view address);

}
