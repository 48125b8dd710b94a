// Digests of bytes: what a draft hangs on, a file's identifier, a font's subset tag. The same bytes
// get the same, and others do not.
#pragma once

#include <string>
#include <string_view>

namespace quoin {

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
// RFC 1321, 16 bytes: what ISO 32000-1, section 14.4, advises for file identifiers.
std::string md5(std::string_view bytes);
std::string in_hexadecimal(std::string_view bytes);

}
