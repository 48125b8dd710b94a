// Files of other kinds, told by how their bytes begin.
#pragma once

#include <string>
#include <string_view>

namespace quoin {

// What is said of a file that is plainly none of text; empty if it may be one.
std::string other_kind(std::string_view bytes);

bool begins_as_pdf(std::string_view bytes);
// Readers look for the header in the first 1024 bytes (ISO 32000-1, annex H, note 13).
bool has_pdf_header(std::string_view bytes);

bool is_web_page(std::string_view bytes);

}
