#include "compiler/transcription/xml_events.hpp"

#include "compiler/base/xml_text.hpp"

#include <libxml/parser.h>

#include <memory>
#include <new>

namespace quoin::transcription {

namespace {

constexpr std::size_t deepest_element = 200;

struct XmlReading {
    XmlHandler& handler;
    xmlParserCtxtPtr parser = nullptr;
    std::size_t depth = 0;
    bool refused = false;

    void stop() {
        refused = true;
        xmlStopParser(parser);
    }
};

XmlReading& reading_of(void* self) {
    return *static_cast<XmlReading*>(self);
}

void start_element(void* self, const xmlChar* name, const xmlChar** attributes) {
    XmlReading& reading = reading_of(self);
    if (++reading.depth > deepest_element) return reading.stop();
    XmlTag tag{view_of(name), {}};
    for (; attributes != nullptr && *attributes != nullptr; attributes += 2)
        tag.attributes.emplace_back(view_of(attributes[0]), view_of(attributes[1]));
    reading.handler.open(tag);
}

xmlSAXHandler callbacks() {
    xmlSAXHandler calls{};
    calls.startElement = start_element;
    calls.endElement = [](void* self, const xmlChar* name) {
        --reading_of(self).depth;
        reading_of(self).handler.close(view_of(name));
    };
    calls.characters = [](void* self, const xmlChar* text, int length) {
        reading_of(self).handler.text(view_of(text).substr(0, static_cast<std::size_t>(length)));
    };
    calls.ignorableWhitespace = calls.characters;
    calls.cdataBlock = calls.characters;
    calls.internalSubset = [](void* self, const xmlChar*, const xmlChar*, const xmlChar*) {
        reading_of(self).stop();
    };
    return calls;
}

}

std::string_view XmlTag::value(std::string_view attribute) const {
    for (const auto& [named, said] : attributes)
        if (named == attribute) return said;
    return {};
}

bool read_xml(std::string_view xml, XmlHandler& handler) {
    XmlReading reading{handler};
    xmlSAXHandler calls = callbacks();
    const std::unique_ptr<xmlParserCtxt, void (*)(xmlParserCtxtPtr)> parser(
        xmlCreatePushParserCtxt(&calls, &reading, nullptr, 0, nullptr), xmlFreeParserCtxt);
    if (!parser) throw std::bad_alloc();
    reading.parser = parser.get();
    xmlCtxtUseOptions(parser.get(), XML_PARSE_NONET | XML_PARSE_NOERROR | XML_PARSE_NOWARNING);
    const int fault = xmlParseChunk(parser.get(), xml.data(), static_cast<int>(xml.size()), 1);
    return fault == 0 && !reading.refused && parser->wellFormed != 0;
}

}
