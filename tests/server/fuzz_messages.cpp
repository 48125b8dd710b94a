// Any bytes at all as what an editor sends: nothing crashes or hangs, and what goes out is framed
// JSON. The first byte tells whether a document is open before, and whether the rest is a stream or
// a message a line.
#include "compiler/server/server.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>

namespace quoin::server {

namespace {

fonts::Fonts& fonts_of_target() {
    static const std::unique_ptr<fonts::Fonts> all = [] {
        Sources sources;
        Diagnostics diagnostics;
        return fonts::Fonts::open(sources, std::filesystem::path(QUOIN_DATA_FOLDER) / "fonts",
                                  diagnostics);
    }();
    return *all;
}

const english::Language& language_of_target() {
    static const english::Language one{std::filesystem::path(QUOIN_DATA_FOLDER)};
    return one;
}

void require_json(std::string_view bytes) {
    MessageReader reader;
    reader.add(bytes);
    const auto message = reader.next();
    if (!message || !Json::accept(message->body) || reader.next()) std::abort();
}

std::string message(const std::string& body) {
    return framed(R"({"jsonrpc":"2.0",)" + body + "}");
}

}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    session::Session session(
        {QUOIN_DATA_FOLDER, fonts_of_target(), language_of_target(), {2026, 11, std::nullopt, 20}});
    Server server(session, "0", require_json, {});
    server.take(message(R"("id":1,"method":"initialize","params":{})"));
    const std::string input(data, data + size);
    const unsigned form = size == 0 ? 0 : data[0];
    if ((form & 8U) != 0)
        server.take(message(R"("method":"textDocument/didOpen","params":{"textDocument":)"
                            R"({"uri":"untitled:a","text":"name: Ottoline Brandt\n"}})"));
    const std::string_view rest = std::string_view(input).substr(std::min<std::size_t>(1, size));
    if ((form & 1U) != 0)
        server.take(rest);
    else
        for (std::size_t begin = 0; begin < rest.size();) {
            const std::size_t end = std::min(rest.find('\n', begin), rest.size());
            server.take(framed(rest.substr(begin, end - begin)));
            begin = end + 1;
        }
    while (server.step()) {
    }
    return 0;
}

}
