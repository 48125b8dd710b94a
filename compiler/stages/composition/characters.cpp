// By utf8proc and ICU.
#include "compiler/stages/composition/characters.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"

#include <unicode/bytestream.h>
#include <unicode/casemap.h>
#include <unicode/locid.h>
#include <unicode/stringpiece.h>
#include <unicode/uscript.h>
#include <utf8proc.h>

#include <algorithm>
#include <stdexcept>
#include <vector>

namespace quoin::composition {

std::size_t first_cluster_length(std::string_view text) {
    // two of ASCII are of one cluster only as a line's end (UAX #29, GB3)
    const auto is_plain = [&](std::size_t at) {
        return at >= text.size() || (text[at] >= ' ' && text[at] <= '~');
    };
    if (is_plain(0) && is_plain(1)) return 1;
    Character before = first_character(text);
    std::size_t length = before.length;
    utf8proc_int32_t state = 0;
    while (length < text.size()) {
        const Character next = first_character(text.substr(length));
        if (utf8proc_grapheme_break_stateful(static_cast<utf8proc_int32_t>(before.code),
                                             static_cast<utf8proc_int32_t>(next.code), &state))
            break;
        length += next.length;
        before = next;
    }
    return length;
}

bool is_right_to_left(char32_t code) {
    const auto* property = utf8proc_get_property(static_cast<utf8proc_int32_t>(code));
    return property->bidi_class == UTF8PROC_BIDI_CLASS_R ||
           property->bidi_class == UTF8PROC_BIDI_CLASS_AL;
}

bool is_left_to_right(char32_t code) {
    const auto* property = utf8proc_get_property(static_cast<utf8proc_int32_t>(code));
    return property->bidi_class == UTF8PROC_BIDI_CLASS_L;
}

bool parts_right_to_left(char32_t code) {
    const auto* property = utf8proc_get_property(static_cast<utf8proc_int32_t>(code));
    return property->bidi_mirrored || property->bidi_class == UTF8PROC_BIDI_CLASS_L ||
           property->bidi_class == UTF8PROC_BIDI_CLASS_EN ||
           property->bidi_class == UTF8PROC_BIDI_CLASS_AN;
}

bool is_mark(char32_t code) {
    const auto* property = utf8proc_get_property(static_cast<utf8proc_int32_t>(code));
    return property->bidi_class == UTF8PROC_BIDI_CLASS_NSM ||
           property->bidi_class == UTF8PROC_BIDI_CLASS_BN;
}

std::string scripts_of(std::string_view text) {
    std::vector<std::string_view> names;
    while (!text.empty()) {
        const Character character = first_character(text);
        UErrorCode fault = U_ZERO_ERROR;
        const UScriptCode script = uscript_getScript(static_cast<UChar32>(character.code), &fault);
        const bool own =
            U_SUCCESS(fault) && script > USCRIPT_INHERITED && script != USCRIPT_UNKNOWN;
        const std::string_view name = own ? uscript_getName(script) : "";
        if (!name.empty() && std::ranges::find(names, name) == names.end()) names.push_back(name);
        text.remove_prefix(character.length);
    }
    return joined(names, " and ");
}

std::string upper_case(std::string_view text, const std::string& language) {
    std::string result;
    icu::StringByteSink<std::string> sink(&result);
    UErrorCode fault = U_ZERO_ERROR;
    const icu::Locale locale = icu::Locale::forLanguageTag(language, fault);
    fault = U_ZERO_ERROR; // an unknown language has the root's capitals
    icu::CaseMap::utf8ToUpper(locale.getName(), 0,
                              icu::StringPiece(text.data(), static_cast<int32_t>(text.size())),
                              sink, nullptr, fault);
    if (U_FAILURE(fault)) throw std::runtime_error("ICU cannot make capitals");
    return result;
}

}
