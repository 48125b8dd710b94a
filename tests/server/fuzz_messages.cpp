// Any bytes at all as what an editor sends: nothing crashes or hangs, and what goes out is framed
// JSON.
#include "compiler/server/server.hpp"

#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <memory>
#include <string>

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
    server.take(message(R"("method":"textDocument/didOpen","params":{"textDocument":)"
                        R"({"uri":"untitled:a","text":"name: Ottoline Brandt\n"}})"));
    server.take(std::string(data, data + size));
    while (server.step()) {
    }
    return 0;
}

}
