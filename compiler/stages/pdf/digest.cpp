// MD5 (RFC 1321), which ISO 32000-1, section 14.4, advises for file identifiers; by Little CMS,
// which has it for profiles.
#include "compiler/stages/pdf/digest.hpp"

#include "compiler/stages/pdf/unicode.hpp"

#include <lcms2_plugin.h>

#include <new>

namespace quoin::pdf {

std::string md5(std::string_view bytes) {
    const cmsHANDLE digest = cmsMD5alloc(nullptr);
    if (digest == nullptr) throw std::bad_alloc();
    cmsMD5add(digest, reinterpret_cast<const cmsUInt8Number*>(bytes.data()),
              static_cast<cmsUInt32Number>(bytes.size()));
    cmsProfileID result{};
    cmsMD5finish(&result, digest);
    return {reinterpret_cast<const char*>(std::data(result.ID8)), std::size(result.ID8)};
}

std::string md5_hex(std::string_view bytes) {
    std::string text;
    append_hex(text, md5(bytes));
    return text;
}

}
