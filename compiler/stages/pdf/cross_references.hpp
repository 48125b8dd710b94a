// Where each object of a file is, as a stream: ISO 32000-1, section 7.5.8.
#pragma once

#include <cstdint>
#include <span>
#include <string>

namespace quoin::pdf {

struct CrossReference { // table 18
    enum class Kind : std::uint8_t { free = 0, in_file = 1, in_object_stream = 2 };

    Kind kind = Kind::free;
    std::uint64_t place = 0;  // the offset of the object, or the number of its object stream
    std::uint32_t detail = 0; // its generation, or its index within the object stream
};

struct CrossReferenceStream {
    std::string dictionary; // /Type, /Size and /W, and how the data are packed; not closed
    std::string data;       // compressed
};

// Of the objects 0, 1, 2, …: /Index is left at what it is by itself.
CrossReferenceStream cross_reference_stream(std::span<const CrossReference> objects);

}
