// The fields are as narrow as the greatest value in them.
#include "compiler/stages/pdf/cross_references.hpp"

#include "compiler/stages/pdf/deflate.hpp"

#include <algorithm>
#include <array>

namespace quoin::pdf {

namespace {

using Widths = std::array<int, 3>; // in bytes, of a row's fields

int bytes_of(std::uint64_t value) {
    int bytes = 1;
    while (value >>= 8)
        ++bytes;
    return bytes;
}

Widths widths(std::span<const CrossReference> objects) {
    std::uint64_t place = 0, detail = 0;
    for (const CrossReference& object : objects) {
        place = std::max<std::uint64_t>(place, object.place);
        detail = std::max<std::uint64_t>(detail, object.detail);
    }
    return {1, bytes_of(place), bytes_of(detail)};
}

void append_big_endian(std::string& row, std::uint64_t value, int bytes) {
    while (bytes-- > 0)
        row += static_cast<char>(value >> 8 * bytes & 0xFF);
}

std::string rows(std::span<const CrossReference> objects, const Widths& width) {
    std::string data;
    for (const CrossReference& object : objects) {
        append_big_endian(data, static_cast<std::uint64_t>(object.kind), width[0]);
        append_big_endian(data, object.place, width[1]);
        append_big_endian(data, object.detail, width[2]);
    }
    return data;
}

}

CrossReferenceStream cross_reference_stream(std::span<const CrossReference> objects) {
    const Widths width = widths(objects);
    const int row = width[0] + width[1] + width[2];
    const std::string data = rows(objects, width);
    const std::string parameters =
        "/DecodeParms<</Predictor 12/Columns " + std::to_string(row) + ">>";
    std::string plain = deflate(data);
    std::string predicted = deflate(less_the_row_above(data, static_cast<std::size_t>(row)));
    const bool predict = predicted.size() + parameters.size() < plain.size();
    return {"<</Type/XRef/Size " + std::to_string(objects.size()) + "/W[1 " +
                std::to_string(width[1]) + ' ' + std::to_string(width[2]) + "]" +
                (predict ? parameters : ""),
            std::move(predict ? predicted : plain)};
}

}
