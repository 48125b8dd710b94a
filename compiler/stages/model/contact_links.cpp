// Reading phone numbers and addresses as far as a link needs.
#include "compiler/stages/model/contact_links.hpp"

#include "compiler/base/ascii.hpp"
#include "grammar/contact.hpp"

namespace quoin::model {
namespace {

namespace pegtl = tao::pegtl;
namespace contact_rules = grammar::contact;

struct PhoneParts {
    bool global = false;
    std::string digits;
    std::string extension;
};

template<typename Rule>
struct PhoneAction {};

template<>
struct PhoneAction<contact_rules::global_sign> {
    static void apply0(PhoneParts& found) { found.global = true; }
};

template<>
struct PhoneAction<contact_rules::phone_digit> {
    static void apply(const auto& in, PhoneParts& found) { found.digits += in.string_view(); }
};

template<>
struct PhoneAction<contact_rules::extension_digits> {
    static void apply(const auto& in, PhoneParts& found) { found.extension = in.string(); }
};

std::optional<std::string> global_digits(const PhoneParts& number) {
    const std::string& digits = number.digits;
    const bool full = digits.size() == 11 && digits.front() == '1';
    if (number.global) {
        constexpr std::size_t least = 7, most = 15; // E.164 allows 15 digits
        if (digits.size() < least || digits.size() > most) return std::nullopt;
        return digits;
    }
    if (is_north_american(digits)) return "1" + digits;
    if (full && is_north_american(std::string_view{digits}.substr(1))) return digits;
    return std::nullopt;
}

// The characters that RFC 6068, section 2 lets stand in an address; others are percent-encoded.
bool may_stand_in_mailto(char c) {
    return is_letter_or_figure(c) ||
           std::string_view{"-._~!$'*+@"}.find(c) != std::string_view::npos;
}

}

std::optional<std::string> phone_uri(std::string_view number) {
    PhoneParts found;
    pegtl::memory_input in(number.data(), number.data() + number.size(), "");
    if (!pegtl::parse<contact_rules::phone_value, PhoneAction>(in, found)) return std::nullopt;
    const auto digits = global_digits(found);
    if (!digits) return std::nullopt;
    std::string uri = "tel:+" + *digits;
    if (!found.extension.empty()) uri += ";ext=" + found.extension;
    return uri;
}

bool is_north_american(std::string_view ten) {
    return ten.size() == 10 && ten[0] >= '2' && ten[3] >= '2';
}

std::optional<std::string> email_uri(std::string_view address) {
    pegtl::memory_input in(address.data(), address.data() + address.size(), "");
    if (!pegtl::parse<contact_rules::address_value>(in)) return std::nullopt;
    constexpr std::string_view hex = "0123456789ABCDEF";
    std::string uri = "mailto:";
    for (const char c : address) {
        if (may_stand_in_mailto(c)) {
            uri += c;
            continue;
        }
        const auto byte = static_cast<unsigned char>(c);
        uri += '%';
        uri += hex[byte >> 4];
        uri += hex[byte & 15];
    }
    return uri;
}

}
