// XMP is text; it is written here as text, with PDF/A and PDF/UA identification and the extension
// schema that ISO 19005-2, section 6.6.2.3, asks for the latter.
#include "compiler/stages/pdf/metadata.hpp"

#include "compiler/base/utf8.hpp"
#include "compiler/stages/pdf/unicode.hpp"

#include <fmt/format.h>

#include <chrono>
#include <stdexcept>

namespace quoin::pdf {

namespace {

// A character that XML 1.0 (section 2.2) has no place for becomes U+FFFD, as does malformed UTF-8.
bool fits_xml(char32_t c) {
    return c == '\t' || c == '\n' || c == '\r' || (c >= 0x20 && c != 0xFFFE && c != 0xFFFF);
}

std::string escape(std::string_view utf8) {
    std::string text;
    while (!utf8.empty()) {
        const std::string_view before = utf8;
        const char32_t character = take_character(utf8).code;
        const std::string_view bytes = before.substr(0, before.size() - utf8.size());
        const bool malformed = character == 0xFFFD && bytes.size() == 1;
        if (character == '&')
            text += "&amp;";
        else if (character == '<')
            text += "&lt;";
        else if (character == '>')
            text += "&gt;";
        else if (malformed || !fits_xml(character))
            text += "\uFFFD";
        else
            text += bytes;
    }
    return text;
}

struct UtcTime {
    int year;
    unsigned month, day;
    int hour, minute, second;
};

UtcTime utc(std::int64_t time) {
    constexpr std::int64_t year_10000 = 253402300800;
    if (time < 0 || time >= year_10000)
        throw std::runtime_error("the document's date lies outside the years 1970 to 9999");
    const std::chrono::sys_seconds moment{std::chrono::seconds(time)};
    const auto midnight = std::chrono::floor<std::chrono::days>(moment);
    const std::chrono::year_month_day date(midnight);
    const auto seconds = static_cast<int>((moment - midnight).count());
    return {static_cast<int>(date.year()),
            static_cast<unsigned>(date.month()),
            static_cast<unsigned>(date.day()),
            seconds / 3600,
            seconds / 60 % 60,
            seconds % 60};
}

std::string printed(const char* form, std::int64_t time) {
    const UtcTime clock = utc(time);
    return fmt::format(fmt::runtime(form), clock.year, clock.month, clock.day, clock.hour,
                       clock.minute, clock.second);
}

std::string element(const std::string& name, const std::string& content) {
    return "<" + name + ">" + content + "</" + name + ">";
}

std::string list(const std::string& name, const std::string& kind, const std::string& item) {
    return element(name, element("rdf:" + kind, item));
}

std::string item(const std::string& value) {
    return "<rdf:li>" + escape(value) + "</rdf:li>";
}

// Simple properties are written as attributes, which is shorter and means the same.
constexpr std::string_view packet_begin =
    "<?xpacket begin=\"\xEF\xBB\xBF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>"
    "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">"
    "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">"
    "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\""
    " xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\""
    " xmlns:pdfaid=\"http://www.aiim.org/pdfa/ns/id/\""
    " xmlns:pdfuaid=\"http://www.aiim.org/pdfua/ns/id/\""
    " xmlns:pdfaExtension=\"http://www.aiim.org/pdfa/ns/extension/\""
    " xmlns:pdfaSchema=\"http://www.aiim.org/pdfa/ns/schema#\""
    " xmlns:pdfaProperty=\"http://www.aiim.org/pdfa/ns/property#\""
    " pdfaid:part=\"2\" pdfaid:conformance=\"A\" pdfuaid:part=\"1\"";

constexpr std::string_view extension_schema =
    "<pdfaExtension:schemas><rdf:Bag><rdf:li><rdf:Description"
    " pdfaSchema:schema=\"PDF/UA identification schema\""
    " pdfaSchema:namespaceURI=\"http://www.aiim.org/pdfua/ns/id/\""
    " pdfaSchema:prefix=\"pdfuaid\"><pdfaSchema:property><rdf:Seq><rdf:li"
    " pdfaProperty:name=\"part\" pdfaProperty:valueType=\"Integer\""
    " pdfaProperty:category=\"internal\" pdfaProperty:description=\"Part of ISO 14289\"/>"
    "</rdf:Seq></pdfaSchema:property></rdf:Description></rdf:li></rdf:Bag>"
    "</pdfaExtension:schemas>";

constexpr std::string_view packet_end =
    "</rdf:Description></rdf:RDF></x:xmpmeta><?xpacket end=\"w\"?>";

}

std::string xmp_packet(const Metadata& metadata) {
    std::string packet(packet_begin);
    if (metadata.time) {
        const std::string date = printed("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}Z", *metadata.time);
        packet += " xmp:CreateDate=\"" + date + "\" xmp:ModifyDate=\"" + date + '"';
    }
    packet += '>';
    packet += list("dc:title", "Alt",
                   "<rdf:li xml:lang=\"x-default\">" + escape(metadata.title) + "</rdf:li>");
    if (!metadata.author.empty()) packet += list("dc:creator", "Seq", item(metadata.author));
    packet += list("dc:language", "Bag", item(metadata.language));
    packet += extension_schema;
    packet += packet_end;
    return packet;
}

PdfDictionary info_dictionary(const Metadata& metadata) {
    PdfDictionary info{{"Title", PdfText{metadata.title}}};
    if (!metadata.author.empty()) info.push_back({"Author", PdfText{metadata.author}});
    if (metadata.time) {
        const PdfText date{printed("D:{:04}{:02}{:02}{:02}{:02}{:02}Z", *metadata.time)};
        info.push_back({"CreationDate", date});
        info.push_back({"ModDate", date});
    }
    return info;
}

}
