// What is said of files that are no old résumé that can be read; word processors' files from their
// parts, and from packages written here by the ZIP specification (APPNOTE.TXT 6.3, sections 4.3.7,
// 4.3.12 and 4.3.16).
#include "tests/transcription/transcribing.hpp"

#include "compiler/base/module.hpp"
#include "compiler/transcription/messages.hpp"
#include "compiler/transcription/xml_events.hpp"

#include <doctest/doctest.h>

#include <zlib.h>

#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace quoin::transcription {

namespace {

std::string number(std::size_t value, int bytes) {
    std::string text;
    for (int i = 0; i < bytes; ++i, value >>= 8)
        text += static_cast<char>(value & 0xFF);
    return text;
}

struct ZipPart {
    std::string name, bytes;
    bool locked = false;
};

std::string packed(const std::string& bytes) {
    z_stream stream{};
    deflateInit2(&stream, 9, Z_DEFLATED, -15, 8, Z_DEFAULT_STRATEGY);
    std::string out(deflateBound(&stream, static_cast<uLong>(bytes.size())), '\0');
    stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(bytes.data()));
    stream.avail_in = static_cast<uInt>(bytes.size());
    stream.next_out = reinterpret_cast<Bytef*>(out.data());
    stream.avail_out = static_cast<uInt>(out.size());
    deflate(&stream, Z_FINISH);
    out.resize(stream.total_out);
    deflateEnd(&stream);
    return out;
}

// The fields that a local header and the central directory share.
std::string fields_of(const ZipPart& part, const std::string& bytes) {
    const auto* data = reinterpret_cast<const Bytef*>(part.bytes.data());
    const auto sum = crc32(0, data, static_cast<uInt>(part.bytes.size()));
    return number(20, 2) + number(part.locked ? 1 : 0, 2) + number(8, 2) + number(0, 4) +
           number(sum, 4) + number(bytes.size(), 4) + number(part.bytes.size(), 4) +
           number(part.name.size(), 2) + number(0, 2);
}

std::string zip_of(const std::vector<ZipPart>& parts) {
    std::string file, directory;
    for (const ZipPart& part : parts) {
        const std::string bytes = packed(part.bytes);
        const std::string fields = fields_of(part, bytes);
        directory += "PK\x01\x02" + number(20, 2) + fields + number(0, 10) +
                     number(file.size(), 4) + part.name;
        file += "PK\x03\x04" + fields + part.name + bytes;
    }
    return file + directory + "PK\x05\x06" + number(0, 4) + number(parts.size(), 2) +
           number(parts.size(), 2) + number(directory.size(), 4) + number(file.size(), 4) +
           number(0, 2);
}

const PackageOpener& opener() {
    static const std::unique_ptr<PackageOpener> one(make_by_module<PackageOpener>("package"));
    return *one;
}

std::string fault_of(std::string_view bytes) {
    OldReaders readers = test::old_readers();
    readers.packages = opener;
    const auto old = read_old_bytes(bytes, readers);
    const auto* fault = std::get_if<std::string>(&old);
    return fault ? *fault : "";
}

constexpr const char* document_start =
    R"(<w:document xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main"><w:body>)";

std::string docx_document(const std::string& body) {
    return document_start + body + "</w:body></w:document>";
}

std::string paragraph(const std::string& text, const std::string& properties = "") {
    return "<w:p><w:pPr>" + properties + "</w:pPr><w:r><w:t xml:space=\"preserve\">" + text +
           "</w:t></w:r></w:p>";
}

// One line a line, `|` for white between columns, `*` before an item, `!` before heavy letters.
std::string shown(const OldOrFault& old) {
    if (const auto* fault = std::get_if<std::string>(&old)) return *fault;
    std::string text;
    for (const OldLine& line : std::get<OldDocument>(old).lines) {
        text += line.listed ? "*" : "";
        for (const OldWord& word : line.words)
            text += std::string(word.apart ? " |" : "") + (&word == line.words.data() ? "" : " ") +
                    (word.strong ? "!" : "") + word.text;
        text += '\n';
    }
    return text;
}

std::string shown_docx(const std::string& body) {
    return shown(lines_of_docx({{"word/document.xml", docx_document(body)}}));
}

}

TEST_CASE("files of other kinds, each with its mend") {
    using namespace std::string_literals;
    struct Case {
        std::string bytes;
        std::string_view message;
    };
    for (const Case& one :
         {Case{"\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1"s, messages::old_binary.text},
          {"{\\rtf1\\ansi Ottoline"s, messages::is_rtf.text},
          {"<!DOCTYPE html><html><p>x"s, messages::is_html.text},
          {"\x89PNG\r\n\x1A\n"s, messages::is_image.text},
          {" \n\t\n"s, messages::no_text.text},
          {"\x7F\x01\xE4\0\x9C\xFF\0\x03"s, messages::no_text_of_bytes.text},
          {"name: Ottoline Brandt\n\nsection: Skills\n\nR\n"s, messages::is_markup.text},
          {zip_of({{"readme.txt", "x"}}), messages::other_package.text},
          {zip_of({{"Index/Document.iwa", "x"}}), messages::is_pages.text},
          {zip_of({{"[Content_Types].xml", "<Types/>"}, {"xl/workbook.xml", "<x/>"}}),
           messages::other_document.text},
          {zip_of({{"word/document.xml", docx_document("")}}), messages::no_text.text},
          {zip_of({{"word/document.xml", "<w:document><w:p>"}}), messages::damaged_part.text},
          {zip_of({{"word/document.xml", "x", true}}), messages::locked_package.text},
          {zip_of({{"word/document.xml", std::string(std::size_t{9} << 20, ' ')}}),
           messages::too_large_package.text},
          {"PK\x03\x04 and no more"s, messages::damaged_package.text},
          {zip_of({{"word/document.xml", docx_document(paragraph("Ottoline"))}}).substr(0, 90),
           messages::damaged_package.text}}) {
        CAPTURE(one.message);
        CHECK(fault_of(one.bytes) == one.message);
    }
    CHECK(std::get<std::string>(read_old("/nowhere/old.pdf", test::old_readers())) ==
          "there is no such file");
    CHECK(std::get<std::string>(read_old("/", test::old_readers())) ==
          "it is a folder; name one document");
}

TEST_CASE("an archive within an archive is left packed, and macros are told of") {
    const std::string inner = zip_of({{"word/document.xml", docx_document(paragraph("Inner"))}});
    OldReaders readers = test::old_readers();
    readers.packages = opener;
    const auto old =
        read_old_bytes(zip_of({{"word/embeddings/inner.docx", inner},
                               {"word/vbaProject.bin", "x"},
                               {"word/document.xml", docx_document(paragraph("Ottoline Brandt"))}}),
                       readers);
    CHECK(shown(old) == "Ottoline Brandt\n");
    CHECK(std::get<OldDocument>(old).remarks ==
          std::vector<std::string>{std::string(messages::macros.text)});
}

TEST_CASE("of a text of more lines than any résumé has it is said that the rest was left") {
    const auto remarks_of = [](std::size_t lines, const std::string& line) {
        std::string text = "Ottoline Brandt\n";
        for (std::size_t i = 1; i < lines; ++i)
            text += line;
        return lines_of_text(text, [](std::string_view) { return false; }).remarks;
    };
    const std::vector<std::string> told{fill<messages::lines_left>(most_lines)};
    CHECK(remarks_of(most_lines, "tide\n").empty());
    CHECK(remarks_of(most_lines + 1, "tide\n") == told);
    CHECK(remarks_of(most_lines / 2, "tide\f").empty());
    CHECK(remarks_of(most_lines + 1, "tide\f") == told);
}

TEST_CASE("a .docx to lines (ECMA-376 part 1, section 17)") {
    const std::string item = "<w:numPr><w:ilvl w:val=\"0\"/><w:numId w:val=\"1\"/></w:numPr>";
    struct Case {
        std::string body, lines;
    };
    for (const Case& one :
         {Case{paragraph("Ottoline Brandt") + paragraph("Port Ellery"),
               "Ottoline Brandt\nPort Ellery\n"},
          {paragraph("Counted", item), "*Counted\n"},
          {paragraph("Counted", "<w:numPr><w:numId w:val=\"0\"/></w:numPr>"), "Counted\n"},
          {"<w:p><w:r><w:rPr><w:b/></w:rPr><w:t>Intern</w:t></w:r><w:r><w:tab/><w:t>2026</w:t>"
           "</w:r></w:p>",
           "!Intern | 2026\n"},
          {"<w:p><w:r><w:rPr><w:b w:val=\"0\"/></w:rPr><w:t>a</w:t><w:br/><w:t>b</w:t></w:r></w:p>",
           "a\nb\n"},
          {"<w:p><w:r><w:t>kept</w:t></w:r><w:del><w:r><w:delText>gone</w:delText></w:r></w:del>"
           "</w:p>",
           "kept\n"},
          {"<w:tbl><w:tr><w:tc>" + paragraph("2026") + "</w:tc><w:tc>" + paragraph("Intern") +
               paragraph("Counted", item) + "</w:tc></w:tr></w:tbl>",
           "2026 | Intern\n*Counted\n"},
          {"<w:p><w:r><w:t>a</w:t></w:r><w:r><mc:AlternateContent><mc:Choice><w:pict>"
           "<w:txbxContent>" +
               paragraph("box") +
               "</w:txbxContent></w:pict></mc:Choice><mc:Fallback><w:t>box</w:t></mc:Fallback>"
               "</mc:AlternateContent></w:r><w:r><w:t>rest</w:t></w:r></w:p>",
           "a\nbox\nrest\n"}}) {
        CAPTURE(one.body);
        CHECK(shown_docx(one.body) == one.lines);
    }
}

TEST_CASE("an .odt to lines (OpenDocument 1.3 part 3, sections 5 and 6)") {
    const std::string content =
        R"(<office:document-content xmlns:office="o" xmlns:text="t" xmlns:style="s" xmlns:fo="f">)"
        R"(<office:automatic-styles><style:style style:name="B"><style:text-properties )"
        R"(fo:font-weight="bold"/></style:style></office:automatic-styles><office:body>)"
        R"(<text:h text:outline-level="1">Skills</text:h><text:p><text:span text:style-name="B">)"
        R"(Data</text:span><text:tab/>R<text:s text:c="2"/>QGIS</text:p><text:list><text:list-item>)"
        R"(<text:p>Counted</text:p><text:p>again</text:p></text:list-item></text:list>)"
        R"(</office:body></office:document-content>)";
    CHECK(shown(lines_of_odt({{"content.xml", content}})) ==
          "Skills\n!Data | R QGIS\n*Counted\nagain\n");
}

namespace {

struct Silent : XmlHandler {
    void open(const XmlTag&) override {}
    void close(std::string_view) override {}
    void text(std::string_view text) override { all += text; }
    std::string all;
};

}

TEST_CASE("XML that would unfold, reach out or nest without end is refused") {
    Silent silent;
    CHECK(read_xml("<a>x &amp; y</a>", silent));
    CHECK(silent.all == "x & y");
    CHECK_FALSE(read_xml("<!DOCTYPE a [<!ENTITY b \"bb\">]><a>&b;&b;</a>", silent));
    CHECK_FALSE(read_xml("<!DOCTYPE a SYSTEM \"file:///etc/hostname\"><a>x</a>", silent));
    CHECK_FALSE(read_xml("<a><b></a>", silent));
    std::string deep;
    for (int i = 0; i < 5000; ++i)
        deep += "<a>";
    CHECK_FALSE(read_xml(deep, silent));
}

}
