// What kind of document it is, by the bytes that it begins with, and what is said of other kinds.
#include "compiler/transcription/read_old.hpp"

#include "compiler/base/encoding.hpp"
#include "compiler/base/file_kinds.hpp"
#include "compiler/base/given_file.hpp"
#include "compiler/transcription/messages.hpp"

#include <algorithm>

namespace quoin::transcription {

namespace {

namespace fs = std::filesystem;

bool has_text(const OldDocument& document) {
    return std::ranges::any_of(document.lines, [](const OldLine& line) {
        return std::ranges::any_of(line.text(), [](char c) {
            return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') ||
                   static_cast<unsigned char>(c) >= 0x80;
        });
    });
}

OldOrFault read_pdf_bytes(std::string_view bytes, const OldReaders& readers) {
    auto read = portal::read_styled_pdf(bytes, readers.font_configuration);
    if (auto* fault = std::get_if<std::string>(&read)) return *fault;
    const auto& reading = std::get<portal::StyledReading>(read);
    OldDocument document = lines_of_pdf(reading, readers.is_title);
    if (has_text(document)) return document;
    if (reading.images == 0) return fill<messages::no_text>();
    return fill<messages::no_text_but_pictures>(
        reading.images == 1 ? "a picture" : std::to_string(reading.images) + " pictures");
}

OldOrFault read_package(std::string_view bytes, const OldReaders& readers) {
    const Package package = readers.packages().open(bytes, {});
    if (package.end == PackageEnd::locked) return fill<messages::locked_package>();
    if (package.end == PackageEnd::too_large) return fill<messages::too_large_package>();
    if (package.end == PackageEnd::damaged) return fill<messages::damaged_package>();
    OldOrFault read = fill<messages::other_package>();
    if (package.parts.contains("word/document.xml"))
        read = lines_of_docx(package.parts);
    else if (package.parts.contains("content.xml"))
        read = lines_of_odt(package.parts);
    else if (package.pages)
        read = fill<messages::is_pages>();
    else if (package.parts.contains("[Content_Types].xml"))
        read = fill<messages::other_document>();
    auto* document = std::get_if<OldDocument>(&read);
    if (!document) return read;
    if (!has_text(*document)) return fill<messages::no_text>();
    if (package.macros) document->remarks.push_back(fill<messages::macros>());
    return read;
}

// Labels of the markup open most lines of a résumé's source.
bool is_source(std::string_view text) {
    return text.find("\nsection: ") != text.npos &&
           (text.starts_with("name: ") || text.find("\nname: ") != text.npos);
}

OldOrFault read_text(std::string_view bytes, const OldReaders& readers) {
    const Decoded decoded = decode(bytes);
    const bool has_nul = bytes.find('\0') != bytes.npos;
    if (decoded.faults.size() > 1 && has_nul) return fill<messages::no_text_of_bytes>();
    if (!decoded.faults.empty()) return decoded.faults.front().text;
    if (is_source(decoded.text)) return fill<messages::is_markup>();
    OldDocument document = lines_of_text(decoded.text, readers.is_title);
    if (!has_text(document)) return fill<messages::no_text>();
    return document;
}

}

OldOrFault read_old_bytes(std::string_view bytes, const OldReaders& readers) {
    using namespace std::string_view_literals;
    if (has_pdf_header(bytes)) return read_pdf_bytes(bytes, readers);
    if (bytes.starts_with("PK\x03\x04"sv)) return read_package(bytes, readers);
    if (bytes.starts_with("\xD0\xCF\x11\xE0"sv)) return fill<messages::old_binary>();
    if (bytes.starts_with("{\\rtf")) return fill<messages::is_rtf>();
    if (bytes.starts_with("\x89PNG") || bytes.starts_with("\xFF\xD8\xFF"))
        return fill<messages::is_image>();
    if (is_web_page(bytes)) return fill<messages::is_html>();
    return read_text(bytes, readers);
}

OldOrFault read_old(const fs::path& file, const OldReaders& readers) {
    std::string bytes;
    if (auto fault =
            fault_reading({file, portal::most_pdf_bytes, "one document", "a document"}, bytes))
        return *fault;
    return read_old_bytes(bytes, readers);
}

}
