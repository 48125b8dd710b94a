// By libdeflate, which packs a page in two thirds of the work that zlib has at its hardest level,
// and no larger. What is longer than a page's streams may have long runs of like bytes, where a
// hard level costs most and saves nothing.
#include "compiler/stages/pdf/deflate.hpp"

#include <libdeflate.h>

#include <memory>
#include <new>

namespace quoin::pdf {

namespace {

using Compressor = std::unique_ptr<libdeflate_compressor, decltype(&libdeflate_free_compressor)>;

Compressor compressor_of(int level) {
    Compressor made(libdeflate_alloc_compressor(level), libdeflate_free_compressor);
    if (!made) throw std::bad_alloc();
    return made;
}

// One for all streams of a thread: its tables are larger than most of them.
libdeflate_compressor* compressor_for(std::size_t size) {
    constexpr std::size_t long_stream = 1U << 16U;
    thread_local const Compressor hard = compressor_of(8), usual = compressor_of(6);
    return size < long_stream ? hard.get() : usual.get();
}

}

std::string deflate(std::string_view bytes) {
    libdeflate_compressor* const compressor = compressor_for(bytes.size());
    std::string packed(libdeflate_zlib_compress_bound(compressor, bytes.size()), '\0');
    packed.resize(libdeflate_zlib_compress(compressor, bytes.data(), bytes.size(), packed.data(),
                                           packed.size()));
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
