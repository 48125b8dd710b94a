// Text as libxml2 hands it over.
#pragma once

#include <libxml/xmlstring.h>

#include <string_view>

namespace quoin {

inline std::string_view view_of(const xmlChar* text) { // empty if there is none
    return text == nullptr ? std::string_view{} : reinterpret_cast<const char*>(text);
}

}
