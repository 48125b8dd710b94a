// Messages out of a stream of bytes, as the base protocol of the Language Server Protocol 3.17
// frames them: header fields, an empty line, and as many bytes as `Content-Length` says.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace quoin::server {

// The size of a message that is taken in; of a larger one nothing is kept.
constexpr std::size_t most_message_bytes = std::size_t{64} << 20;

struct TakenMessage {
    std::string body;
    std::string fault; // why there is no body; what follows is read again from the next header
};

class MessageReader {
public:
    void add(std::string_view bytes) { bytes_ += bytes; }
    // None if more bytes are needed.
    std::optional<TakenMessage> next();

private:
    std::optional<TakenMessage> skip_to_header();
    bool drop_rest();

    std::string bytes_;
    std::size_t to_drop_ = 0; // of a message that is too large
};

// A message framed for sending.
std::string framed(std::string_view body);

}
