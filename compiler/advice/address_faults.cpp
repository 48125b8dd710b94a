#include "compiler/advice/address_faults.hpp"

#include "compiler/advice/contact_forms.hpp"
#include "compiler/advice/messages.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/base/utf8.hpp"

#include <algorithm>

namespace quoin::advice {

namespace {

struct AddressSlip {
    std::string found;
    std::string right; // the address without it
};

// The slips that fingers and forms make, each with the address as it would be without it.
std::vector<AddressSlip> slips_of(const std::string& address) {
    const std::size_t at = address.find('@');
    std::vector<AddressSlip> slips{
        {"it stands in angle brackets", std::string(trimmed(address, "<> "))},
        {"'mailto:' stands before it", replaced(address, "mailto:", "")},
        {"it ends in a stop", std::string(trimmed(address, " .,;"))},
        {"it has a space in it", replaced(address, " ", "")},
        {"it has two dots in a row", replaced(replaced(address, "...", "."), "..", ".")},
        {"it has two '@' in a row", replaced(address, "@@", "@")},
        {"'at' stands for its '@'", replaced(replaced(address, " at ", "@"), " dot ", ".")},
        {"'at' stands for its '@'", replaced(replaced(address, "(at)", "@"), "[at]", "@")}};
    if (at != std::string::npos)
        slips.push_back({"it has a comma for a dot",
                         address.substr(0, at) + replaced(address.substr(at), ",", ".")});
    return slips;
}

}

AddressFault fault_of_address(std::string_view typed) {
    const std::string address(typed);
    for (const AddressSlip& slip : slips_of(address))
        if (slip.right != address && is_addr_spec(slip.right))
            return {slip.found, fill<messages::write_address>(slip.right)};
    const auto signs = std::ranges::count(address, '@');
    if (signs > 1 && address.find_first_of(",;/| ") != std::string::npos)
        return {"it is more than one", "keep one, the one that you read"};
    if (signs == 0) return {"it has no @", "put an '@' between your name and the domain"};
    if (signs > 1) return {"it has more than one '@'", "keep the one before the domain"};
    const auto odd = std::ranges::find_if(address, [](char c) {
        return static_cast<unsigned char>(c) > 0x7E || c == ' ' || c == ',' || c == ';' ||
               c == ':' || c == '(' || c == ')' || c == '<' || c == '>';
    });
    if (odd != address.end() && static_cast<unsigned char>(*odd) <= 0x7E)
        return {fill<messages::odd_sign_in_address>(*odd), "take it out; an address has letters, "
                                                           "figures, '.', '-' and '_'"};
    if (odd != address.end())
        return {"it has a letter that is not of ASCII", "write it as your mail program has it"};
    return {"there is nothing before or after its '@'", "write it as name@domain"};
}

}
