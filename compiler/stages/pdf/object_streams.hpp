// Objects packed into a stream: ISO 32000-1, section 7.5.7. What may not be in one (streams,
// objects of another generation than 0, the encryption dictionary) is the caller's to keep out.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>

namespace quoin::pdf {

struct PackedObject {
    std::uint32_t number = 0;
    std::string_view text; // the value alone, without `obj` and `endobj`
};

// So many that the index of each within its stream is one byte in the cross-reference stream.
constexpr std::size_t most_in_object_stream = 256;

struct ObjectStream {
    std::string dictionary; // whole but for /Length and /Filter, and not closed
    std::string data;       // not yet compressed
};

ObjectStream object_stream(std::span<const PackedObject> objects);

}
