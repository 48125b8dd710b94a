// Nothing of six lines stands twice in the program: what is the same is a function or a table.
#include "tests/source_lines.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cctype>
#include <map>
#include <string>
#include <vector>

namespace {

constexpr std::size_t most_alike = 5;

struct CodeLine {
    std::size_t number = 0;
    std::string text; // blanks folded, without its comment
};

std::string without_layout(const std::string& line) {
    std::string text;
    for (const char c : line.substr(0, line.find("//"))) {
        const bool blank = std::isspace(static_cast<unsigned char>(c)) != 0;
        if (!blank || (!text.empty() && text.back() != ' ')) text += blank ? ' ' : c;
    }
    while (text.ends_with(' '))
        text.pop_back();
    return text;
}

// What tells something: no include, no room opened, no brace or `else` alone.
bool tells(const std::string& text) {
    const auto signs = std::ranges::count_if(
        text, [](char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0; });
    return signs > 4 && !text.starts_with('#') && !text.starts_with("namespace ");
}

class Windows {
public:
    // Says where each stretch that was met before stands again.
    std::vector<std::string> add(const std::string& file, const std::vector<std::string>& lines) {
        std::vector<CodeLine> code;
        for (std::size_t at = 0; at < lines.size(); ++at)
            if (std::string text = without_layout(lines[at]); tells(text))
                code.push_back({at + 1, text});
        std::vector<std::string> again;
        for (std::size_t at = 0; at + most_alike < code.size(); ++at) {
            std::string window;
            for (std::size_t i = at; i <= at + most_alike; ++i)
                window += code[i].text + '\n';
            const std::string here = file + ':' + std::to_string(code[at].number);
            const auto [before, is_new] = met_.emplace(window, here);
            if (!is_new) again.push_back(here + " as " + before->second);
        }
        return again;
    }

private:
    std::map<std::string, std::string> met_;
};

}

TEST_CASE("duplicates: no six lines stand twice") {
    Windows windows;
    quoin::test::visit_sources([&](const auto& path, const auto& lines) {
        for (const std::string& again : windows.add(path.string(), lines))
            FAIL_CHECK(again);
    });
}

TEST_CASE("duplicates: six lines are found whatever their layout, and five are not") {
    std::vector<std::string> lines;
    for (const char* name : {"alpha", "beta_", "gamma", "delta", "epsilon", "zeta_"})
        lines.push_back("    use(" + std::string(name) + ");");
    std::vector<std::string> indented{"#include <map>", "", "}"};
    for (const std::string& line : lines)
        indented.push_back("    " + line + " // again");
    Windows windows;
    CHECK(windows.add("a", lines).empty());
    CHECK(windows.add("b", indented) == std::vector<std::string>{"b:4 as a:1"});
    Windows of_five;
    lines.pop_back();
    CHECK(of_five.add("a", lines).empty());
    CHECK(of_five.add("b", lines).empty());
}
