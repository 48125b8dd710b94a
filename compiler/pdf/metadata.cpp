// XMP is text; it is written here as text, with PDF/A and PDF/UA identification and the extension
// schema that ISO 19005-2, section 6.6.2.3, asks for the latter.
#include "compiler/pdf/metadata.hpp"

#include "compiler/pdf/unicode.hpp"

#include <fmt/format.h>

#include <chrono>
#include <stdexcept>

namespace quoin {

namespace {

constexpr const char* producer = "quoin";

// A character that XML 1.0 (section 2.2) has no place for becomes U+FFFD, as does malformed UTF-8.
bool fits_xml(char32_t c) {
    return c == '\t' || c == '\n' || c == '\r' || (c >= 0x20 && c != 0xFFFE && c != 0xFFFF);
}

std::string escape(std::string_view utf8) {
    std::string text;
    while (!utf8.empty()) {
        const std::string_view before = utf8;
        const char32_t character = take_character(utf8);
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

struct Clock {
    int year;
    unsigned month, day;
    int hour, minute, second;
};

Clock utc(std::int64_t time) {
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
    const Clock clock = utc(time);
    return fmt::format(fmt::runtime(form), clock.year, clock.month, clock.day, clock.hour,
                       clock.minute, clock.second);
}

std::string property(const std::string& name, const std::string& value) {
    return "<" + name + ">" + value + "</" + name + ">\n";
}

std::string list(const std::string& name, const std::string& kind, const std::string& item) {
    return property(name, "<rdf:" + kind + ">" + item + "</rdf:" + kind + ">");
}

std::string item(const std::string& value) {
    return "<rdf:li>" + escape(value) + "</rdf:li>";
}

constexpr std::string_view packet_begin =
    "<?xpacket begin=\"\xEF\xBB\xBF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
    "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n"
    "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n"
    "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\""
    " xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\" xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\""
    " xmlns:pdfaid=\"http://www.aiim.org/pdfa/ns/id/\""
    " xmlns:pdfuaid=\"http://www.aiim.org/pdfua/ns/id/\""
    " xmlns:pdfaExtension=\"http://www.aiim.org/pdfa/ns/extension/\""
    " xmlns:pdfaSchema=\"http://www.aiim.org/pdfa/ns/schema#\""
    " xmlns:pdfaProperty=\"http://www.aiim.org/pdfa/ns/property#\">\n";

constexpr std::string_view identification =
    "<pdfaid:part>2</pdfaid:part>\n<pdfaid:conformance>A</pdfaid:conformance>\n"
    "<pdfuaid:part>1</pdfuaid:part>\n"
    "<pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType=\"Resource\">\n"
    "<pdfaSchema:schema>PDF/UA identification schema</pdfaSchema:schema>\n"
    "<pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>\n"
    "<pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>\n"
    "<pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType=\"Resource\">\n"
    "<pdfaProperty:name>part</pdfaProperty:name>\n"
    "<pdfaProperty:valueType>Integer</pdfaProperty:valueType>\n"
    "<pdfaProperty:category>internal</pdfaProperty:category>\n"
    "<pdfaProperty:description>Part of ISO 14289</pdfaProperty:description>\n"
    "</rdf:li></rdf:Seq></pdfaSchema:property>\n"
    "</rdf:li></rdf:Bag></pdfaExtension:schemas>\n";

constexpr std::string_view packet_end =
    "</rdf:Description>\n</rdf:RDF>\n</x:xmpmeta>\n<?xpacket end=\"w\"?>";

}

std::string xmp_packet(const Metadata& metadata) {
    std::string packet(packet_begin);
    packet += list("dc:title", "Alt",
                   "<rdf:li xml:lang=\"x-default\">" + escape(metadata.title) + "</rdf:li>");
    if (!metadata.author.empty()) packet += list("dc:creator", "Seq", item(metadata.author));
    packet += list("dc:language", "Bag", item(metadata.language));
    packet += property("pdf:Producer", producer);
    if (metadata.time) {
        const std::string date = printed("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}Z", *metadata.time);
        packet += property("xmp:CreateDate", date) + property("xmp:ModifyDate", date);
    }
    packet += identification;
    packet += packet_end;
    return packet;
}

PdfDictionary info_dictionary(const Metadata& metadata) {
    PdfDictionary info{{"Title", PdfText{metadata.title}}, {"Producer", PdfText{producer}}};
    if (!metadata.author.empty()) info.push_back({"Author", PdfText{metadata.author}});
    if (metadata.time) {
        const PdfText date{printed("D:{:04}{:02}{:02}{:02}{:02}{:02}Z", *metadata.time)};
        info.push_back({"CreationDate", date});
        info.push_back({"ModDate", date});
    }
    return info;
}

}
