// By what the formats' own specifications have a file begin with: ISO 32000-2, section 7.5.2 (PDF);
// APPNOTE.TXT 4.3.7 (ZIP), and of what is in one ECMA-376 part 2 and OpenDocument 1.3 part 2; the
// Compound File Binary and Rich Text formats; ISO/IEC 15948 (PNG) and ISO/IEC 10918-5 (JPEG).
#include "compiler/base/file_kinds.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/messages.hpp"

namespace quoin {

namespace {

constexpr std::string_view pdf_header = "%PDF-";

}

bool begins_as_pdf(std::string_view bytes) {
    return bytes.starts_with(pdf_header);
}

bool has_pdf_header(std::string_view bytes) {
    constexpr std::size_t within = 1024;
    return bytes.substr(0, within).find(pdf_header) != bytes.npos;
}

std::string other_kind(std::string_view bytes) {
    using namespace std::string_view_literals;
    constexpr std::size_t looked_at = 4096;
    const std::string_view start = bytes.substr(0, looked_at);
    const auto holds = [&](std::string_view words) { return start.find(words) != start.npos; };
    if (begins_as_pdf(start)) return fill<messages::is_pdf>();
    if (start.starts_with("PK\x03\x04"sv)) {
        const bool text =
            holds("[Content_Types].xml") || holds("word/") || holds("opendocument.text");
        return text ? fill<messages::is_word_processing>() : fill<messages::is_archive>();
    }
    if (start.starts_with("\xD0\xCF\x11\xE0"sv) || start.starts_with("{\\rtf"))
        return fill<messages::is_word_processing>();
    if (start.starts_with("\x89PNG") || start.starts_with("\xFF\xD8\xFF"))
        return fill<messages::is_image>();
    if (is_web_page(bytes)) return fill<messages::is_web_page>();
    return {};
}

bool is_web_page(std::string_view bytes) {
    const std::string start = lower_case(bytes.substr(0, 64));
    return start.starts_with("<!doctype html") || start.starts_with("<html");
}

}
