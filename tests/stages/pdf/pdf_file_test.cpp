// The file around a PDF's objects, against a slow reader of it (ISO 32000-1, section 7.5) and
// zlib's own way back.
#include "compiler/stages/pdf/cross_references.hpp"
#include "compiler/stages/pdf/deflate.hpp"
#include "compiler/stages/pdf/file_writer.hpp"
#include "compiler/stages/pdf/object_streams.hpp"

#include <doctest/doctest.h>

#include <zlib.h>

#include <sstream>
#include <string>
#include <vector>

using namespace quoin;
using namespace quoin::pdf;

namespace {

std::string inflated(const std::string& packed) {
    std::string bytes(1 << 20, '\0');
    uLongf size = bytes.size();
    REQUIRE(uncompress(reinterpret_cast<Bytef*>(bytes.data()), &size,
                       reinterpret_cast<const Bytef*>(packed.data()), packed.size()) == Z_OK);
    return bytes.substr(0, size);
}

// The numbers after `key`, until something else comes; none if there is no such key.
std::vector<std::size_t> numbers(const std::string& dictionary, const std::string& key) {
    const std::size_t at = dictionary.find(key);
    if (at == std::string::npos) return {};
    std::istringstream text(dictionary.substr(at + key.size()));
    if (text.peek() == '[') text.get();
    std::vector<std::size_t> found;
    for (std::size_t value = 0; text >> value;)
        found.push_back(value);
    return found;
}

std::size_t number(const std::string& dictionary, const std::string& key) {
    const std::vector<std::size_t> found = numbers(dictionary, key);
    REQUIRE_FALSE(found.empty());
    return found.front();
}

std::string row_by_row(const std::string& predicted, std::size_t columns) { // PNG, 9.2, undone
    std::string bytes, above(columns, '\0');
    for (std::size_t at = 0; at < predicted.size(); at += columns + 1) {
        REQUIRE(predicted[at] == 2);
        for (std::size_t i = 0; i < columns; ++i)
            above[i] = static_cast<char>(above[i] + predicted[at + 1 + i]);
        bytes += above;
    }
    return bytes;
}

std::string decoded(const std::string& dictionary, const std::string& data) {
    const std::string bytes = inflated(data);
    if (dictionary.find("/Predictor 12") == std::string::npos) return bytes;
    return row_by_row(bytes, number(dictionary, "/Columns "));
}

std::vector<CrossReference> entries(const std::string& dictionary, const std::string& data) {
    const std::vector<std::size_t> widths = numbers(dictionary, "/W");
    REQUIRE(widths.size() == 3);
    const std::string bytes = decoded(dictionary, data);
    std::vector<CrossReference> found;
    for (std::size_t at = 0; at < bytes.size();) {
        std::size_t fields[3] = {};
        for (int field = 0; field < 3; ++field)
            for (std::size_t i = 0; i < widths[static_cast<std::size_t>(field)]; ++i)
                fields[field] = fields[field] << 8 | static_cast<unsigned char>(bytes.at(at++));
        found.push_back({static_cast<CrossReference::Kind>(fields[0]), fields[1],
                         static_cast<std::uint32_t>(fields[2])});
    }
    CHECK(found.size() == number(dictionary, "/Size "));
    return found;
}

class SlowReader {
public:
    explicit SlowReader(const std::string& file) : file_(file) {
        const FileObject trailer = unpacked(number(file_.substr(file_.rfind("startxref\n")), "\n"));
        trailer_ = trailer.text;
        places_ = entries(trailer.text, trailer.stream.value());
    }

    const std::string& trailer() const { return trailer_; }
    const std::vector<CrossReference>& places() const { return places_; }

    FileObject object(std::size_t wanted) const {
        const CrossReference& place = places_.at(wanted);
        if (place.kind == CrossReference::Kind::in_object_stream) return packed(wanted);
        REQUIRE(place.kind == CrossReference::Kind::in_file);
        const std::string head =
            std::to_string(wanted) + ' ' + std::to_string(place.detail) + " obj\n";
        CHECK(file_.substr(place.place, head.size()) == head);
        CHECK(file_.at(place.place - 1) == '\n');
        FileObject found = unpacked(place.place);
        found.generation = static_cast<std::uint16_t>(place.detail);
        return found;
    }

private:
    FileObject unpacked(std::size_t offset) const {
        const std::size_t from = file_.find("obj\n", offset) + 4,
                          stream = file_.find("\nstream\n", from),
                          end = file_.find("\nendobj\n", from);
        if (end < stream) return {file_.substr(from, end - from), {}, 0};
        const std::string dictionary = file_.substr(from, stream - from);
        const std::size_t length = number(dictionary, "/Length ");
        CHECK(file_.substr(stream + 8 + length, 18) == "\nendstream\nendobj\n");
        return {dictionary, file_.substr(stream + 8, length), 0};
    }

    FileObject packed(std::size_t wanted) const {
        const FileObject stream = object(places_[wanted].place);
        CHECK(stream.text.starts_with("<</Type/ObjStm"));
        const std::string bytes = inflated(stream.stream.value());
        const std::size_t first = number(stream.text, "/First ");
        const std::vector<std::size_t> pairs = numbers(bytes.substr(0, first), "");
        CHECK(pairs.size() == 2 * number(stream.text, "/N "));
        const std::size_t index = places_[wanted].detail;
        CHECK(pairs.at(2 * index) == wanted);
        const std::size_t from = first + pairs[2 * index + 1];
        return {bytes.substr(from, bytes.find('\n', from) - from), {}, 0};
    }

    std::string file_, trailer_;
    std::vector<CrossReference> places_;
};

FileObject stream_of(const std::string& bytes) {
    return {"<</Length " + std::to_string(bytes.size()) + ">>", bytes, 0};
}

std::vector<FileObject> spans(std::size_t count) {
    std::vector<FileObject> objects;
    for (std::size_t i = 1; i <= count; ++i)
        objects.push_back({"<</S/Span/K " + std::to_string(i * i) + ">>", {}, 0});
    return objects;
}

std::vector<FileObject> mixed() {
    std::vector<FileObject> objects = spans(300);
    objects[0] = stream_of("");
    objects[7] = stream_of("a\nendstream\nb");
    objects[8] = {"(of an older generation)", {}, 3};
    objects[299] = stream_of(std::string("\0\r\n", 3));
    return objects;
}

void check_read_back(const std::vector<FileObject>& objects, std::size_t object_streams) {
    const SlowReader reader(write_file(objects, 1, 2));
    REQUIRE(reader.places().size() == 1 + objects.size() + object_streams + 1);
    CHECK(reader.places()[0].kind == CrossReference::Kind::free);
    for (std::size_t i = 0; i < objects.size(); ++i) {
        const FileObject found = reader.object(i + 1);
        CHECK(found.text == objects[i].text);
        CHECK((found.stream == objects[i].stream));
        CHECK(found.generation == objects[i].generation);
    }
}

}

TEST_SUITE("pdf file") {
    TEST_CASE("what is written is read back: no object, one, many; one object stream and more") {
        check_read_back({}, 0);
        check_read_back(spans(1), 1);
        check_read_back({stream_of("x")}, 0);
        check_read_back(spans(255), 1);
        check_read_back(spans(256), 1);
        check_read_back(spans(257), 2);
        check_read_back(spans(700), 3);
        check_read_back(mixed(), 2);
    }

    TEST_CASE("offsets take as many bytes as the greatest needs") {
        const auto width = [](std::size_t bytes) {
            const std::vector<FileObject> objects{stream_of(std::string(bytes, 'x')), {"1", {}, 0}};
            check_read_back(objects, 1);
            return numbers(SlowReader(write_file(objects, 1, 2)).trailer(), "/W");
        };
        using Widths = std::vector<std::size_t>;
        CHECK(width(0) == Widths{1, 1, 1});
        CHECK(width(300) == Widths{1, 2, 1});
        CHECK(width(70'000) == Widths{1, 3, 1});
        CHECK(width(17'000'000) == Widths{1, 4, 1});
    }

    TEST_CASE("what may be in no object stream is in none: 7.5.7") {
        const SlowReader reader(write_file(mixed(), 1, 2));
        for (const std::size_t number : {1U, 8U, 9U, 300U})
            CHECK(reader.places()[number].kind == CrossReference::Kind::in_file);
        for (const std::size_t number : {2U, 7U, 10U, 299U})
            CHECK(reader.places()[number].kind == CrossReference::Kind::in_object_stream);
    }

    TEST_CASE("header, end and identifier: 7.5.2, 7.5.5, 14.4; PDF/A-2, 6.1.2 and 6.1.3") {
        const std::string file = write_file(spans(3), 3, 2);
        CHECK(file.starts_with("%PDF-1.7\n%"));
        for (std::size_t i = 10; i < 14; ++i)
            CHECK(static_cast<unsigned char>(file[i]) > 127);
        CHECK(file[14] == '\n');
        CHECK(file.ends_with("\n%%EOF\n"));
        const std::string trailer = SlowReader(file).trailer();
        CHECK(trailer.find("/Root 3 0 R/Info 2 0 R") != std::string::npos);
        const std::size_t first = trailer.find("/ID[<") + 5;
        CHECK(trailer.substr(first, 32) == trailer.substr(first + 34, 32));
        CHECK(trailer.substr(first + 32, 2) == "><");
        CHECK(trailer.substr(first + 66, 2) == ">]");
        CHECK(file == write_file(spans(3), 3, 2));
        std::vector<FileObject> others = spans(3);
        others[1].text = "<</S/Span/K 5>>";
        const std::string other = SlowReader(write_file(others, 3, 2)).trailer();
        CHECK(other.substr(other.find("/ID[<") + 5, 32) != trailer.substr(first, 32));
    }

    TEST_CASE("an object stream: the numbers and offsets before the objects, table 16") {
        const std::vector<PackedObject> objects{{11, "<</A 1>>"}, {12, "[7]"}, {13, "(x)"}};
        const ObjectStream stream = object_stream(objects);
        CHECK(stream.dictionary == "<</Type/ObjStm/N 3/First 16");
        CHECK(stream.data == "11 0 12 9 13 13\n<</A 1>>\n[7]\n(x)\n");
    }

    TEST_CASE("a cross-reference stream: fields and their widths, tables 17 and 18") {
        using enum CrossReference::Kind;
        struct Case {
            CrossReference last;
            std::string widths;
        };
        for (const Case& each :
             {Case{{in_file, 15, 0}, "/W[1 1 1]"}, Case{{in_file, 255, 0}, "/W[1 1 1]"},
              Case{{in_file, 256, 65535}, "/W[1 2 2]"}, Case{{in_file, 0xFFFFFF, 0}, "/W[1 3 1]"},
              Case{{in_file, 0xFFFFFFFFFF, 0}, "/W[1 5 1]"},
              Case{{in_object_stream, 7, 256}, "/W[1 1 2]"}}) {
            const std::vector<CrossReference> places{{}, {in_object_stream, 3, 1}, each.last};
            const CrossReferenceStream stream = cross_reference_stream(places);
            CHECK(stream.dictionary.find("<</Type/XRef/Size 3" + each.widths) == 0);
            const CrossReference found = entries(stream.dictionary, stream.data).at(2);
            CHECK(found.kind == each.last.kind);
            CHECK(found.place == each.last.place);
            CHECK(found.detail == each.last.detail);
        }
    }

    TEST_CASE("a cross-reference stream is predicted where that is shorter: 7.4.4.4") {
        std::vector<CrossReference> places(400);
        CHECK(cross_reference_stream({places.data(), 2}).dictionary.find("Predictor") ==
              std::string::npos);
        for (std::uint32_t i = 1; i < 400; ++i)
            places[i] = {CrossReference::Kind::in_object_stream, 500, i};
        const CrossReferenceStream stream = cross_reference_stream(places);
        CHECK(stream.dictionary.find("/DecodeParms<</Predictor 12/Columns 5>>") !=
              std::string::npos);
        CHECK(stream.data.size() < 60);
        CHECK(entries(stream.dictionary, stream.data).at(399).detail == 399);
    }

    TEST_CASE("Up, of PNG's 9.2, each byte modulo 256") {
        CHECK(less_the_row_above("", 4).empty());
        CHECK(less_the_row_above("ab", 2) == "\2ab");
        CHECK(less_the_row_above("abbb", 2) == std::string("\2ab\2\1\0", 6));
        CHECK(less_the_row_above("ba", 1) == "\2b\2\xFF");
    }

    TEST_CASE("Flate: zlib reads it back") {
        for (const std::string& bytes :
             {std::string(), std::string("x"), std::string(5000, 'y'), std::string("\0\1\2", 3)})
            CHECK(inflated(deflate(bytes)) == bytes);
    }
}
