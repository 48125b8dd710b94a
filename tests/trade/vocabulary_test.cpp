// The table of labels against the page that tells of it, and against the labels that the grammar
// knows when their colon is forgotten.
#include "compiler/trade/vocabulary.hpp"

#include <doctest/doctest.h>

#include <fstream>
#include <iterator>
#include <regex>
#include <set>
#include <sstream>
#include <string>

namespace trade = quoin::trade;

namespace {

using Labels = std::set<std::string>;

std::string text_of(const std::string& file) {
    std::ifstream in(std::string{QUOIN_SOURCE_FOLDER} + "/" + file);
    return {std::istreambuf_iterator<char>(in), {}};
}

// From a heading, or another start, to an end.
std::string part(const std::string& text, const std::string& start, const std::string& end) {
    const std::size_t from = text.find(start);
    REQUIRE(from != std::string::npos);
    return text.substr(from, text.find(end, from + start.size()) - from);
}

Labels all_of(const std::string& text, const char* pattern) {
    const std::regex each(pattern);
    Labels found;
    for (std::sregex_iterator at(text.begin(), text.end(), each), end; at != end; ++at)
        found.insert((*at)[1]);
    return found;
}

// What stands in backticks in the first cells of the rows of a table.
Labels first_cells(const std::string& text) {
    std::istringstream lines(text);
    Labels found;
    for (std::string line; std::getline(lines, line);)
        if (line.starts_with("| `"))
            found.merge(all_of(line.substr(0, line.find('|', 1)), "`([^`]+)`"));
    return found;
}

Labels as_set(const std::vector<std::string_view>& labels) {
    return {labels.begin(), labels.end()};
}

}

TEST_CASE("labels: language.md lists those of the heading") {
    const std::string page = text_of("grammar/language.md");
    Labels listed = first_cells(part(page, "## Heading fields", "## Settings"));
    listed.merge(first_cells(part(page, "## Settings", "## Sections")));
    listed.insert("include"); // it has a chapter of its own
    CHECK(listed == as_set(trade::heading_labels()));
}

TEST_CASE("labels: language.md lists those of each kind of entry") {
    const std::string table =
        part(text_of("grammar/language.md"), "| holds | fields |", "Fields stand in any order");
    CHECK(first_cells(table) == as_set(trade::names_of<trade::Holds>()));
    std::istringstream lines(table);
    for (std::string line; std::getline(lines, line);) {
        if (!line.starts_with("| `")) continue;
        CAPTURE(line);
        const std::string fields = line.substr(line.find('|', 1));
        for (const std::string& name : first_cells(line)) {
            const trade::Holds kind = *trade::named<trade::Holds>(name);
            CHECK(all_of(fields, "`([^`]+)`") == as_set(trade::labels_of(kind)));
            CHECK((fields.find("bullets") != std::string::npos) == trade::has_bullets(kind));
            CHECK((fields.find("any label") != std::string::npos) == trade::has_groups(kind));
        }
    }
}

TEST_CASE("labels: language.md lists those that name an entry of a kind") {
    const std::string text =
        part(text_of("grammar/language.md"), "names an entry of another", ").");
    Labels found;
    for (const trade::Word& word : trade::vocabulary())
        if (trade::names_entry(word)) found.emplace(word.label);
    CHECK(all_of(text, "`([^`]+)`") == found);
}

TEST_CASE("labels: each field has its row, and is found by it") {
    for (int name = 0; name <= static_cast<int>(trade::FieldName::group); ++name) {
        CAPTURE(name);
        CHECK(!trade::label_of(static_cast<trade::FieldName>(name)).empty());
    }
}
