// What can be told of contact details by their form alone: addresses of mail, telephone numbers,
// links, postal addresses.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::advice {

// RFC 5322, section 3.4.1, without comments; lengths of RFC 5321, section 4.5.3.1.
bool is_addr_spec(std::string_view address);

// What in an address would make a reader smile, for a message; none if nothing surely would.
// `issued` says that a school or employer chose the address.
std::optional<std::string> unprofessional_part(std::string_view address, std::string_view name,
                                               bool issued);

// None for a number that can be dialled from anywhere: E.164, and North American numbers. Words
// before a colon, or in parentheses behind it, are no part of it.
std::optional<std::string> phone_fault(std::string_view typed);
// Figures as `0`, without the extension: numbers of one notation have one pattern.
// As it may be dialled within another country than the United States: 020 7946 0958.
bool is_national_phone(std::string_view number);

std::string phone_pattern(std::string_view number);
struct PhoneAt {
    std::size_t offset = 0, length = 0;
};
std::vector<PhoneAt> phones_in(std::string_view text); // those that can be dialled

// What is unclean in a link as it stands on the page; none if it is clean.
std::optional<std::string> link_fault(std::string_view shown);

// What goes beyond city and state: "a street", "a ZIP code"; empty if nothing does.
std::vector<std::string> address_details(std::string_view address);
bool has_street(std::string_view address);

std::string only(bool (*wanted)(char), std::string_view text); // the wanted signs of it

// Letters without their accents, lower case: what a name becomes in an address of mail.
std::string plain_letters(std::string_view text);

}
