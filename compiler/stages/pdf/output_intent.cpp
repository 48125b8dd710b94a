// The sRGB profile by Little CMS.
#include "compiler/stages/pdf/output_intent.hpp"

#include <lcms2.h>

#include <memory>
#include <stdexcept>

namespace quoin::pdf {

namespace {

// Bytes 24 to 35 of an ICC profile's header (ICC.1:2004-10, section 7.2.8) are the date and time
// it was made: year, month, day, hour, minute, second.
constexpr std::size_t date_offset = 24;
constexpr std::string_view fixed_date("\x07\xD0\0\x01\0\x01\0\0\0\0\0\0", 12); // 2000-01-01

std::string make_profile() {
    struct Close {
        void operator()(void* profile) const { cmsCloseProfile(profile); }
    };
    const std::unique_ptr<void, Close> profile(cmsCreate_sRGBProfile());
    if (profile) cmsSetProfileVersion(profile.get(), 4.2);
    cmsUInt32Number size = 0;
    if (!profile || !cmsSaveProfileToMem(profile.get(), nullptr, &size))
        throw std::runtime_error("the sRGB profile cannot be made");
    std::string bytes(size, '\0');
    if (!cmsSaveProfileToMem(profile.get(), bytes.data(), &size))
        throw std::runtime_error("the sRGB profile cannot be made");
    bytes.replace(date_offset, fixed_date.size(), fixed_date);
    return bytes;
}

}

const std::string& srgb_profile() {
    static const std::string profile = make_profile();
    return profile;
}

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
