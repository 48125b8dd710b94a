// Streams first, then the object streams, then the cross-reference stream, which has the trailer's
// keys.
#include "compiler/stages/pdf/file_writer.hpp"

#include "compiler/base/digest.hpp"
#include "compiler/stages/pdf/cross_references.hpp"
#include "compiler/stages/pdf/deflate.hpp"
#include "compiler/stages/pdf/object_streams.hpp"
#include "compiler/stages/pdf/unicode.hpp"

#include <algorithm>
#include <vector>

namespace quoin::pdf {

namespace {

// The second line tells programs that move files that this one is not text (PDF/A-2, 6.1.2).
constexpr std::string_view header = "%PDF-1.7\n%\xE2\xE3\xCF\xD3\n";

bool may_be_packed(const FileObject& object) {
    return !object.stream && object.generation == 0;
}

class FileWriter {
public:
    explicit FileWriter(std::span<const FileObject> objects)
        : objects_(objects), places_(objects.size() + 1) {}

    std::string write(std::uint32_t root, std::uint32_t info);

private:
    void begin_object(std::uint32_t number, std::uint32_t generation);
    void end_object(const std::optional<std::string>& stream);
    void write_unpacked();
    void write_packed();
    void write_object_stream(std::span<const PackedObject> objects);
    void write_cross_references(std::uint32_t root, std::uint32_t info);

    std::span<const FileObject> objects_;
    std::vector<CrossReference> places_; // of object 0, 1, 2, …
    std::string file_{header};
};

// PDF/A-2, 6.1.9: each of `obj` and `endobj` ends its line, and the object's number begins one.
void FileWriter::begin_object(std::uint32_t number, std::uint32_t generation) {
    places_.at(number) = {CrossReference::Kind::in_file, file_.size(), generation};
    file_ += std::to_string(number) + ' ' + std::to_string(generation) + " obj\n";
}

// PDF/A-2, 6.1.7.1: `endstream` begins a line, whose end before it is not part of the data.
void FileWriter::end_object(const std::optional<std::string>& stream) {
    if (stream) file_ += "\nstream\n" + *stream + "\nendstream";
    file_ += "\nendobj\n";
}

void FileWriter::write_unpacked() {
    for (std::uint32_t i = 0; i < objects_.size(); ++i) {
        if (may_be_packed(objects_[i])) continue;
        begin_object(i + 1, objects_[i].generation);
        file_ += objects_[i].text;
        end_object(objects_[i].stream);
    }
}

void FileWriter::write_packed() {
    std::vector<PackedObject> packed;
    for (std::uint32_t i = 0; i < objects_.size(); ++i)
        if (may_be_packed(objects_[i])) packed.push_back({i + 1, objects_[i].text});
    for (std::span<const PackedObject> left = packed; !left.empty();) {
        const std::size_t count = std::min(left.size(), most_in_object_stream);
        write_object_stream(left.first(count));
        left = left.subspan(count);
    }
}

void FileWriter::write_object_stream(std::span<const PackedObject> objects) {
    const auto number = static_cast<std::uint32_t>(places_.size());
    for (std::uint32_t i = 0; i < objects.size(); ++i)
        places_[objects[i].number] = {CrossReference::Kind::in_object_stream, number, i};
    const ObjectStream stream = object_stream(objects);
    const std::string data = deflate(stream.data);
    places_.emplace_back();
    begin_object(number, 0);
    file_ += stream.dictionary + "/Filter/FlateDecode/Length " + std::to_string(data.size()) + ">>";
    end_object(data);
}

// The stream has itself among its objects. Section 14.4: both strings of a new file's identifier
// are the same; all that tells two files apart stands before them.
void FileWriter::write_cross_references(std::uint32_t root, std::uint32_t info) {
    std::string identifier = "<";
    append_hex(identifier, md5(file_));
    identifier += '>';
    const std::size_t place = file_.size();
    places_.emplace_back();
    begin_object(static_cast<std::uint32_t>(places_.size() - 1), 0);
    const CrossReferenceStream stream = cross_reference_stream(places_);
    file_ += stream.dictionary + "/Root " + std::to_string(root) + " 0 R/Info " +
             std::to_string(info) + " 0 R/ID[" + identifier + identifier +
             "]/Filter/FlateDecode/Length " + std::to_string(stream.data.size()) + ">>";
    end_object(stream.data);
    file_ += "startxref\n" + std::to_string(place) + "\n%%EOF\n";
}

std::string FileWriter::write(std::uint32_t root, std::uint32_t info) {
    write_unpacked();
    write_packed();
    write_cross_references(root, info);
    return std::move(file_);
}

}

std::string write_file(std::span<const FileObject> objects, std::uint32_t root,
                       std::uint32_t info) {
    return FileWriter(objects).write(root, info);
}

}
