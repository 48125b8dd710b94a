// From places in normalised text back to bytes and characters of the file, and what else Sources
// keeps for it.
#include "compiler/base/encoding.hpp"
#include "compiler/base/source_map.hpp"
#include "compiler/base/strange_signs.hpp"
#include "tests/fixtures/run_command.hpp"

#include <doctest/doctest.h>
#include <utf8proc.h>

#include <array>
#include <cstddef>
#include <filesystem>
#include <sstream>
#include <string>

namespace quoin {

namespace {

std::string characters(const std::string& codes) { // "0061 0301"
    std::istringstream in(codes);
    std::string text;
    for (long code = 0; in >> std::hex >> code;) {
        std::array<utf8proc_uint8_t, 4> bytes{};
        const auto length = utf8proc_encode_char(static_cast<utf8proc_int32_t>(code), bytes.data());
        text.append(bytes.begin(), bytes.begin() + length);
    }
    return text;
}

std::size_t count_characters(const std::string& text) {
    std::size_t count = 0;
    for (const char c : text)
        if ((static_cast<unsigned char>(c) & 0xC0) != 0x80) ++count;
    return count;
}

// Every place that is mapped parts text and bytes alike; how many are.
std::size_t mapped_places(const std::string& bytes) {
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.add("a", bytes, diagnostics);
    REQUIRE(file);
    const std::string& text = sources.file(*file).text;
    const KeptSigns kept = kept_signs(bytes);
    SourceMap map(sources.file(*file));
    std::size_t mapped = 0;
    for (std::size_t at = 0; at <= text.size(); ++at) {
        const Place place{*file, 1, static_cast<std::uint32_t>(at + 1), 0};
        const auto range = map.bytes_of(place);
        if (!range) continue;
        ++mapped;
        const std::string before = bytes.substr(0, range->begin);
        if (plain_signs(before, kept) != text.substr(0, at) ||
            plain_signs(bytes.substr(range->begin), kept) != text.substr(at) ||
            map.columns_of(place).begin != count_characters(before) + 1)
            return 0;
    }
    return mapped;
}

}

TEST_CASE("source map: every row of NormalizationTest.txt of Unicode 15.0.0") {
    const std::string path = "/usr/share/unicode/NormalizationTest.txt.bz2"; // package unicode-data
    if (!std::filesystem::exists(path)) {
        MESSAGE("unicode-data is not installed");
        return;
    }
    std::istringstream lines(fixtures::run("bzip2 -dc " + path));
    std::size_t rows = 0, wrong = 0;
    for (std::string line; std::getline(lines, line);) {
        if (line.empty() || line[0] == '#' || line[0] == '@') continue;
        std::istringstream columns(line);
        for (int column = 0; column < 3; ++column) {
            std::string codes;
            std::getline(columns, codes, ';');
            // the signs around it have places of their own, and so has each of them twice
            if (mapped_places("x  " + characters(codes) + " y") < 6) ++wrong;
        }
        ++rows;
    }
    CHECK(rows == 19074);
    CHECK(wrong == 0);
}

TEST_CASE("source map: lines, their ends and the byte-order mark") {
    for (const std::string end : {"\n", "\r\n", "\r"}) {
        for (const std::string mark : {"", "\xEF\xBB\xBF"}) {
            const std::string first = mark + "a e\u0301" + end;
            Sources sources;
            Diagnostics diagnostics;
            const auto file = sources.add("a", first + "be" + end, diagnostics);
            REQUIRE(file);
            SourceMap map(sources.file(*file));
            struct Row {
                std::uint32_t line, column, length;
                std::size_t begin, end; // bytes; both 0: none
                std::size_t first, last;
            };
            const std::size_t one = mark.size(), two = first.size();
            const Row rows[] = {
                {1, 1, 2, one, one + 2, 1, 3}, {1, 3, 2, one + 2, one + 5, 3, 5},
                {1, 4, 1, 0, 0, 3, 5}, // within the letter
                {2, 1, 2, two, two + 2, 1, 3}, {2, 3, 0, two + 2, two + 2, 3, 3},
                {2, 9, 1, 0, 0, 3, 3}, // behind the line
                {9, 1, 1, 0, 0, 1, 1},         {2, 0, 0, 0, 0, 1, 1},
            };
            for (const Row& row : rows) {
                CAPTURE(row.line);
                CAPTURE(row.column);
                const Place place{*file, row.line, row.column, row.length};
                const auto range = map.bytes_of(place);
                CHECK(range.has_value() == (row.end > 0));
                if (range) CHECK(range->begin == row.begin);
                if (range) CHECK(range->end == row.end);
                CHECK(map.columns_of(place).begin == row.first);
                CHECK(map.columns_of(place).end == row.last);
            }
        }
    }
}

TEST_CASE("sources: columns are the same in whatever order they are asked for") {
    const std::string bytes = "\té 中 x\u0304\ty\n\tab\n";
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.add("a", bytes, diagnostics);
    const auto other = sources.add("b", "b" + bytes, diagnostics);
    REQUIRE(other);
    for (std::uint32_t i = 0; i < 400; ++i) {
        const Place place{i % 7 < 4 ? *file : *other, 1 + i % 2, 1 + i * i % 19, 0};
        Sources alone;
        Diagnostics none;
        alone.add("a", bytes, none);
        alone.add("b", "b" + bytes, none);
        CHECK(sources.display_column(place) == alone.display_column(place));
    }
}

TEST_CASE("sources: held bytes take the place of the disk's") {
    Sources sources;
    Diagnostics diagnostics;
    sources.hold("no/such/file", "name: A\r\n");
    const auto file = sources.read("no/such/file", diagnostics);
    REQUIRE(file);
    CHECK(sources.file(*file).text == "name: A\n");
    CHECK(sources.file(*file).path == "no/such/file");
    CHECK_FALSE(sources.read("no/such/other", diagnostics));
}

}
