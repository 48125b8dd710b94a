// The output intent (ISO 19005-2, section 6.2.3): what the page's colours mean.
#pragma once

#include "compiler/stages/pdf/objects.hpp"

#include <string>

namespace quoin::pdf {

const std::string& srgb_profile(); // ICC, made once; the same bytes whenever and wherever

PdfDictionary output_intent(PdfFile& file);

}
