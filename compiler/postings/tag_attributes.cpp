#include "compiler/postings/tag_attributes.hpp"

#include "compiler/base/ascii.hpp"

#include <algorithm>

namespace quoin::postings {

namespace {

constexpr std::size_t most_attributes = 100;
constexpr std::string_view blanks = " \t\r\n\f";

std::size_t end_at(std::size_t found, std::string_view html) {
    return std::min(found, html.size());
}

// Behind a value in quotation marks, or where one without them ends.
std::size_t end_of_value(std::string_view html, std::size_t at) {
    at = end_at(html.find_first_not_of(blanks, at), html);
    if (at == html.size()) return at;
    if (html[at] == '"' || html[at] == '\'')
        return end_at(html.find(html[at], at + 1), html.substr(0, html.size() - 1)) + 1;
    return end_at(html.find_first_of(" \t\r\n\f<>", at), html);
}

// Behind the attribute that begins there.
std::size_t end_of_attribute(std::string_view html, std::size_t at) {
    const std::size_t end = end_at(html.find_first_of(" \t\r\n\f<>=", at + 1), html);
    const std::size_t sign = end_at(html.find_first_not_of(blanks, end), html);
    return sign < html.size() && html[sign] == '=' ? end_of_value(html, sign + 1) : end;
}

// The front of the page up to what a tag's last attribute that is kept ends with, and how far the
// tag goes; `<` ends one too, for a script may hold what only looks like one.
struct Tag {
    std::size_t kept = 0, end = 0;
};

Tag tag_at(std::string_view html, std::size_t at) {
    Tag tag;
    at = end_at(html.find_first_of(" \t\r\n\f<>", at), html);
    for (std::size_t count = 0;; ++count) {
        if (count <= most_attributes) tag.kept = at;
        tag.end = end_at(html.find_first_not_of(blanks, at), html);
        if (tag.end == html.size() || html[tag.end] == '>' || html[tag.end] == '<') return tag;
        at = end_of_attribute(html, tag.end);
    }
}

}

std::string with_few_attributes(std::string_view html) {
    std::string page;
    std::size_t at = 0;
    while (at < html.size()) {
        const std::size_t open = end_at(html.find('<', at), html);
        page += html.substr(at, open - at);
        if (open == html.size()) break;
        const bool opens = open + 1 < html.size() && is_ascii_letter(html[open + 1]);
        const Tag tag = opens ? tag_at(html, open + 1) : Tag{open + 1, open + 1};
        page += html.substr(open, tag.kept - open);
        at = tag.end;
    }
    return page;
}

}
