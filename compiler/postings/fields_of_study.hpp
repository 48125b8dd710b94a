// Where a sentence names fields of study: after `degree in`, `studied`, `courses in`.
#pragma once

#include <cstddef>
#include <string_view>

namespace quoin::postings {

struct FieldsNamed { // bytes of the sentence; none: an empty stretch at its end
    std::size_t begin = 0, end = 0;

    bool holds(std::size_t offset) const { return offset >= begin && offset < end; }
};

// `asked`: where things are asked for, `college in` and `classes in` open such a stretch too.
FieldsNamed fields_named_in(std::string_view sentence, bool asked);

}
