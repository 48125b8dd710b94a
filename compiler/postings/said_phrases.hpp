// Which phrases of a list stand in a text. A text is in its comparable form: small letters, dashes
// and dots as blanks.
#pragma once

#include "compiler/postings/lists.hpp"

#include <string>
#include <string_view>

namespace quoin::postings {

std::string comparable(std::string_view text);

bool says_any(std::string_view lower, List list);

bool supposes(std::string_view lower);       // we'd be glad of
bool says_preferred(std::string_view lower); // so, or in so many words

struct PhrasesSeen { // each counted once
    int sure = 0, unsure = 0;

    // Under a heading that asks for something, a sentence asks.
    bool enough(bool asked) const {
        return asked ? sure > 1 || (sure > 0 && unsure > 1) : sure > 0 || unsure > 2;
    }
    bool some() const { return sure > 0 || unsure > 1; }
};
PhrasesSeen seen_of(std::string_view lower, List list);

}
