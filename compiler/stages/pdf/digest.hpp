// Digests of bytes: what a file identifier and a font's subset tag are made from, so that the same
// bytes get the same and others do not.
#pragma once

#include <string>
#include <string_view>

namespace quoin::pdf {

std::string md5(std::string_view bytes);     // 16 bytes
std::string md5_hex(std::string_view bytes); // 32 capital digits

}
