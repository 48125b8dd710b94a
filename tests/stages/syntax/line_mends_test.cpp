// Mends of wrong lines: what they make of a line that stands in the first column, and of the same
// line pushed in.
#include "compiler/advice/mend.hpp"
#include "compiler/stages/syntax/parse.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::syntax::line_mends_test {

namespace {

// The edits of one message, which stand in their line one after the other.
void look_at(Edits edits, const SourceFile& source) {
    std::ranges::sort(edits, {}, [](const Edit& edit) { return edit.place.column; });
    std::size_t free = 0; // where the edit before this one ends
    for (const Edit& edit : edits) {
        CHECK(edit.place.column > free);
        free = edit.place.column - 1 + edit.place.length;
        CHECK(free <= source.line(edit.place.line).size() + 1);
    }
}

// A file with its mends made once.
std::string once_mended(const std::string& before, Braces braces) {
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.add("a", before, diagnostics);
    REQUIRE(file);
    parse(sources, *file, diagnostics, braces);
    Edits edits;
    for (const auto& found : diagnostics.all()) {
        look_at(found.mend, sources.file(*file));
        edits.insert(edits.end(), found.mend.begin(), found.mend.end());
    }
    return advice::mend(sources.file(*file), edits).bytes;
}

// As `quoin mend` does: again, until nothing is left that it may make.
std::string mended(std::string text, Braces braces) {
    for (int round = 0; round < 5; ++round)
        text = once_mended(text, braces);
    return text;
}

struct Row {
    std::string line, mended;
};

const std::vector<Row> rows{
    {"// x", "# x"},
    {"//x", "#x"},
    {"// x -->", "# x"},
    {"/* x */", "# x"},
    {"/*x*/", "#x"},
    {"/**/", "#"},
    {"/* */", "#"},
    {"/*/", "#/"},
    {"<!-- x -->", "# x"},
    {"<!---->", "#"},
    {"<!-->", "#>"},
    {"<!-- x", "# x"},
    {"; x", "# x"},
    {";", "#"},
    {"% x", "# x"},
    {"* Fed 4 seals", "- Fed 4 seals"},
    {"• Fed 4 seals", "- Fed 4 seals"},
    {"-Fed 4 seals", "- Fed 4 seals"},
    {"--Fed 4 seals", "-- Fed 4 seals"},
    {"**Role:** Tutor", "Role: Tutor"},
    {"role = Tutor", "role: Tutor"},
};

}

TEST_CASE("line mends: in the first column, pushed in, and below another line") {
    for (const Row& row : rows)
        for (const std::string before : {"", "\n", "name: Ottoline Brandt\n\n"})
            for (const std::string space : {"", "  ", "\t"}) {
                CAPTURE(before + space + row.line);
                const std::string text = mended(before + space + row.line + "\n", Braces::tags);
                CHECK(text == before + row.mended + "\n");
            }
}

TEST_CASE("line mends: any start of a line gives edits that stand in it, one after the other") {
    const std::string_view signs[]{"//", "/*", "*/", "<!--", "-->", ";",  "%", "-",    "--", "*",
                                   "•",  "–",  "=",  ":",    "**",  "__", " ", "role", "\t", "x"};
    for (const Braces braces : {Braces::tags, Braces::text})
        for (const std::string_view first : signs)
            for (const std::string_view second : signs)
                for (const std::string_view third : signs) {
                    const std::string line = std::string(first).append(second).append(third);
                    CAPTURE(line);
                    once_mended("\n  " + line + "\n\n" + line + "\n", braces);
                }
}

}
