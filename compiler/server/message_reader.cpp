#include "compiler/server/message_reader.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/numbers.hpp"
#include "compiler/server/messages.hpp"

#include <algorithm>
#include <utility>

namespace quoin::server {

namespace {

constexpr std::string_view length_field = "content-length:";
constexpr std::string_view header_end = "\r\n\r\n";
constexpr std::size_t longest_header = 4096; // bytes; that of an editor has some thirty

// Of the field that says it; none if no line does, or not in figures.
std::optional<std::size_t> content_length(std::string_view header) {
    while (!header.empty()) {
        const std::string_view line = header.substr(0, header.find("\r\n"));
        header.remove_prefix(std::min(line.size() + 2, header.size()));
        if (!lower_case(line.substr(0, length_field.size())).starts_with(length_field)) continue;
        const std::string_view figures = trimmed(line.substr(length_field.size()));
        if (const auto length = number_from<std::size_t>(figures)) return length;
    }
    return std::nullopt;
}

// Where a header may begin behind what is none; npos if nowhere.
std::size_t next_header(const std::string& bytes) {
    const auto found =
        std::search(bytes.begin() + 1, bytes.end(), length_field.begin(), length_field.end(),
                    [](char a, char b) { return small_letter(a) == b; });
    return found == bytes.end() ? bytes.npos : static_cast<std::size_t>(found - bytes.begin());
}

}

bool MessageReader::drop_rest() {
    const std::size_t dropped = std::min(to_drop_, bytes_.size());
    bytes_.erase(0, dropped);
    to_drop_ -= dropped;
    return to_drop_ == 0;
}

std::optional<TakenMessage> MessageReader::skip_to_header() {
    const std::size_t begin = next_header(bytes_);
    bytes_.erase(0, begin == bytes_.npos ? bytes_.size() : begin);
    return TakenMessage{{}, fill<messages::no_header>()};
}

std::optional<TakenMessage> MessageReader::next() {
    if (!drop_rest() || bytes_.empty()) return std::nullopt;
    const std::size_t end = bytes_.find(header_end);
    if (end > longest_header) {
        if (end == bytes_.npos && bytes_.size() <= longest_header) return std::nullopt;
        return skip_to_header();
    }
    const auto length = content_length(std::string_view(bytes_).substr(0, end + 2));
    if (!length) return skip_to_header();
    const std::size_t begin = end + header_end.size();
    if (*length > most_message_bytes) {
        bytes_.erase(0, begin);
        to_drop_ = *length;
        return TakenMessage{{}, fill<messages::message_too_large>(*length, most_message_bytes)};
    }
    if (bytes_.size() - begin < *length) return std::nullopt;
    TakenMessage taken{bytes_.substr(begin, *length), {}};
    bytes_.erase(0, begin + *length);
    return taken;
}

std::string framed(std::string_view body) {
    return "Content-Length: " + std::to_string(body.size()) + "\r\n\r\n" + std::string(body);
}

}
