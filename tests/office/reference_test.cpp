// The reference of an office's rules has every label, with the range and the default of numbers.
#include "compiler/office/labels.hpp"
#include "compiler/office/office.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <fstream>
#include <iterator>
#include <string>

namespace quoin::office { namespace {

std::string reference() {
    std::ifstream in(QUOIN_SOURCE_FOLDER "/grammar/office.md");
    return {std::istreambuf_iterator<char>(in), {}};
}

// Of the label's row; empty if there is none, or two.
std::string row_for(const std::string& text, std::string_view label) {
    const std::string opening = fmt::format("\n| `{}` |", label);
    const std::size_t at = text.find(opening);
    if (at == std::string::npos || text.find(opening, at + 1) != std::string::npos) return {};
    return text.substr(at + 1, text.find('\n', at + 1) - at);
}

TEST_CASE("the reference of an office's rules has a row for each label") {
    const std::string text = reference();
    for (const LabelRow& row : label_rows)
        CHECK_MESSAGE(!row_for(text, row.label).empty(), row.label);
    for (const LimitRow& row : limit_rows) {
        const std::string told = row_for(text, row.label);
        CAPTURE(row.label);
        CHECK(told.find(fmt::format("{:.3g} to {:.3g}", row.range.least, row.range.most)) !=
              std::string::npos);
        const Limits usual;
        const std::string value =
            &row == &row_of(&Limits::most_pages) ? "one for a student"
            : row.most ? fmt::format("; {:.3g} to {:.3g} |", usual.*row.of, usual.*row.most)
                       : fmt::format("{:.3g}", usual.*row.of);
        CHECK(told.find(value) != std::string::npos);
    }
}

}}
