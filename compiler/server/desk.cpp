#include "compiler/server/desk.hpp"

#include "compiler/server/messages.hpp"
#include "compiler/server/uris.hpp"

namespace quoin::server {

std::string Desk::uri_of(const std::filesystem::path& path) const {
    const auto known = uris.find(path);
    return known == uris.end() ? uri_of_path(path) : known->second;
}

Addressed addressed_text(Desk& desk, const Json& params) {
    const auto& uri = params.at("textDocument").at("uri").get_ref<const std::string&>();
    const auto path = path_of_uri(uri);
    if (!path)
        return {.refusal = {ErrorCode::invalid_params, fill<messages::bad_uri>(in_quotes(uri))}};
    const session::Document* document = desk.session.find(*path);
    if (!document)
        return {.refusal = {ErrorCode::invalid_params, fill<messages::not_open>(in_quotes(uri))}};
    return {.path = *path, .document = document};
}

Addressed addressed(Desk& desk, const Json& params) {
    Addressed one = addressed_text(desk, params);
    if (!one.document) return one;
    one.state = desk.session.state_of(one.path);
    if (const auto file = one.state->file_at(one.path)) one.file = *file;
    return one;
}

bool is_resume(const Addressed& one) {
    return session::written_in(one.path) == session::Written::resume;
}

session::Position position_from(const Json& json) {
    return {json.at("line").get<std::uint32_t>(), json.at("character").get<std::uint32_t>()};
}

session::Range range_from(const Json& json) {
    return {position_from(json.at("start")), position_from(json.at("end"))};
}

Json to_json(session::Position position) {
    return {{"line", position.line}, {"character", position.character}};
}

Json to_json(const session::Range& range) {
    return {{"start", to_json(range.start)}, {"end", to_json(range.end)}};
}

std::span<const Feature> all_features() {
    static const Feature all[] = {synchronization_feature(), code_actions_feature(),
                                  page_hints_feature(),      commands_feature(),
                                  completion_feature(),      hover_feature(),
                                  outline_feature(),         semantic_tokens_feature(),
                                  formatting_feature(),      tag_names_feature()};
    return all;
}

}
