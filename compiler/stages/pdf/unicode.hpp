// Unicode text in the encodings a PDF has it in.
#pragma once

#include <string>
#include <string_view>

namespace quoin::pdf {

void append_utf16be(std::string& bytes, char32_t character);
std::string utf16be(std::string_view utf8);
bool is_ascii(std::string_view text);

void append_hex(std::string& text, std::string_view bytes); // capital digits

}
