#include "compiler/base/digest.hpp"

// what OpenSSL has in its place looks its digests up by name, and so brings every cipher along
#define OPENSSL_SUPPRESS_DEPRECATED
#include <openssl/md5.h>
#include <openssl/sha.h>

namespace quoin {

static_assert(digest_size == SHA256_DIGEST_LENGTH);

Digest& Digest::add(std::string_view piece) {
    pieces_ += std::to_string(piece.size()) + ':';
    pieces_ += piece;
    return *this;
}

std::string Digest::bytes() const {
    std::string sum(digest_size, '\0');
    SHA256_CTX context;
    SHA256_Init(&context);
    SHA256_Update(&context, pieces_.data(), pieces_.size());
    SHA256_Final(reinterpret_cast<unsigned char*>(sum.data()), &context);
    return sum;
}

std::string digest_of(std::string_view piece) {
    return in_hexadecimal(Digest().add(piece).bytes());
}

std::string blob_name(std::string_view bytes) {
    const std::string whole =
        "blob " + std::to_string(bytes.size()) + std::string(1, '\0') + std::string(bytes);
    std::string sum(SHA_DIGEST_LENGTH, '\0');
    SHA_CTX context;
    SHA1_Init(&context);
    SHA1_Update(&context, whole.data(), whole.size());
    SHA1_Final(reinterpret_cast<unsigned char*>(sum.data()), &context);
    return in_hexadecimal(sum);
}

std::string md5(std::string_view bytes) {
    std::string sum(MD5_DIGEST_LENGTH, '\0');
    MD5_CTX context;
    MD5_Init(&context);
    MD5_Update(&context, bytes.data(), bytes.size());
    MD5_Final(reinterpret_cast<unsigned char*>(sum.data()), &context);
    return sum;
}

std::string in_hexadecimal(std::string_view bytes) {
    constexpr std::string_view figures = "0123456789abcdef";
    std::string text;
    for (const char c : bytes) {
        const auto value = static_cast<unsigned char>(c);
        text += figures[value >> 4U];
        text += figures[value & 0xFU];
    }
    return text;
}

}
