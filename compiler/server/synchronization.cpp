// Documents opened, changed, saved and closed; folders of the workspace; files that changed on the
// disk.
#include "compiler/server/desk.hpp"
#include "compiler/server/messages.hpp"
#include "compiler/server/uris.hpp"

#include <utility>

namespace quoin::server {

namespace {

constexpr int incremental = 2; // "TextDocumentSyncKind"

Answer unknown_document(const std::string& uri) {
    return Refusal{ErrorCode::invalid_params, path_of_uri(uri)
                                                  ? fill<messages::not_open>(in_quotes(uri))
                                                  : fill<messages::bad_uri>(in_quotes(uri))};
}

Answer open_document(Desk& desk, const Json& params) {
    const Json& document = params.at("textDocument");
    const auto uri = document.at("uri").get<std::string>();
    const auto path = path_of_uri(uri);
    if (!path) return unknown_document(uri);
    desk.uris[*path] = uri;
    desk.session.open(*path, document.at("text").get<std::string>(),
                      document.value("version", std::int64_t{0}));
    return Json{};
}

Answer change_document(Desk& desk, const Json& params) {
    const Json& document = params.at("textDocument");
    const auto uri = document.at("uri").get<std::string>();
    std::vector<session::Change> changes;
    for (const Json& change : params.at("contentChanges")) {
        session::Change& one = changes.emplace_back();
        one.text = change.at("text").get<std::string>();
        if (change.contains("range")) one.range = range_from(change.at("range"));
    }
    const auto path = path_of_uri(uri);
    const auto version = document.value("version", std::int64_t{0});
    if (!path || !desk.session.change(*path, changes, desk.units, version))
        return unknown_document(uri);
    return Json{};
}

Answer close_document(Desk& desk, const Json& params) {
    const auto uri = params.at("textDocument").at("uri").get<std::string>();
    const auto path = path_of_uri(uri);
    if (!path || !desk.session.close(*path)) return unknown_document(uri);
    return Json{};
}

Answer save_document(Desk&, const Json&) { // its text is known
    return Json{};
}

std::vector<std::filesystem::path> folders_in(const Json& list) {
    std::vector<std::filesystem::path> folders;
    for (const Json& folder : list)
        if (const auto path = path_of_uri(folder.at("uri").get<std::string>()))
            folders.push_back(path->has_filename() ? *path : path->parent_path());
    return folders;
}

Answer change_folders(Desk& desk, const Json& params) {
    auto folders = desk.session.folders();
    for (const auto& gone : folders_in(params.at("event").at("removed")))
        std::erase(folders, gone);
    for (auto& added : folders_in(params.at("event").at("added")))
        folders.push_back(std::move(added));
    desk.session.set_folders(std::move(folders));
    return Json{};
}

Answer change_files(Desk& desk, const Json&) {
    desk.session.disk_changed();
    return Json{};
}

constexpr Method methods_of_synchronization[] = {
    {"textDocument/didOpen", open_document},
    {"textDocument/didChange", change_document},
    {"textDocument/didClose", close_document},
    {"textDocument/didSave", save_document},
    {"workspace/didChangeWorkspaceFolders", change_folders},
    {"workspace/didChangeWatchedFiles", change_files},
};

void announce_synchronization(Json& capabilities) {
    capabilities["textDocumentSync"] = {
        {"openClose", true}, {"change", incremental}, {"save", true}};
    capabilities["workspace"]["workspaceFolders"] = {{"supported", true},
                                                     {"changeNotifications", true}};
}

}

Feature synchronization_feature() {
    return {methods_of_synchronization, announce_synchronization};
}

void set_workspace(Desk& desk, const Json& initialize) {
    Json folders = initialize.value("workspaceFolders", Json{});
    const Json root = initialize.value("rootUri", Json{});
    if (!folders.is_array() && root.is_string()) folders = Json::array({{{"uri", root}}});
    if (folders.is_array()) desk.session.set_folders(folders_in(folders));
}

}
