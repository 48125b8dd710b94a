// An editor in the process of the server, for tests: what it says, and all that comes back.
#pragma once

#include "compiler/server/server.hpp"
#include "tests/advice/proofread.hpp"

#include <doctest/doctest.h>

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace quoin::fixtures {

using server::Json;

class EditorInProcess {
public:
    EditorInProcess()
        : session_({QUOIN_DATA_FOLDER, fonts(), language(), read_on, {{}, true}}),
          server_(session_, "1.2.3", [this](std::string_view bytes) { hear(bytes); },
                  {.marked = [](const advice::Proofread&) { return std::string("%PDF-marked"); },
                   .for_posting = [](const auto&, const std::filesystem::path& posting,
                                     const auto&) -> server::PostingPage {
                       if (posting.extension() == ".txt") return {"%PDF-for-posting", {}};
                       return {{}, "no posting"};
                   }}) {}

    // Begun, with the units it offers.
    static inline const Json utf16 = {{"capabilities", Json::object()}};
    static inline const Json utf8 = {
        {"capabilities", {{"general", {{"positionEncodings", {"utf-8", "utf-16"}}}}}}};
    Json begin(const Json& params = utf16) {
        Json answer = ask("initialize", params);
        tell("initialized", Json::object());
        return answer;
    }

    void send(const std::string& body) { server_.take(server::framed(body)); }
    void send_raw(std::string_view bytes) { server_.take(bytes); }
    void work() {
        while (server_.step()) {
        }
    }
    // The whole answer: `result` or `error`.
    Json ask(std::string_view method, Json params) {
        const std::int64_t id = ++asked_;
        say({{"id", id}, {"method", method}, {"params", std::move(params)}});
        work();
        for (const Json& one : heard_)
            if (one.value("id", Json{}) == id && !one.contains("method")) return one;
        FAIL_CHECK("no answer to " << method);
        return {};
    }
    void tell(std::string_view method, Json params) {
        say({{"method", method}, {"params", std::move(params)}});
    }
    void say(Json message) {
        message["jsonrpc"] = "2.0";
        send(message.dump());
    }
    void open(const std::string& uri, const std::string& text) {
        tell("textDocument/didOpen",
             {{"textDocument", {{"uri", uri}, {"version", 1}, {"text", text}}}});
        work();
    }
    // The diagnostics last told of a document; null if none ever were.
    Json diagnostics(const std::string& uri) const {
        for (auto one = heard_.rbegin(); one != heard_.rend(); ++one)
            if (one->value("method", "") == "textDocument/publishDiagnostics" &&
                (*one)["params"]["uri"] == uri)
                return (*one)["params"]["diagnostics"];
        return {};
    }
    const std::vector<Json>& heard() const { return heard_; }
    server::Server& server() { return server_; }
    session::Session& session() { return session_; }

private:
    void hear(std::string_view bytes) {
        server::MessageReader reader;
        reader.add(bytes);
        const auto message = reader.next();
        REQUIRE(message);
        heard_.push_back(Json::parse(message->body));
        CHECK(heard_.back()["jsonrpc"] == "2.0");
    }

    session::Session session_;
    server::Server server_;
    std::vector<Json> heard_;
    std::int64_t asked_ = 0;
};

// Of a document of its own.
inline Json at(const std::string& uri, std::uint32_t line, std::uint32_t character) {
    return {{"textDocument", {{"uri", uri}}},
            {"position", {{"line", line}, {"character", character}}}};
}

}
