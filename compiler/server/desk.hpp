// What the features of the language server work with, and how they answer.
#pragma once

#include "compiler/session/session.hpp"

#include <nlohmann/json.hpp>

#include <filesystem>
#include <functional>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>

namespace quoin::server {

using Json = nlohmann::json;

enum class ErrorCode { // JSON-RPC 2.0, section 5.1; Language Server Protocol 3.17, "Error codes"
    parse_error = -32700,
    invalid_request = -32600,
    method_not_found = -32601,
    invalid_params = -32602,
    internal_error = -32603,
    server_not_initialized = -32002,
    request_failed = -32803,
    request_cancelled = -32800,
};

struct Refusal {
    ErrorCode code{};
    std::string text;
};
using Answer = std::variant<Json, Refusal>;

// What an editor may have carried out by its name ("workspace/executeCommand").
constexpr std::string_view set_command = "quoin.set", mend_command = "quoin.mend",
                           marked_command = "quoin.marked";

// The page of what was typeset with its findings noted: the bytes of a PDF.
using MarkedPage = std::function<std::string(const advice::Proofread& read)>;

// The page of what serves a posting best of a résumé, by the newest texts: the bytes of a PDF, or
// why there is none.
struct PostingPage {
    std::string pdf, fault;
};
using PageForPosting = std::function<PostingPage(const std::filesystem::path& resume,
                                                 const std::filesystem::path& posting,
                                                 const stages::Choices& choices)>;

struct PageMakers { // that stand on rooms below
    MarkedPage marked = {};
    PageForPosting for_posting = {};
};

struct Desk {
    session::Session& session;
    session::Units units = session::Units::utf16;           // as agreed
    bool takes_snippets = false;                            // the editor does
    bool shows_lenses = false;                              // lines of its own above the text's
    bool has_work_done = false;                             // shows progress that is told to it
    std::map<std::filesystem::path, std::string> uris = {}; // of documents, as the editor has them
    // A notification, or a request whose answer nobody waits for.
    std::function<void(std::string_view method, Json params)> notify = {};
    std::function<void(std::string_view method, Json params)> ask = {};

    PageMakers pages = {};

    std::string uri_of(const std::filesystem::path& path) const;
};

// Of `textDocument` in the parameters: what is open under its URI, else why there is none.
struct Addressed {
    std::filesystem::path path = {};
    const session::Document* document = nullptr;
    const session::State* state = nullptr; // by the newest text
    std::uint32_t file = 0;                // of the state
    Refusal refusal = {};
};
// With the state, which may have to be found first, or with the text alone.
Addressed addressed(Desk& desk, const Json& params);
Addressed addressed_text(Desk& desk, const Json& params);

bool is_resume(const Addressed& one); // the labels of others are others

session::Position position_from(const Json& json);
session::Range range_from(const Json& json);
Json to_json(session::Position position);
Json to_json(const session::Range& range);

struct Method {
    std::string_view name;
    Answer (*answer)(Desk& desk, const Json& params);
};

struct Feature {
    std::span<const Method> methods;
    void (*announce)(Json& capabilities);
};

// The folders that the parameters of `initialize` name.
void set_workspace(Desk& desk, const Json& initialize);

// One in each file of that name.
Feature synchronization_feature();
Feature code_actions_feature();
Feature page_hints_feature();
Feature commands_feature();
Feature completion_feature();
Feature hover_feature();
Feature outline_feature();
Feature semantic_tokens_feature();
Feature formatting_feature();
Feature tag_names_feature();
std::span<const Feature> all_features();

}
