// The case of language tags.
#include "compiler/stages/model/language_tag.hpp"

#include "compiler/base/ascii.hpp"

#include <algorithm>

namespace quoin::model {

std::string recommended_case(std::string tag) {
    bool plain = false;
    for (std::size_t start = 0, end = 0; start < tag.size(); start = end + 1) {
        end = std::min(tag.find('-', start), tag.size());
        const std::size_t length = end - start;
        if (length == 1) plain = true;
        for (std::size_t i = start; i < end; ++i) {
            const bool upper = !plain && start > 0 && (length == 2 || (length == 4 && i == start));
            char& c = tag[i];
            c = upper ? capital_letter(c) : small_letter(c);
        }
    }
    return tag;
}

}
