// Headings of a posting's PDF, by how their letters look.
#include "compiler/commands/posting/posting_pdf.hpp"
#include "compiler/postings/parts.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace quoin;

namespace {

struct Written {
    const char* strong; // words that are, from the line's beginning
    const char* plain;
    double size;
};

portal::StyledReading page_of(const std::vector<Written>& lines) {
    portal::StyledReading reading;
    double top = 72;
    for (const Written& line : lines) {
        portal::ReadLine read;
        read.block = reading.by_place.lines.size();
        double left = 72;
        for (const auto& [text, strong] : {std::pair(line.strong, true), {line.plain, false}}) {
            std::string word;
            const double begin = left;
            for (const char* c = text; *text != '\0'; ++c) {
                if (*c != ' ' && *c != '\0') {
                    word += *c;
                    continue;
                }
                read.words.push_back({word, {left, top, left + 20, top + line.size}});
                left += 25;
                word.clear();
                if (*c == '\0') break;
            }
            if (left > begin)
                reading.styles.push_back(
                    {0, {begin, top, left, top + line.size}, 0, line.size, strong, false});
        }
        read.box = {72, top, left, top + line.size};
        reading.by_place.lines.push_back(read);
        top += 20;
    }
    return reading;
}

}

TEST_CASE("postings: headings of a PDF are told by their letters") {
    const std::string text = commands::text_with_headings(
        page_of({{"", "Deckhand", 18},
                 {"Aboard you will", "", 11},
                 {"", "splice rope, mend nets and paint the hull in spring and in autumn", 11},
                 {"Perks.", "hammocks and tea for all of the crew each day of the week", 11},
                 {"rope", "is strong within a sentence that goes on for many words", 11}}));
    CHECK(text == "\n## Deckhand\n\n"
                  "\n\n## Aboard you will\n\n"
                  "\nsplice rope, mend nets and paint the hull in spring and in autumn\n"
                  "\n\n## Perks.\n\nhammocks and tea for all of the crew each day of the week\n"
                  "\nrope is strong within a sentence that goes on for many words\n");
    CHECK(commands::text_with_headings({}).empty());
}
