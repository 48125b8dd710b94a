// The objects of a finished PDF moved into compressed object streams, with a cross-reference stream
// in place of the table (ISO 32000-1, sections 7.5.7 and 7.5.8).
#pragma once

#include <string>
#include <string_view>

namespace quoin {

// Streams and the first string of the file identifier stay as they are.
std::string with_object_streams(std::string_view file);

}
