// What a draft hangs on, as a key that is the same for the same bytes.
#pragma once

#include <string>
#include <string_view>

namespace quoin::caseload {

constexpr std::size_t digest_size = 32; // bytes

// SHA-256 (FIPS 180-4), of several pieces in a way that tells where each ends.
class Digest {
public:
    Digest& add(std::string_view piece);
    std::string bytes() const; // digest_size of them

private:
    std::string pieces_;
};

std::string digest_of(std::string_view piece); // in hexadecimal
// What git calls a file of these bytes (https://git-scm.com/book/en/v2/Git-Internals-Git-Objects).
std::string blob_name(std::string_view bytes);
std::string in_hexadecimal(std::string_view bytes);

}
