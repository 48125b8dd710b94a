// Makes the sRGB profile by Little CMS, as C++: `make_profile FILE`. A program of the build, which
// saves each page the making of what is always the same.
#include <lcms2.h>

#include <cstdio>
#include <memory>
#include <string>
#include <string_view>

namespace {

// Bytes 24 to 35 of an ICC profile's header (ICC.1:2004-10, section 7.2.8) are the date and time
// it was made: year, month, day, hour, minute, second.
constexpr std::size_t date_offset = 24;
constexpr std::string_view fixed_date("\x07\xD0\0\x01\0\x01\0\0\0\0\0\0", 12); // 2000-01-01

std::string make_profile() { // empty if it cannot be made
    struct Close {
        void operator()(void* profile) const { cmsCloseProfile(profile); }
    };
    const std::unique_ptr<void, Close> profile(cmsCreate_sRGBProfile());
    if (profile) cmsSetProfileVersion(profile.get(), 4.2);
    cmsUInt32Number size = 0;
    if (!profile || !cmsSaveProfileToMem(profile.get(), nullptr, &size)) return {};
    std::string bytes(size, '\0');
    if (!cmsSaveProfileToMem(profile.get(), bytes.data(), &size)) return {};
    return bytes.replace(date_offset, fixed_date.size(), fixed_date);
}

}

int main(int, char** arguments) {
    const std::string profile = make_profile();
    const std::unique_ptr<std::FILE, decltype(&std::fclose)> file(std::fopen(arguments[1], "w"),
                                                                  std::fclose);
    if (profile.empty() || !file) return 1;
    std::fputs("#include \"compiler/stages/pdf/output_intent.hpp\"\n"
               "static constexpr unsigned char bytes[] = {",
               file.get());
    for (std::size_t i = 0; i < profile.size(); ++i)
        std::fprintf(file.get(), "%s0x%02X,", i % 16 == 0 ? "\n    " : " ",
                     static_cast<unsigned>(static_cast<unsigned char>(profile[i])));
    std::fputs("\n};\nstd::string_view quoin::pdf::srgb_profile() {\n"
               "    return {reinterpret_cast<const char*>(bytes), sizeof bytes};\n}\n",
               file.get());
    return std::ferror(file.get()) == 0 ? 0 : 1;
}
