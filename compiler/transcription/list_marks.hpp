// The signs that items of a list begin with.
#pragma once

#include <string_view>

namespace quoin::transcription {

// A bullet of any kind by itself, or a number as lists have it: `1.`, `(a)`.
bool is_list_mark(std::string_view word);

// Bytes of the sign that a word begins with where none but a bullet could: `•Sorted`.
std::size_t list_mark_at(std::string_view word);

}
