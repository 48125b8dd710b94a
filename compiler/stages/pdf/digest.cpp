// MD5 (RFC 1321), which ISO 32000-1, section 14.4, advises for file identifiers.
#include "compiler/stages/pdf/digest.hpp"

#include "compiler/stages/pdf/unicode.hpp"

// what OpenSSL has in its place looks its digests up by name, and so brings every cipher along
#define OPENSSL_SUPPRESS_DEPRECATED
#include <openssl/md5.h>

namespace quoin::pdf {

std::string md5(std::string_view bytes) {
    std::string sum(MD5_DIGEST_LENGTH, '\0');
    MD5_CTX context;
    MD5_Init(&context);
    MD5_Update(&context, bytes.data(), bytes.size());
    MD5_Final(reinterpret_cast<unsigned char*>(sum.data()), &context);
    return sum;
}

std::string md5_hex(std::string_view bytes) {
    std::string text;
    append_hex(text, md5(bytes));
    return text;
}

}
