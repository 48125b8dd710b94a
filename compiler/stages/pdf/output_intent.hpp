// The output intent (ISO 19005-2, section 6.2.3): what the page's colours mean.
#pragma once

#include "compiler/stages/pdf/objects.hpp"

#include <string_view>

namespace quoin::pdf {

std::string_view srgb_profile(); // ICC; make_profile.cpp makes it at build time

PdfDictionary output_intent(PdfFile& file);

}
