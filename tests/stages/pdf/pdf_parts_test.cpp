// The parts of a PDF, each against its standard.
#include "compiler/base/digest.hpp"
#include "compiler/stages/pdf/content_stream.hpp"
#include "compiler/stages/pdf/metadata.hpp"
#include "compiler/stages/pdf/objects.hpp"
#include "compiler/stages/pdf/output_intent.hpp"
#include "compiler/stages/pdf/subset_font.hpp"
#include "compiler/stages/pdf/to_unicode.hpp"
#include "compiler/stages/pdf/unicode.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <map>
#include <string>
#include <vector>

using namespace quoin;
using namespace quoin::pdf;

namespace {

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

std::string number(double value, int decimals) {
    std::string text;
    append_number(text, value, decimals);
    return text;
}

std::size_t count(const std::string& text, const std::string& part) {
    std::size_t found = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1))
        ++found;
    return found;
}

}

TEST_SUITE("pdf parts") {
    TEST_CASE("numbers: ISO 32000-1, 7.3.3, has no exponent") {
        CHECK(number(0, 2) == "0");
        CHECK(number(-0.001, 2) == "0");
        CHECK(number(1, 2) == "1");
        CHECK(number(100, 0) == "100");
        CHECK(number(-20, 0) == "-20");
        CHECK(number(10.5, 4) == "10.5");
        CHECK(number(0.125, 2) == "0.12");
        CHECK(number(-72.4567, 2) == "-72.46");
        CHECK(number(1e9, 2) == "1000000000");
        CHECK(number(0.00001, 4) == "0");
        CHECK_THROWS_AS(number(std::nan(""), 2), std::runtime_error);
        CHECK_THROWS_AS(number(std::numeric_limits<double>::infinity(), 2), std::runtime_error);
        CHECK_THROWS_AS(number(1e300, 2), std::runtime_error);
    }

    TEST_CASE("shown codes: strings of bytes, ISO 32000-1, 7.3.4.2") {
        const auto shown = [](std::vector<std::uint32_t> codes) {
            ContentStream stream;
            for (const std::uint32_t code : codes)
                stream.show(code);
            stream.end_marked();
            return stream.bytes();
        };
        CHECK(shown({}) == "EMC\n");
        CHECK(shown({0x4142, 0x43FF}) == "[(ABC\xFF)]TJ\nEMC\n");
        CHECK(shown({0x2829, 0x5C0D, 0x0A25}) == "[(\\(\\)\\\\\\r\n%)]TJ\nEMC\n");
        CHECK(shown({1}) == std::string("[(\0\1)]TJ\nEMC\n", 13));
        ContentStream apart;
        apart.show(0x4142);
        apart.gap(-20);
        apart.show(0x4344);
        apart.end_marked();
        CHECK(apart.bytes() == "[(AB)20(CD)]TJ\nEMC\n");
    }

    TEST_CASE("MD5: the test suite of RFC 1321, A.5") {
        const auto md5_hex = [](std::string_view bytes) {
            std::string text;
            append_hex(text, md5(bytes));
            return text;
        };
        CHECK(md5_hex("") == "D41D8CD98F00B204E9800998ECF8427E");
        CHECK(md5_hex("a") == "0CC175B9C0F1B6A831C399E269772661");
        CHECK(md5_hex("abc") == "900150983CD24FB0D6963F7D28E17F72");
        CHECK(md5_hex("message digest") == "F96B697D7CB7938D525A2F31AAF161D0");
        CHECK(md5_hex("abcdefghijklmnopqrstuvwxyz") == "C3FCD3D76192E4007DFB496CCA67E13B");
    }

    // Unicode Standard 15.0, section 3.9: one U+FFFD for what could begin a character
    TEST_CASE("UTF-16BE: RFC 2781, section 3.1; malformed UTF-8 is U+FFFD") {
        CHECK(utf16be("aé") == std::string("\0a\0\xE9", 4));
        CHECK(utf16be("\U00012345") == "\xD8\x08\xDF\x45"); // the RFC's example
        CHECK(utf16be("\xC0") == "\xFF\xFD");
        CHECK(utf16be("a\xE2\x82") == std::string("\0a\xFF\xFD", 4));
    }

    TEST_CASE("ToUnicode: the examples of ISO 32000-1, 9.10.3") {
        const std::string map =
            to_unicode_cmap({{0x5F, "ff"}, {0x60, "ffi"}, {0x61, "ffl"}, {0x3A51, "\U0002003E"}});
        CHECK(holds(map, "4 beginbfchar\n<005F><00660066>\n<0060><006600660069>\n"
                         "<0061><00660066006C>\n<3A51><D840DC3E>\nendbfchar\n"));
        CHECK(holds(map, "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n"));
    }

    TEST_CASE("ToUnicode: the range of the same examples; a range keeps to one high byte") {
        std::vector<std::string> letters(0x180);
        std::map<std::uint32_t, std::string_view> texts;
        for (std::uint32_t code = 0; code <= 0x5E; ++code)
            texts[code] = letters[code] = std::string(1, static_cast<char>(0x20 + code));
        CHECK(holds(to_unicode_cmap(texts), "1 beginbfrange\n<0000><005E><0020>\nendbfrange\n"));
        texts.clear();
        for (const std::uint32_t code : {0xFEU, 0xFFU, 0x100U, 0x101U, 0x103U})
            texts[code] = letters[code] = std::string(1, static_cast<char>('a' + code - 0xFE));
        const std::string map = to_unicode_cmap(texts);
        CHECK(holds(map, "2 beginbfrange\n<00FE><00FF><0061>\n<0100><0101><0063>\nendbfrange\n"));
        CHECK(holds(map, "1 beginbfchar\n<0103><0066>\nendbfchar\n"));
        // the text's own high byte: U+00FF, U+0100
        CHECK(holds(to_unicode_cmap({{1, "\u00FF"}, {2, "\u0100"}}), "2 beginbfchar\n"));
    }

    TEST_CASE("ToUnicode: blocks of a hundred at most") {
        std::map<std::uint32_t, std::string_view> texts;
        for (std::uint32_t code = 1; code <= 201; ++code)
            texts[code] = "x";
        const std::string map = to_unicode_cmap(texts);
        CHECK(count(map, "100 beginbfchar") == 2);
        CHECK(count(map, "\n1 beginbfchar") == 1);
        CHECK(count(map, "endbfchar") == 3);
    }

    TEST_CASE("ToUnicode: what PDF/UA-1, 7.21.7, and PDF/A-2, 6.2.11.7.3, forbid is U+FFFD") {
        for (const std::string_view text :
             {std::string_view("\0", 1), std::string_view("\uFEFF"), std::string_view("\uFFFE"),
              std::string_view("\uE000"), std::string_view("\U000F0000")})
            CHECK(holds(to_unicode_cmap({{1, text}}), "<0001><FFFD>"));
        CHECK(holds(to_unicode_cmap({{1, "\u00AD"}}), "<0001><00AD>"));
        CHECK(holds(to_unicode_cmap({{1, "f\u00ADi"}}), "<0001><00660069>"));
        CHECK(holds(to_unicode_cmap({{1, "\u200Bfi"}}), "<0001><00660069>"));
    }

    TEST_CASE("metadata: dates, by date(1)") {
        const auto with = [](std::int64_t time) {
            return xmp_packet({"Title", "Author", "en", time});
        };
        CHECK(holds(with(0), "xmp:CreateDate=\"1970-01-01T00:00:00Z\""));
        CHECK(holds(with(951827696), "xmp:ModifyDate=\"2000-02-29T12:34:56Z\""));
        CHECK(holds(with(253402300799), "9999-12-31T23:59:59Z"));
        CHECK_THROWS_AS(with(253402300800), std::runtime_error);
        CHECK_THROWS_AS(with(-1), std::runtime_error);
        const std::string without = xmp_packet({"Title", "Author", "en", {}});
        CHECK_FALSE(holds(without, "Date"));
    }

    TEST_CASE("metadata: XML 1.0, 2.2 and 2.4") {
        const std::string packet = xmp_packet({"A & B <c> \x01 \xFF", "", "en", {}});
        CHECK(holds(packet, "A &amp; B &lt;c&gt; \uFFFD \uFFFD</rdf:li>"));
        CHECK_FALSE(holds(packet, "dc:creator"));
    }

    TEST_CASE("sRGB profile: ICC.1:2004-10, table 10") {
        const std::string_view profile = srgb_profile();
        REQUIRE(profile.size() > 128);
        const auto byte = [&](std::size_t i) {
            return static_cast<std::size_t>(static_cast<unsigned char>(profile[i]));
        };
        CHECK((byte(0) << 24 | byte(1) << 16 | byte(2) << 8 | byte(3)) == profile.size());
        CHECK(byte(8) == 4);
        CHECK(profile.substr(12, 12) == "mntrRGB XYZ ");
        CHECK(profile.substr(24, 12) == std::string("\x07\xD0\0\x01\0\x01\0\0\0\0\0\0", 12));
        CHECK(profile.substr(36, 4) == "acsp");
    }

    TEST_CASE("subset tags: six capitals and a plus, ISO 32000-1, 9.6.4") {
        const std::string tag = subset_tag("one program");
        REQUIRE(tag.size() == 7);
        CHECK(tag.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ") == 6);
        CHECK(tag[6] == '+');
        CHECK(tag == subset_tag("one program"));
        CHECK(tag != subset_tag("another program"));
    }

    TEST_CASE("a file's identifier comes from its bytes") {
        const auto file = [](const std::string& content) {
            PdfFile pdf;
            pdf.add_stream({}, content);
            return pdf.write(pdf.add({{"Type", PdfName{"Catalog"}}}), pdf.add({}));
        };
        const auto id = [](const std::string& bytes) {
            return bytes.substr(bytes.rfind("/ID"), 73);
        };
        CHECK(file("a") == file("a"));
        CHECK(id(file("a")) != id(file("b")));
        // PDF/A-2, 6.1.2 and 6.1.3
        CHECK(file("a").starts_with("%PDF-1.7\n%"));
        CHECK(file("a").ends_with("%%EOF\n"));
    }

    TEST_CASE("values as they stand in a file: ISO 32000-1, 7.3, no space where none is needed") {
        // a stream's dictionary is in no object stream, and so in the open
        const auto written = [](const PdfValue& value) {
            PdfFile pdf;
            pdf.add_stream({{"A", value}}, "", PdfFilter::none);
            const std::string file = pdf.write(pdf.add({}), pdf.add({}));
            const std::size_t from = file.find("<<");
            return file.substr(from, file.find(">>\nstream", from) + 2 - from);
        };
        CHECK(written(true) == "<</A true/Length 0>>");
        CHECK(written(-7) == "<</A -7/Length 0>>");
        CHECK(written(PdfReal{0.5}) == "<</A 0.5/Length 0>>");
        CHECK(written(PdfName{"a b#"}) == "<</A/a#20b#23/Length 0>>");
        const std::string longest(127, 'n'), name = "<</A/" + longest + "/Length 0>>";
        CHECK(written(PdfName{longest}) == name);
        CHECK(written(PdfText{"a(b)\\"}) == "<</A(a\\(b\\)\\\\)/Length 0>>");
        CHECK(written(PdfText{"é"}) == std::string("<</A(\xFE\xFF\0\xE9)/Length 0>>", 21));
        CHECK(written(PdfBytes{"\r\n"}) == "<</A(\\r\\n)/Length 0>>");
        CHECK(written(PdfReference{12}) == "<</A 12 0 R/Length 0>>");
        CHECK(written(PdfArray{0, PdfReal{0.5}, PdfReal{7}, PdfName{"Fit"}, PdfReference{3}}) ==
              "<</A[ 0 0.5 7/Fit 3 0 R]/Length 0>>");
        CHECK(written(PdfDictionary{{"B", 1}, {"C", PdfArray{}}}) == "<</A<</B 1/C[]>>/Length 0>>");
    }
}
