// No file and no function is longer than DEVELOPERS.md says. Ends of functions are found by the
// layout that clang-format gives.
#include "tests/source_lines.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

namespace {

constexpr std::size_t most_of_file = 450, most_of_function = 40;

// The longest stretch from a line at that indent to the `}` that ends what it opens; classes and
// tables end in `};`.
std::size_t longest(const std::vector<std::string>& lines, std::size_t indent) {
    std::size_t most = 0;
    std::optional<std::size_t> start;
    for (std::size_t at = 0; at < lines.size(); ++at) {
        if (lines[at].find_first_not_of(' ') != indent) continue;
        const bool ends = lines[at].substr(indent) == "}";
        if (ends && start) most = std::max(most, at - *start + 1);
        start = ends ? std::nullopt : std::optional(at);
    }
    return most;
}

}

TEST_CASE("length: no file and no function is longer than is said") {
    quoin::test::visit_sources([](const auto& path, const auto& lines) {
        CAPTURE(path);
        CHECK(lines.size() <= most_of_file);
        CHECK(longest(lines, 0) <= most_of_function);
        CHECK(longest(lines, 4) <= most_of_function);
    });
}

TEST_CASE("length: a function is measured from its first line to its brace") {
    const std::vector<std::string> lines{"namespace a {",
                                         "",
                                         "int f(int b,",
                                         "      int c) {",
                                         "    return b + c;",
                                         "}",
                                         "",
                                         "struct S {",
                                         "    int g() {",
                                         "        return 1;",
                                         "    }",
                                         "};",
                                         "",
                                         "}"};
    CHECK(longest(lines, 0) == 4);
    CHECK(longest(lines, 4) == 3);
}
