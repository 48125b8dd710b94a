// What a PDF tells of a face beside its program (ISO 32000-1, section 9.8).
#pragma once

#include "compiler/stages/fonts/fonts.hpp"
#include "compiler/stages/pdf/objects.hpp"

#include <string>

namespace quoin::pdf {

std::string postscript_name(const fonts::Face& face);

// Without /FontName, /FontFile2 and /FontFile3.
PdfDictionary font_descriptor(const fonts::Face& face);

}
