// ICU turns words into the dictionary's encoding and back.
#include "compiler/advice/installed_dictionary.hpp"

#include <hunspell/hunspell.hxx>
#include <unicode/unistr.h>

namespace quoin::advice {

namespace {

std::string encoded(std::string_view utf8, const std::string& encoding) {
    const auto text = icu::UnicodeString::fromUTF8(
        icu::StringPiece(utf8.data(), static_cast<int32_t>(utf8.size())));
    std::string bytes(static_cast<std::size_t>(text.length()) * 4, '\0');
    const int32_t length = text.extract(0, text.length(), bytes.data(),
                                        static_cast<uint32_t>(bytes.size()), encoding.c_str());
    bytes.resize(static_cast<std::size_t>(length));
    return bytes;
}

std::string decoded(const std::string& bytes, const std::string& encoding) {
    std::string utf8;
    icu::UnicodeString(bytes.data(), static_cast<int32_t>(bytes.size()), encoding.c_str())
        .toUTF8String(utf8);
    return utf8;
}

}

InstalledDictionary::InstalledDictionary(const std::filesystem::path& without_ending) {
    const std::string name = without_ending.string();
    hunspell_ = std::make_unique<Hunspell>((name + ".aff").c_str(), (name + ".dic").c_str());
    encoding_ = hunspell_->get_dict_encoding();
}

InstalledDictionary::~InstalledDictionary() = default;

bool InstalledDictionary::right(std::string_view word) const {
    return hunspell_->spell(encoded(word, encoding_));
}

std::vector<std::string> InstalledDictionary::near(std::string_view word) const {
    std::vector<std::string> found;
    for (const std::string& each : hunspell_->suggest(encoded(word, encoding_)))
        found.push_back(decoded(each, encoding_));
    return found;
}

}
