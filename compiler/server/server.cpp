#include "compiler/server/server.hpp"

#include "compiler/server/diagnostics.hpp"
#include "compiler/server/messages.hpp"
#include "compiler/server/whole_signs.hpp"

#include <algorithm>
#include <exception>

namespace quoin::server {

namespace {

constexpr int log_error = 1; // "MessageType"

bool is_id(const Json& id) {
    return id.is_number_integer() || id.is_string();
}

// `{"method": …}`, with an id of the kind that there is, if any.
bool is_message(const Json& message) {
    if (!message.is_object() || message.value("jsonrpc", Json{}) != "2.0") return false;
    if (message.contains("id") && !is_id(message["id"])) return false;
    return message.contains("method") && message["method"].is_string();
}

// To what was asked of the editor.
bool is_reply(const Json& message) {
    return message.is_object() && !message.contains("method") && message.contains("id") &&
           (message.contains("result") || message.contains("error"));
}

const Method* find_method(std::string_view name) {
    for (const Feature& feature : all_features()) {
        const auto found = std::ranges::find(feature.methods, name, &Method::name);
        if (found != feature.methods.end()) return &*found;
    }
    return nullptr;
}

bool offers(const Json& capabilities, const char* pointer, const Json& what) {
    const Json list = capabilities.value(Json::json_pointer(pointer), Json{});
    return list == what || (list.is_array() && std::ranges::find(list, what) != list.end());
}

}

Server::Server(session::Session& session, std::string version, Send send, PageMakers pages)
    : desk_{.session = session, .pages = std::move(pages)}, version_(std::move(version)),
      send_(std::move(send)) {
    desk_.notify = [this](std::string_view method, Json params) {
        this->send({{"method", method}, {"params", std::move(params)}});
    };
    desk_.ask = [this](std::string_view method, Json params) {
        this->send({{"id", ++asked_}, {"method", method}, {"params", std::move(params)}});
    };
}

void Server::send(Json message) {
    message["jsonrpc"] = "2.0";
    send_(framed(message.dump(-1, ' ', false, Json::error_handler_t::replace)));
}

void Server::send_error(const Json& id, const Refusal& refusal) {
    send({{"id", id},
          {"error", {{"code", static_cast<int>(refusal.code)}, {"message", refusal.text}}}});
}

// Of what nobody waits for.
void Server::tell_fault(const std::string& text) {
    if (phase_ == Phase::running)
        desk_.notify("window/logMessage", {{"type", log_error}, {"message", text}});
}

void Server::take(std::string_view bytes) {
    reader_.add(bytes);
    while (const auto message = reader_.next())
        take_message(*message);
}

void Server::take_message(const TakenMessage& taken) {
    if (!taken.fault.empty()) return send_error({}, {ErrorCode::parse_error, taken.fault});
    Json message;
    try {
        message = Json::parse(whole_signs(taken.body));
    } catch (const Json::parse_error& fault) {
        return send_error({}, {ErrorCode::parse_error, fill<messages::no_json>(fault.what())});
    }
    if (is_reply(message)) return;
    if (!is_message(message))
        return send_error({}, {ErrorCode::invalid_request, fill<messages::no_request>()});
    if (message["method"] == "$/cancelRequest") return take_cancellation(message);
    waiting_.push_back(std::move(message));
}

void Server::take_cancellation(const Json& message) {
    const Json id = message.value(Json::json_pointer("/params/id"), Json{});
    const auto found = std::ranges::find_if(
        waiting_, [&](const Json& one) { return one.contains("id") && one["id"] == id; });
    if (found == waiting_.end()) return; // it is answered
    waiting_.erase(found);
    send_error(id, {ErrorCode::request_cancelled, fill<messages::cancelled>()});
}

bool Server::step() {
    if (ended_) return false;
    if (!waiting_.empty()) {
        const Json message = std::move(waiting_.front());
        waiting_.pop_front();
        handle(message);
        return true;
    }
    if (!stale_ || phase_ != Phase::running) return false;
    stale_ = false;
    publish();
    return true;
}

void Server::disk_changed() {
    desk_.session.disk_changed();
    stale_ = true;
}

std::optional<Refusal> Server::out_of_phase(const std::string& method) const {
    if (method == "initialize") {
        if (phase_ == Phase::before_initialize) return std::nullopt;
        return Refusal{ErrorCode::invalid_request, fill<messages::initialized_twice>()};
    }
    if (phase_ == Phase::before_initialize)
        return Refusal{ErrorCode::server_not_initialized, fill<messages::not_initialized>(method)};
    if (phase_ == Phase::shut_down)
        return Refusal{ErrorCode::invalid_request, fill<messages::shut_down>(method)};
    return std::nullopt;
}

void Server::handle(const Json& message) {
    const auto method = message["method"].get<std::string>();
    if (method == "exit") {
        ended_ = phase_ == Phase::shut_down ? 0 : 1;
        return;
    }
    const bool is_request = message.contains("id");
    const Json params = message.value("params", Json::object());
    const auto refusal = out_of_phase(method);
    Answer answer = refusal ? Answer{*refusal} : answer_to(method, params);
    const auto* refused = std::get_if<Refusal>(&answer);
    if (is_request && refused)
        send_error(message["id"], *refused);
    else if (is_request)
        send({{"id", message["id"]}, {"result", std::get<Json>(std::move(answer))}});
    else if (refused && refused->code != ErrorCode::method_not_found)
        tell_fault(refused->text);
    stale_ = stale_ || !is_request;
}

Answer Server::answer_to(const std::string& method, const Json& params) {
    try {
        if (method == "initialize") return initialize(params);
        if (method == "initialized" || method == "$/setTrace") return Json{};
        if (method == "shutdown") {
            phase_ = Phase::shut_down;
            return Json{};
        }
        if (const Method* known = find_method(method)) return known->answer(desk_, params);
        return Refusal{ErrorCode::method_not_found, fill<messages::unknown_method>(method)};
    } catch (const Json::exception& fault) {
        return Refusal{ErrorCode::invalid_params, fill<messages::bad_params>(method, fault.what())};
    } catch (const std::exception& fault) { // this one is refused, and the others go on
        return Refusal{ErrorCode::internal_error, fill<messages::internal_error>(fault.what())};
    }
}

Answer Server::initialize(const Json& params) {
    const Json offered = params.value("capabilities", Json::object());
    const bool utf8 = offers(offered, "/general/positionEncodings", "utf-8");
    desk_.units = utf8 ? session::Units::utf8 : session::Units::utf16;
    desk_.takes_snippets =
        offers(offered, "/textDocument/completion/completionItem/snippetSupport", true);
    desk_.shows_lenses = offered.contains(Json::json_pointer("/textDocument/codeLens"));
    set_workspace(desk_, params);
    Json capabilities{{"positionEncoding", utf8 ? "utf-8" : "utf-16"}};
    for (const Feature& feature : all_features())
        feature.announce(capabilities);
    phase_ = Phase::running;
    return Json{{"capabilities", capabilities},
                {"serverInfo", {{"name", "quoin"}, {"version", version_}}}};
}

// A file that several résumés take in is told of once, with what is found in each.
void Server::publish() {
    std::map<std::filesystem::path, Json> found;
    for (const auto& [path, told] : told_)
        found[path] = Json::array();
    for (const auto& [root, state] : desk_.session.all_states())
        for (auto& [path, diagnostics] : diagnostics_of(desk_, *state)) {
            Json& all = found.try_emplace(path, Json::array()).first->second;
            for (Json& one : diagnostics)
                if (std::ranges::find(all, one) == all.end()) all.push_back(std::move(one));
        }
    for (auto& [path, diagnostics] : found)
        publish_for(path, std::move(diagnostics));
}

void Server::publish_for(const std::filesystem::path& path, Json diagnostics) {
    const session::Document* document = desk_.session.find(path);
    const std::int64_t version = document ? document->version : 0;
    const auto told = told_.find(path);
    if (told == told_.end() && diagnostics.empty() && !document) return;
    if (told != told_.end() && told->second.diagnostics == diagnostics &&
        told->second.version == version)
        return;
    Json params{{"uri", desk_.uri_of(path)}, {"diagnostics", diagnostics}};
    if (document) params["version"] = version;
    if (!document && diagnostics.empty())
        told_.erase(path);
    else
        told_[path] = {std::move(diagnostics), version};
    desk_.notify("textDocument/publishDiagnostics", std::move(params));
}

}
