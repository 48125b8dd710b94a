// XML of a file nobody vouches for, tag by tag, by libxml2: without document type declarations, and
// so without entities of the file's own, and without the network.
#pragma once

#include <string_view>
#include <utility>
#include <vector>

namespace quoin::transcription {

struct XmlTag {
    std::string_view name; // with its prefix: `w:p`
    std::vector<std::pair<std::string_view, std::string_view>> attributes;

    std::string_view value(std::string_view attribute) const; // empty if there is none
};

class XmlHandler {
public:
    virtual ~XmlHandler() = default;
    virtual void open(const XmlTag& tag) = 0;
    virtual void close(std::string_view name) = 0;
    virtual void text(std::string_view text) = 0;
};

// Whether it is well-formed to its end; what came before a fault was handed on.
bool read_xml(std::string_view xml, XmlHandler& handler);

}
