// The links behind contact fields: a phone number to be dialled, an address to be written to.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace quoin::model {

// A `tel:` URI (RFC 3966) for a number that can be dialled from anywhere: one with a leading `+`,
// or a North American number of ten digits, which gets its `+1`. None for anything else.
std::optional<std::string> phone_uri(std::string_view number);

// The North American Numbering Plan: area code and exchange begin with 2 to 9.
bool is_north_american(std::string_view ten);

// A `mailto:` URI (RFC 6068) for an addr-spec without quoting (RFC 5322, section 3.4.1: a dot-atom
// on each side of `@`). None for anything else.
std::optional<std::string> email_uri(std::string_view address);

}
