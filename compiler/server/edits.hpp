// Changes of documents as the editor takes them ("WorkspaceEdit").
#pragma once

#include "compiler/base/edit.hpp"
#include "compiler/server/desk.hpp"
#include "compiler/server/ranges.hpp"

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace quoin::server {

class EditBook {
public:
    explicit EditBook(const Desk& desk) : desk_(desk) {}

    EditBook& replace(const std::filesystem::path& path, const session::Range& range,
                      std::string text);
    // From one text to another: from their first difference to the last.
    EditBook& rewrite(const std::filesystem::path& path, std::string_view from,
                      std::string_view to);
    // Those that have a place of their own in the bytes; each once.
    EditBook& add(const session::State& state, Ranges& ranges, const Edits& edits);

    bool empty() const { return changes_.empty(); }
    Json json() const { return {{"changes", changes_}}; }

private:
    const Desk& desk_;
    std::map<std::string, Json> changes_; // by URI
};

}
