// From an offset in a value back to its line in the file.
#include "compiler/stages/theme/read_by_grammar.hpp"

#include <algorithm>

namespace quoin::theme {

Place place_in(const syntax::Value& value, std::size_t offset, std::size_t length) {
    for (const syntax::Slice& slice : value.slices) {
        if (offset <= slice.text.size()) {
            Place place = slice.place;
            place.column += static_cast<std::uint32_t>(offset);
            place.length = static_cast<std::uint32_t>(std::min(length, slice.text.size() - offset));
            return place;
        }
        offset -= slice.text.size() + 1; // the space that joins two lines
    }
    return value.place();
}

}
