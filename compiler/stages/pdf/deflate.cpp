// By zlib, at its hardest level: on streams as short as a résumé's that costs less than a hundredth
// of its time. What is longer may have long runs of like bytes, where it costs most and saves
// nothing.
#include "compiler/stages/pdf/deflate.hpp"

#include <zlib.h>

#include <new>

namespace quoin::pdf {

std::string deflate(std::string_view bytes) {
    constexpr std::size_t long_stream = 1U << 16U;
    const int level = bytes.size() < long_stream ? Z_BEST_COMPRESSION : Z_DEFAULT_COMPRESSION;
    uLongf size = compressBound(static_cast<uLong>(bytes.size()));
    std::string packed(size, '\0');
    if (compress2(reinterpret_cast<Bytef*>(packed.data()), &size,
                  reinterpret_cast<const Bytef*>(bytes.data()), static_cast<uLong>(bytes.size()),
                  level) != Z_OK)
        throw std::bad_alloc(); // all that is left to go wrong in a buffer of that size
    packed.resize(size);
    return packed;
}

std::string less_the_row_above(std::string_view bytes, std::size_t row) {
    constexpr char up = 2; // PNG (ISO/IEC 15948), section 9.2
    std::string rows;
    rows.reserve(bytes.size() + bytes.size() / row);
    for (std::size_t i = 0; i < bytes.size(); ++i) {
        if (i % row == 0) rows += up;
        rows += static_cast<char>(i < row ? bytes[i] : bytes[i] - bytes[i - row]);
    }
    return rows;
}

}
