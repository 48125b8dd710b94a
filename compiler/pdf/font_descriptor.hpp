// What a PDF tells of a face beside its program (ISO 32000-1, section 9.8).
#pragma once

#include "compiler/fonts/fonts.hpp"
#include "compiler/pdf/objects.hpp"

#include <string>

namespace quoin {

std::string postscript_name(const Face& face);

// Without /FontName, /FontFile2 and /FontFile3.
PdfDictionary font_descriptor(const Face& face);

}
