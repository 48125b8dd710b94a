// The language server: messages in, messages out (JSON-RPC 2.0; Language Server Protocol 3.17). All
// that has come is known before the next thing is done, so that what was cancelled is not begun and
// only the newest text is told of.
#pragma once

#include "compiler/server/desk.hpp"
#include "compiler/server/message_reader.hpp"

#include <cstdint>
#include <deque>
#include <filesystem>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace quoin::server {

class Server {
public:
    using Send = std::function<void(std::string_view bytes)>; // to the editor
    Server(session::Session& session, std::string version, Send send, PageMakers pages);

    Server(const Server&) = delete; // its desk speaks through it
    Server& operator=(const Server&) = delete;

    void take(std::string_view bytes); // from the editor
    // Answers one message or, when none waits, tells what is found of the newest text. False if
    // there was nothing to do.
    bool step();
    void disk_changed(); // of the files that the session reads
    // Once `exit` has come: 0 after `shutdown`, else 1.
    std::optional<int> ended() const { return ended_; }

private:
    enum class Phase { before_initialize, running, shut_down };

    void send(Json message);
    void send_error(const Json& id, const Refusal& refusal);
    void tell_fault(const std::string& text);
    void take_message(const TakenMessage& message);
    void take_cancellation(const Json& message);
    void handle(const Json& message);
    std::optional<Refusal> out_of_phase(const std::string& method) const;
    Answer answer_to(const std::string& method, const Json& params);
    Answer initialize(const Json& params);
    void publish();
    void publish_for(const std::filesystem::path& path, Json diagnostics);

    Desk desk_;
    std::string version_;
    Send send_;
    MessageReader reader_;
    std::deque<Json> waiting_;
    Phase phase_ = Phase::before_initialize;
    bool stale_ = false; // something is to be told
    std::int64_t asked_ = 0;
    std::optional<int> ended_;

    struct Told { // of a file, last
        Json diagnostics;
        std::int64_t version = 0;
    };
    std::map<std::filesystem::path, Told> told_;
};

}
