// Attributes of a page's tags, before a parser sees them.
#pragma once

#include <string>
#include <string_view>

namespace quoin::postings {

// The page with no more attributes in a tag than any page's has: libxml2 holds each against all
// before it, and a tag of a hundred thousand would take it minutes.
std::string with_few_attributes(std::string_view html);

}
