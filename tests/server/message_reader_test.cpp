// The base protocol of the Language Server Protocol 3.17: header part, empty line, content part.
#include "compiler/server/message_reader.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace quoin::server;

namespace {

// Bodies as they are, faults as `!`.
std::string taken(MessageReader& reader) {
    std::string all;
    while (const auto message = reader.next())
        all += message->fault.empty() ? '[' + message->body + ']' : "!";
    return all;
}

}

TEST_CASE("message reader: whole messages, and what is none") {
    const struct {
        const char* bytes;
        const char* taken;
    } cases[] = {
        {"Content-Length: 2\r\n\r\n{}", "[{}]"},
        {"content-length:2\r\n\r\n{}Content-Length: 0\r\n\r\n", "[{}][]"},
        {"Content-Type: application/vscode-jsonrpc; charset=utf-8\r\nContent-Length: 2\r\n\r\n{}",
         "[{}]"},
        {"Content-Length: 3\r\n\r\n{}", ""},
        {"Content-Length: x\r\n\r\n{}", "!"},
        {"Content-Length: -1\r\n\r\nContent-Length: 2\r\n\r\n{}", "![{}]"},
        {"Content-Length: 99999999999999999999\r\n\r\nContent-Length: 2\r\n\r\n{}", "![{}]"},
        // a length that is too short leaves bytes over, one that is too long takes some of the next
        {"Content-Length: 1\r\n\r\n{}Content-Length: 2\r\n\r\n[]", "[{]![[]]"},
        {"Content-Length: 3\r\n\r\n{}Content-Length: 2\r\n\r\n{}Content-Length: 2\r\n\r\n[]",
         "[{}C]![[]]"},
        {"\r\n\r\n\r\n\r\n", "!"},
    };
    for (const auto& one : cases) {
        CAPTURE(one.bytes);
        MessageReader whole, piecemeal;
        whole.add(one.bytes);
        CHECK(taken(whole) == one.taken);
        std::string all;
        for (const char byte : std::string(one.bytes)) {
            piecemeal.add({&byte, 1});
            all += taken(piecemeal);
        }
        if (std::string(one.taken).find('!') == std::string::npos) CHECK(all == one.taken);
    }
}

TEST_CASE("message reader: a message that is too large is passed over, and the next one is read") {
    MessageReader reader;
    reader.add("Content-Length: " + std::to_string(most_message_bytes + 1) + "\r\n\r\n");
    CHECK(taken(reader) == "!");
    for (std::size_t sent = 0; sent < most_message_bytes; sent += most_message_bytes / 8)
        reader.add(std::string(most_message_bytes / 8, 'x'));
    CHECK(taken(reader) == "");
    reader.add("x" + framed("{}"));
    CHECK(taken(reader) == "[{}]");
}
