// A posting as lines: what one of its headings, items or paragraphs says, whole. What a reader
// of the page would not see (scripts, hidden parts, the site's own menus) is not there.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::postings {

struct Line {
    std::string text; // UTF-8, single spaces, plain apostrophes and hyphens
    bool heading = false;
    bool minor = false;       // a heading within a part: of a list's item, of a table's row
    bool item = false;        // of a list
    bool parted = false;      // white stands above it
    std::uint32_t number = 0; // in the file, from 1: where it begins

    bool operator==(const Line&) const = default;
};

// Lines that a column's width broke are joined. A heading is told by its colon, its capitals, or
// its shortness and what stands below.
std::vector<Line> text_lines(std::string_view text);

// By the HTML Living Standard's way of parsing: any bytes are a page.
std::vector<Line> html_lines(std::string_view html);

// Whether a text is HTML: by what it begins with, or by the tags in it.
bool is_html(std::string_view text);

// Without the bullet or number that it begins with, which makes it an item.
bool take_bullet(std::string& plain);

// No control characters, no invisible signs, each run of blanks one space, apostrophes and hyphens
// as a keyboard has them.
std::string plain_line(std::string_view text);

}
