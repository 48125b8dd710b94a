// Source files: encodings, normal form, line ends, limits; diagnostics' text form.
#include "compiler/base/diagnostics.hpp"
#include "compiler/base/encoding.hpp"
#include "compiler/base/source.hpp"
#include "compiler/base/utf8.hpp"

#include <doctest/doctest.h>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <memory>
#include <set>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

using quoin::Diagnostics;
using quoin::Place;
using quoin::Sources;

namespace {

std::string hex_bytes(const std::string& hex) { // "C0 AF" as two bytes
    std::istringstream in(hex);
    std::string bytes;
    for (unsigned value = 0; in >> std::hex >> value;)
        bytes += static_cast<char>(value);
    return bytes;
}

std::string utf8_of(char32_t code) { // by arithmetic alone, apart from the code under test
    const auto byte = [](char32_t value) { return static_cast<char>(value); };
    if (code < 0x80) return {byte(code)};
    if (code < 0x800) return {byte(0xC0 | code >> 6), byte(0x80 | (code & 0x3F))};
    if (code < 0x10000)
        return {byte(0xE0 | code >> 12), byte(0x80 | (code >> 6 & 0x3F)),
                byte(0x80 | (code & 0x3F))};
    return {byte(0xF0 | code >> 18), byte(0x80 | (code >> 12 & 0x3F)),
            byte(0x80 | (code >> 6 & 0x3F)), byte(0x80 | (code & 0x3F))};
}

std::string repeated(std::string_view piece, std::size_t bytes) {
    std::string text;
    while (text.size() + piece.size() <= bytes)
        text += piece;
    return text;
}

// Every diagnostic on a line of its own.
std::string messages(const std::string& bytes) {
    Sources sources;
    Diagnostics diagnostics;
    sources.add("a.resume", bytes, diagnostics);
    std::string text;
    for (const auto& one : diagnostics.all())
        text += format(one, sources) + '\n';
    return text;
}

std::string text_of(const std::string& bytes) {
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.add("a.resume", bytes, diagnostics);
    return file ? sources.file(*file).text : "refused";
}

// What a program prints; empty if there is no such file to give it.
std::string output_of(const std::string& program, const std::string& file) {
    if (!std::filesystem::exists(file)) return {};
    const std::unique_ptr<FILE, int (*)(FILE*)> pipe(::popen((program + ' ' + file).c_str(), "r"),
                                                     &::pclose);
    REQUIRE(pipe);
    std::string text;
    std::array<char, 4096> buffer{};
    for (std::size_t count = 0;
         (count = std::fread(buffer.data(), 1, buffer.size(), pipe.get())) > 0;)
        text.append(buffer.data(), count);
    return text;
}

std::vector<std::string> split(const std::string& text, char separator) {
    std::vector<std::string> parts;
    std::istringstream in(text);
    for (std::string part; std::getline(in, part, separator);)
        parts.push_back(part);
    return parts;
}

}

TEST_SUITE("source") {

    TEST_CASE(
        "ill-formed UTF-8 falls into the pieces of Unicode Standard 15.0, Tables 3-8 to 3-11") {
        struct Row {
            const char* bytes;
            const char* pieces; // `?` an ill-formed piece
        };
        const Row rows[]{{"C0 AF E0 80 BF F0 81 82 41", "????????A"},
                         {"ED A0 80 ED BF BF ED AF 41", "????????A"},
                         {"F4 91 92 93 FF 41 80 BF 42", "?????A??B"},
                         {"E1 80 E2 F0 91 92 F1 BF 41", "????A"}};
        for (const Row& row : rows) {
            std::string pieces = quoin::decode(hex_bytes(row.bytes)).text;
            for (std::size_t at = 0; (at = pieces.find("\xEF\xBF\xBD")) != std::string::npos;)
                pieces.replace(at, 3, "?");
            CHECK(pieces == row.pieces);
        }
    }

    TEST_CASE("a character is well-formed exactly when it is what its code encodes to") {
        // The slow, obvious way: encode every code point that is no surrogate.
        std::set<std::string> encoded;
        for (char32_t code = 0; code <= 0x10FFFF; ++code)
            if (code < 0xD800 || code > 0xDFFF) encoded.insert(utf8_of(code));
        const std::string bytes =
            hex_bytes("00 41 7F 80 8F 90 9F A0 BF C0 C1 C2 DF E0 E1 EC ED EE EF F0 "
                      "F1 F3 F4 F5 FF");
        std::size_t wrong = 0;
        const auto check = [&](const std::string& text) {
            const quoin::Character character = quoin::first_character(text);
            bool expected = false;
            for (std::size_t length = 1; length <= text.size(); ++length)
                expected = expected || encoded.contains(text.substr(0, length));
            if (character.well_formed != expected) ++wrong;
            if (expected && utf8_of(character.code) != text.substr(0, character.length)) ++wrong;
            if (character.length == 0 || character.length > text.size()) ++wrong;
        };
        for (int first = 0; first < 256; ++first)
            for (int second = 0; second < 256; ++second)
                check({static_cast<char>(first), static_cast<char>(second)});
        for (const char a : bytes)
            for (const char b : bytes)
                for (const char c : bytes)
                    for (const char d : bytes)
                        check({a, b, c, d});
        CHECK(wrong == 0);
    }

    TEST_CASE("Markus Kuhn's UTF-8 stress file, as the package yudit-doc has it") {
        const std::string file =
            output_of("gzip -dc", "/usr/share/doc/yudit-doc/UTF-8-test.txt.gz");
        if (file.empty()) {
            MESSAGE("yudit-doc is not installed");
            return;
        }
        // In sections 2 to 5, what is to be refused: all of 3, 4, 5.1 and 5.2 that is quoted, and
        // of 2 what lies beyond U+10FFFF. Noncharacters (5.3) are well-formed (Unicode Corrigendum
        // 9).
        const std::set<std::string> beyond{"2.1.5", "2.1.6", "2.2.4", "2.2.5", "2.2.6", "2.3.5"};
        const std::set<std::string> control{"2.1.1", "2.1.2", "2.2.1"};
        std::size_t seen = 0;
        for (const std::string& line : split(file, '\n')) {
            const std::string number = line.substr(0, line.find(' '));
            if (std::count(number.begin(), number.end(), '.') != 2) continue;
            if (line.find('"') == std::string::npos) continue; // the sequences are on lines below
            const bool bad = beyond.contains(number) || number.starts_with("3.") ||
                             number.starts_with("4.") || number.starts_with("5.1") ||
                             number.starts_with("5.2");
            CAPTURE(number);
            const std::string found = messages(line);
            CHECK((found.find("is not UTF-8") != std::string::npos) == bad);
            CHECK(found.empty() == !(bad || control.contains(number)));
            ++seen;
        }
        CHECK(seen > 50);
    }

    TEST_CASE("NFC: every row of NormalizationTest.txt of Unicode 15.0.0 (package unicode-data)") {
        const std::string file =
            output_of("bzip2 -dc", "/usr/share/unicode/NormalizationTest.txt.bz2");
        if (file.empty()) {
            MESSAGE("unicode-data is not installed");
            return;
        }
        const auto characters = [](const std::string& codes) {
            std::istringstream in(codes);
            std::string text;
            for (unsigned long code = 0; in >> std::hex >> code;)
                text += utf8_of(static_cast<char32_t>(code));
            return text;
        };
        std::size_t rows = 0;
        std::size_t wrong = 0;
        for (const std::string& line : split(file, '\n')) {
            if (line.empty() || line.starts_with('#') || line.starts_with('@')) continue;
            const std::vector<std::string> c = split(line, ';');
            const std::string nfc = characters(c.at(1));
            const std::string nfkc = characters(c.at(3));
            for (const std::size_t column : {0U, 1U, 2U})
                if (quoin::to_nfc(characters(c.at(column))) != nfc) ++wrong;
            for (const std::size_t column : {3U, 4U})
                if (quoin::to_nfc(characters(c.at(column))) != nfkc) ++wrong;
            // of a source some compatibility forms are read as the letters they stand for
            const std::string read = text_of(characters(c.at(0)));
            if (read != nfc && quoin::to_nfc(read) != read) ++wrong;
            ++rows;
        }
        CHECK(rows == 19074);
        CHECK(wrong == 0);
    }

    TEST_CASE("text from bytes") {
        struct Row {
            std::string bytes, text;
        };
        const Row rows[]{{"", ""},
                         {"a", "a"},
                         {"a\nb\n", "a\nb\n"},
                         {"a\r\nb\r\n", "a\nb\n"},
                         {"a\rb\r\r\nc", "a\nb\n\nc"},
                         {"\xEF\xBB\xBF"
                          "a",
                          "a"},
                         {"\xEF\xBB\xBF", ""},
                         {"\xEF\xBB\xBF\xEF\xBB\xBF", ""}, // an invisible sign
                         {"cafe\xCC\x81\n", "caf\u00E9\n"},
                         {"\xE2\x84\xAB", "\u00C5"},
                         {"of\uFB01ce \uFF11", "of\u0066\u0069ce 1"},
                         {"tab\there", "tab\there"},
                         {"e\n\xCC\x81", "e\n\xCC\x81"}};
        for (const Row& row : rows)
            CHECK(text_of(row.bytes) == row.text);
    }

    TEST_CASE("a mebibyte of invisible signs takes linear time") {
        std::string alone, between;
        while (alone.size() < Sources::most_bytes - 3)
            alone += "\u200B";
        while (between.size() < Sources::most_bytes - 4)
            between += "a\u200B";
        CHECK(text_of(alone) == "");
        CHECK(text_of(between) == std::string(between.size() / 4, 'a'));
    }

    TEST_CASE("lines") {
        Sources sources;
        Diagnostics diagnostics;
        const auto file = sources.file(*sources.add("a", "one\n\nthree", diagnostics));
        CHECK(file.line_starts == std::vector<std::size_t>{0, 4, 5});
        CHECK(file.line(0).empty());
        CHECK(file.line(1) == "one");
        CHECK(file.line(2).empty());
        CHECK(file.line(3) == "three");
        CHECK(file.line(4).empty());
        CHECK(file.bytes == "one\n\nthree");
    }

    TEST_CASE("bad bytes, to the letter") {
        struct Row {
            std::string bytes, messages;
        };
        const std::string again =
            "; type the character anew and save the file with the encoding UTF-8\n";
        const std::string utf16 =
            "a.resume: error: looks like UTF-16, and UTF-8 was expected: in the "
            "editor that wrote it, save it as plain text with the encoding UTF-8\n";
        const Row rows[]{
            {"name: Zo\xEB", "a.resume:1:9: error: byte 0xEB is not UTF-8; the file looks like "
                             "Windows-1252, where it "
                             "is 'ë': save it with the encoding UTF-8\n"},
            {"a\n\x80 x", "a.resume:2:1: error: byte 0x80 is not UTF-8; the file looks like "
                          "Windows-1252, where it "
                          "is '€': save it with the encoding UTF-8\n"},
            {"é \xEB", "a.resume:1:3: error: byte 0xEB is not UTF-8: it begins a character that "
                       "does not go on as "
                       "it must" +
                           again},
            {"é \x92", "a.resume:1:3: error: byte 0x92 is not UTF-8: it is part of a character "
                       "that was begun "
                       "before it or is missing its beginning" +
                           again},
            {"é\n\xFF",
             "a.resume:2:1: error: byte 0xFF is not UTF-8: it stands in no UTF-8 text" + again},
            {"\x81", "a.resume:1:1: error: byte 0x81 is not UTF-8: it is part of a character that "
                     "was begun "
                     "before it or is missing its beginning" +
                         again},
            {std::string("abcdef\0g", 8),
             "a.resume:1:7: error: a NUL byte, which no text holds: take it out\n"},
            {"a\x1B[1m",
             "a.resume:1:2: error: U+001B is a control character, which cannot be set: take "
             "it out\n"},
            {"a\xC2\x85",
             "a.resume:1:2: error: U+0085 is a control character, which cannot be set: take "
             "it out\n"},
            {"\xFF\xFE"
             "a",
             utf16},
            {"\xFE\xFF", utf16},
            {std::string("a\0b\0", 4), utf16},
            {std::string("\0a\0b\0c", 6), utf16},
            {"e" + repeated("\xCC\x81", 60), ""},
            {"e" + repeated("\xCC\x81", 70), "a.resume:1:2: error: more than 30 combining marks in "
                                             "a row (Unicode Standard Annex #15, "
                                             "section 13): take some out\n"},
        };
        for (const Row& row : rows)
            CHECK(messages(row.bytes) == row.messages);
    }

    TEST_CASE("of many faults of a kind the first are shown, then how many there are") {
        const std::vector<std::string> lines =
            split(messages(std::string(3000, '\xFF') + "\x01"), '\n');
        REQUIRE(lines.size() == 22);
        CHECK(lines.at(20).starts_with("a.resume:1:3001: error: U+0001 "));
        CHECK(lines.at(21) == "a.resume: error: 3000 places that are not UTF-8 in all, of which "
                              "the first 20 are shown");
    }

    TEST_CASE("files that cannot be read, to the letter") {
        const std::filesystem::path folder =
            std::filesystem::temp_directory_path() / ("quoin-source-" + std::to_string(::getpid()));
        std::filesystem::create_directory(folder);
        std::ofstream(folder / "good.resume") << "name: A\n";
        std::ofstream(folder / "locked.resume") << "name: A\n";
        std::filesystem::permissions(folder / "locked.resume", std::filesystem::perms::none);

        struct Row {
            std::filesystem::path path;
            std::string message;
        };
        const Row rows[]{{folder / "good.resume", ""},
                         {folder, ": error: is a folder; a text file was expected"},
                         {folder / "none.resume", ": error: no such file"},
                         {folder / "good.resume" / "x",
                          ": error: no such file: a part of its path is not a folder"},
                         {"/dev/zero",
                          ": error: is not a regular file; a pipe or a device is read only where "
                          "the command line names it"}};
        for (const Row& row : rows) {
            Sources sources;
            Diagnostics diagnostics;
            const auto file = sources.read(row.path, diagnostics);
            CHECK(file.has_value() == row.message.empty());
            REQUIRE(diagnostics.all().size() == (row.message.empty() ? 0 : 1));
            CHECK(sources.file(0).path == row.path);
            if (!file)
                CHECK(format(diagnostics.all()[0], sources) == row.path.string() + row.message);
        }
        { // named by the user: it has no end, and reading stops at the limit
            Sources sources;
            Diagnostics diagnostics;
            CHECK_FALSE(sources.read_input("/dev/zero", diagnostics));
            CHECK(diagnostics.all().at(0).text ==
                  "is larger than 1 MiB; a résumé is a few kilobytes of text, so this looks like "
                  "another file");
        }
        if (::geteuid() != 0) { // who may read everything
            Sources sources;
            Diagnostics diagnostics;
            CHECK_FALSE(sources.read(folder / "locked.resume", diagnostics));
            REQUIRE(diagnostics.all().size() == 1);
            CHECK(diagnostics.all()[0].text == "may not be read: permission is missing");
        }
        std::filesystem::remove_all(folder);
    }

    TEST_CASE("a pipe that a file names is not waited for, nor is a device without end read") {
        const std::string refusal = " error: is not a regular file; a pipe or a device is read "
                                    "only where the command line names it";
        const auto folder = std::filesystem::temp_directory_path() / "quoin-source-pipes";
        std::filesystem::create_directories(folder);
        const std::string pipe = (folder / "pipe").string();
        std::filesystem::remove(pipe);
        REQUIRE(mkfifo(pipe.c_str(), 0600) == 0);
        for (const std::string& name : {pipe, std::string("/dev/zero")}) {
            Sources sources;
            Diagnostics diagnostics;
            CHECK_FALSE(sources.read(name, diagnostics));
            CHECK(format(diagnostics.all().at(0), sources) == name + ":" + refusal);
        }
        std::filesystem::remove_all(folder);
    }
    TEST_CASE("a pipe is read to its end") {
        std::array<int, 2> ends{};
        REQUIRE(::pipe(ends.data()) == 0);
        const std::string text = "name: A\n";
        REQUIRE(::write(ends[1], text.data(), text.size()) == static_cast<ssize_t>(text.size()));
        ::close(ends[1]);
        Sources sources;
        Diagnostics diagnostics;
        const auto file = sources.read_input("/dev/fd/" + std::to_string(ends[0]), diagnostics);
        ::close(ends[0]);
        REQUIRE(file);
        CHECK(sources.file(*file).text == text);
    }

    TEST_CASE("the limit holds at its byte, and after NFC") {
        CHECK(messages(std::string(Sources::most_bytes, 'a')).empty());
        CHECK(messages(std::string(Sources::most_bytes + 1, 'a'))
                  .starts_with("a.resume: error: is larger"));
        // U+1D160 has the greatest expansion in NFC: three characters for one (UAX #15).
        CHECK(messages(repeated("\xF0\x9D\x85\xA0", Sources::most_bytes))
                  .starts_with("a.resume: error: is larger"));
    }

    TEST_CASE("hostile files of the greatest size come to an end") {
        const std::string alternating = "\xCC\x81\xCC\xA3"; // two marks, never in order
        for (const std::string& piece :
             {std::string("\n"), std::string("\r"), std::string("\xFF"), std::string(1, '\0'),
              std::string("\x01"), alternating, std::string("\xE0\xBD\xB3\xE0\xBD\xB5"),
              std::string("a\xCC\x81"), std::string("\xE1\x80")}) {
            Sources sources;
            Diagnostics diagnostics;
            sources.add("a", repeated(piece, Sources::most_bytes), diagnostics);
            CHECK(diagnostics.all().size() <= 42);
        }
    }

    TEST_CASE("columns as GNU messages count them (GNU Coding Standards, section 4.4)") {
        // A tab, é, U+10400 and a wide character; and a combining mark that NFC leaves alone.
        Sources sources;
        Diagnostics diagnostics;
        const auto file = sources.add("a", "\té𐐀中x\u0323\u0301y\tz", diagnostics);
        REQUIRE(file);
        struct Row {
            std::uint32_t byte, column;
        };
        const Row rows[]{{1, 1},   {2, 9},   {4, 10},  {8, 11},  {11, 13},
                         {16, 14}, {17, 15}, {18, 17}, {19, 18}, {99, 18}};
        REQUIRE(sources.file(*file).text.size() == 18);
        for (const Row& row : rows)
            CHECK(sources.display_column({*file, 1, row.byte, 0}) == row.column);
        CHECK(sources.display_column({*file, 0, 0, 0}) == 0);
        CHECK(sources.display_column({*file, 1, 0, 0}) == 0);
    }

    TEST_CASE("diagnostics with their excerpt, to the letter") {
        struct Row {
            std::string line;
            std::uint32_t column, length;
            std::string expected;
        };
        const std::string far = repeated("abcd ", 1000);
        const Row rows[]{
            {"gpa: 5", 6, 1, "a:1:6: error: x\n  gpa: 5\n       ^"},
            {"gpa: 5.0", 6, 3, "a:1:6: error: x\n  gpa: 5.0\n       ^~~"},
            {"gpa:", 5, 0, "a:1:5: error: x\n  gpa:\n      ^"},
            {"a:\tb", 4, 1, "a:1:9: error: x\n  a:      b\n          ^"},
            {"é中x", 3, 3, "a:1:2: error: x\n  é中x\n   ^~"},
            {"gpa: 5", 0, 0, "a:1: error: x\n  gpa: 5"},
            // A long line is cut around the place.
            {far, 1, 4, "a:1:1: error: x\n  " + repeated("abcd ", 70) + "abcd…\n  ^~~~"},
            {far, 501, 4,
             "a:1:501: error: x\n  … " + repeated("abcd ", 70) + "abc…\n" + std::string(39, ' ') +
                 "^~~~"},
            {far, 1, 1000,
             "a:1:1: error: x\n  " + repeated("abcd ", 70) + "abcd…\n  ^" + std::string(73, '~')},
        };
        for (const Row& row : rows) {
            Sources sources;
            Diagnostics diagnostics;
            sources.add("a", row.line, diagnostics);
            diagnostics.error({0, 1, row.column, row.length}, "x");
            CHECK(format(diagnostics.all()[0], sources, true) == row.expected);
        }
    }

    TEST_CASE("diagnostics: severities, order, names that could steer a terminal") {
        Sources sources;
        Diagnostics diagnostics;
        sources.add("b\x1B.resume", "one\ntwo\n", diagnostics);
        diagnostics.note({0, 2, 1, 1}, "third");
        diagnostics.warning({0, 1, 2, 1}, "second");
        CHECK_FALSE(diagnostics.has_errors());
        diagnostics.error({0, 0, 0, 0}, "first");
        diagnostics.error({0, 2, 1, 3}, "fourth");
        CHECK(diagnostics.has_errors());
        diagnostics.sort();
        std::string text;
        for (const auto& one : diagnostics.all())
            text += format(one, sources) + '\n';
        CHECK(text == "b<U+001B>.resume: error: first\n"
                      "b<U+001B>.resume:1:2: warning: second\n"
                      "b<U+001B>.resume:2:1: note: third\n"
                      "b<U+001B>.resume:2:1: error: fourth\n");
    }
}
