// What no tool prints, or only at the cost of a process. Nothing of the file's structure is
// interpreted but where streams begin and end (ISO 32000-1, sections 7.3.8 and 7.5.7); zlib unpacks
// them into a space of fixed size.
#include "compiler/portal/document_facts.hpp"
#include "compiler/portal/marked_text.hpp"

#include <zlib.h>

#include <algorithm>
#include <array>
#include <vector>

namespace quoin::portal {

namespace {

constexpr std::size_t most_of_one = std::size_t{1} << 20, most_streams = 64;
constexpr std::size_t longest_dictionary = 4096;
constexpr std::string_view delimiters = "()<>[]{}/% \t\r\n\f";

bool has_name(std::string_view bytes, std::string_view name) {
    for (std::size_t at = bytes.find(name); at != std::string_view::npos;
         at = bytes.find(name, at + 1)) {
        const std::size_t end = at + name.size();
        if (end == bytes.size() || delimiters.find(bytes[end]) != std::string_view::npos ||
            bytes[end] == '\0')
            return true;
    }
    return false;
}

void look_in(std::string_view bytes, RawNames& found) {
    found.language = found.language || has_name(bytes, "/Lang");
    found.attachments = found.attachments || has_name(bytes, "/EF");
    found.script = found.script || has_name(bytes, "/JavaScript");
}

// As much as fits; none if it is not packed by zlib.
std::optional<std::string_view> unpack(std::string_view packed, std::vector<char>& space) {
    z_stream stream{};
    if (inflateInit(&stream) != Z_OK) return std::nullopt;
    // zlib's interface has no const; it does not write to its input
    stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(packed.data()));
    stream.avail_in = static_cast<uInt>(packed.size());
    stream.next_out = reinterpret_cast<Bytef*>(space.data());
    stream.avail_out = static_cast<uInt>(space.size());
    const int end = inflate(&stream, Z_FINISH);
    inflateEnd(&stream);
    if (end != Z_STREAM_END) return std::nullopt;
    return std::string_view(space.data(), space.size() - stream.avail_out);
}

// The bytes of the stream whose dictionary holds what is at `at`, and what may follow them.
std::optional<std::string_view> stream_after(std::string_view pdf, std::size_t at) {
    constexpr std::string_view keyword = "stream";
    const std::size_t found = pdf.substr(at, longest_dictionary).find(keyword);
    if (found == std::string_view::npos) return std::nullopt;
    std::size_t begin = at + found + keyword.size();
    for (const char end : {'\r', '\n'})
        if (begin < pdf.size() && pdf[begin] == end) ++begin;
    return pdf.substr(begin, 4 * most_of_one);
}

// What its dictionary says to be no content of a page.
bool is_no_content(std::string_view dictionary) {
    constexpr std::array<std::string_view, 11> names = {
        "/ObjStm",  "/XRef",    "/Metadata", "/Image",         "/EmbeddedFile", "/N",
        "/Length1", "/Length2", "/Type1C",   "/CIDFontType0C", "/CIDSystemInfo"};
    return std::ranges::any_of(names,
                               [&](std::string_view name) { return has_name(dictionary, name); });
}

// The dictionary before the keyword at `at`.
std::string_view dictionary_before(std::string_view pdf, std::size_t at) {
    const std::size_t from = at - std::min(at, longest_dictionary);
    const std::string_view before = pdf.substr(from, at - from);
    const std::size_t object = before.rfind(" obj");
    return object == before.npos ? std::string_view() : before.substr(object);
}

// In every stream that may be a page's.
bool marks_all_text(std::string_view pdf, std::vector<char>& space) {
    constexpr std::string_view closing = "endstream";
    std::size_t at = 0, contents = 0;
    while ((at = pdf.find("stream", at)) != pdf.npos) {
        const std::string_view dictionary = dictionary_before(pdf, at);
        if (!is_no_content(dictionary)) {
            const auto packed = stream_after(pdf, at);
            const auto content = packed ? unpack(*packed, space) : std::nullopt;
            if (++contents > most_streams || !content || !all_text_is_marked(*content))
                return false;
        }
        const std::size_t end = pdf.find(closing, at);
        if (end == pdf.npos) return false;
        at = end + closing.size();
    }
    return contents > 0;
}

}

RawNames read_names(std::string_view pdf) {
    RawNames found;
    look_in(pdf, found);
    std::vector<char> space;
    std::size_t streams = 0;
    for (std::size_t at = pdf.find("/ObjStm"); at != std::string_view::npos;
         at = pdf.find("/ObjStm", at + 1)) {
        space.resize(most_of_one);
        const auto packed = ++streams <= most_streams ? stream_after(pdf, at) : std::nullopt;
        const auto bytes = packed ? unpack(*packed, space) : std::nullopt;
        if (bytes)
            look_in(*bytes, found);
        else
            found.all_could_be_read = false;
        if (streams > most_streams) break;
    }
    space.resize(most_of_one);
    found.all_text_marked = marks_all_text(pdf, space);
    return found;
}

}
