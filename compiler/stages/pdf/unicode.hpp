// Unicode text in the encodings a PDF has it in.
#pragma once

#include <string>
#include <string_view>

namespace quoin::pdf {

// Takes the first character off `utf8`, which is not empty; U+FFFD for a malformed byte.
char32_t take_character(std::string_view& utf8);

void append_utf16be(std::string& bytes, char32_t character);
std::string utf16be(std::string_view utf8);
bool is_ascii(std::string_view text);

void append_hex(std::string& text, std::string_view bytes); // capital digits

}
