// Language tags (BCP 47).
#pragma once

#include <string>

namespace quoin::model {

// Upper and lower case as RFC 5646, section 2.1.1 advises: `en-Latn-US`, and all lower case from
// the first single letter on. The tag is well-formed.
std::string recommended_case(std::string tag);

}
