// What the document says about itself, twice: in XMP (ISO 16684-1) and in the Info dictionary.
#pragma once

#include "compiler/stages/pdf/objects.hpp"

#include <cstdint>
#include <optional>
#include <string>

namespace quoin::pdf {

struct Metadata {
    std::string title, author, language;
    std::optional<std::int64_t> time; // seconds since 1970
};

std::string xmp_packet(const Metadata& metadata);
PdfDictionary info_dictionary(const Metadata& metadata);

}
