#include "compiler/stages/pdf/output_intent.hpp"

namespace quoin::pdf {

PdfDictionary output_intent(PdfFile& file) {
    const PdfReference profile = file.add_stream({{"N", 3}}, srgb_profile());
    const PdfText name{"sRGB IEC61966-2.1"};
    return {{"Type", PdfName{"OutputIntent"}},
            {"S", PdfName{"GTS_PDFA1"}},
            {"OutputConditionIdentifier", name},
            {"Info", name},
            {"DestOutputProfile", profile}};
}

}
