// What a page's own styles hide: declarations that show nothing, and the classes and names that
// the rules of its style sheets give them to. A rule for a medium or a width is none of these.
#pragma once

#include <set>
#include <string>
#include <string_view>

namespace quoin::postings {

// `display: none`, and what puts text off the page or makes it too small or too pale to see.
bool hides(std::string_view declarations);

class HiddenStyles {
public:
    void read(std::string_view style_sheet);

    bool hide_class(std::string_view classes) const; // of an element, parted by blanks
    bool hide_name(std::string_view id) const { return selectors_.contains('#' + std::string(id)); }

private:
    void read_rule(std::string_view selectors, std::string_view declarations);

    std::set<std::string> selectors_; // `.gone`, `#later`
};

}
