// Tags: where one is named in all files of a résumé, and another name for it in all of them. Files
// that are taken in, and themes: where they are.
#include "compiler/base/ascii.hpp"
#include "compiler/base/data_places.hpp"
#include "compiler/server/edits.hpp"
#include "compiler/server/messages.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <algorithm>
#include <filesystem>
#include <system_error>

namespace quoin::server {

namespace {

namespace fs = std::filesystem;

struct NamedTag {
    std::string name;
    Place place; // of the name alone
};

void add_tags_of(const syntax::Node& node, std::vector<NamedTag>& tags) {
    for (const syntax::TagMark& mark : node.tags) {
        Place place = mark.place;
        place.column += place.length - static_cast<std::uint32_t>(mark.name.size());
        place.length = static_cast<std::uint32_t>(mark.name.size());
        tags.push_back({mark.name, place});
    }
    if (node.label.text != "for") return;
    for (const syntax::Slice& slice : node.value.slices)
        for (std::size_t at = 0; at < slice.text.size();) {
            at = std::min(slice.text.find_first_not_of(" !,;", at), slice.text.size());
            const std::size_t end =
                std::min(slice.text.find_first_of(" ,;", at), slice.text.size());
            Place place = slice.place;
            place.column += static_cast<std::uint32_t>(at);
            place.length = static_cast<std::uint32_t>(end - at);
            if (end > at) tags.push_back({slice.text.substr(at, end - at), place});
            at = end;
        }
}

std::vector<NamedTag> all_tags(const session::State& state) {
    std::vector<NamedTag> tags;
    const auto look_at = [&](const syntax::Node& node) { add_tags_of(node, tags); };
    for (std::uint32_t file = 0; file < state.read.sources.size(); ++file) {
        if (state.read.sources.file(file).path.extension() != ".resume") continue;
        const syntax::Tree tree = session::tree_of(state, file);
        for (const syntax::Block& block : tree.heading)
            std::ranges::for_each(block, look_at);
        for (const syntax::SectionTree& section : tree.sections) {
            look_at(section.opening);
            for (const syntax::Block& block : section.blocks)
                std::ranges::for_each(block, look_at);
        }
    }
    return tags;
}

struct TagsAt { // the name at a position, and all tags that there are
    std::vector<NamedTag> all;
    const NamedTag* named = nullptr; // of them; null if there is none
};

TagsAt tags_at(const Addressed& one, Ranges& ranges, session::Position at) {
    TagsAt found{all_tags(*one.state), nullptr};
    for (const NamedTag& tag : found.all) {
        const session::Range range = ranges.of(tag.place);
        if (tag.place.file == one.file && range.start <= at && at <= range.end) found.named = &tag;
    }
    return found;
}

Json location(const Desk& desk, const session::State& state, Ranges& ranges, const Place& place) {
    return {{"uri", desk.uri_of(state.read.sources.file(place.file).path)},
            {"range", to_json(ranges.of(place))}};
}

Json locations_of(const Desk& desk, const Addressed& one, Ranges& ranges, const TagsAt& tags) {
    Json locations = Json::array();
    for (const NamedTag& tag : tags.all)
        if (tags.named && tag.name == tags.named->name)
            locations.push_back(location(desk, *one.state, ranges, tag.place));
    return locations;
}

Answer references(Desk& desk, const Json& params) {
    const Addressed one = addressed(desk, params);
    if (!one.document) return one.refusal;
    Ranges ranges(*one.state, desk.units);
    return locations_of(desk, one, ranges,
                        tags_at(one, ranges, position_from(params.at("position"))));
}

bool is_tag_name(std::string_view name) {
    return !name.empty() && std::ranges::all_of(name, [](char c) {
        return is_letter_or_figure(c) || c == '-' || c == '_';
    });
}

Answer rename_tag(Desk& desk, const Json& params) {
    const Addressed one = addressed(desk, params);
    if (!one.document) return one.refusal;
    const auto name = params.at("newName").get<std::string>();
    if (!is_tag_name(name))
        return Refusal{ErrorCode::request_failed, fill<messages::no_tag_name>(in_quotes(name))};
    Ranges ranges(*one.state, desk.units);
    const TagsAt tags = tags_at(one, ranges, position_from(params.at("position")));
    if (!tags.named) return Refusal{ErrorCode::request_failed, fill<messages::no_tag_here>()};
    Edits edits;
    for (const NamedTag& tag : tags.all)
        if (tag.name == tags.named->name) edits.push_back({tag.place, name});
    return EditBook(desk).add(*one.state, ranges, edits).json();
}

Answer prepare_rename(Desk& desk, const Json& params) {
    const Addressed one = addressed(desk, params);
    if (!one.document) return one.refusal;
    Ranges ranges(*one.state, desk.units);
    const TagsAt tags = tags_at(one, ranges, position_from(params.at("position")));
    if (!tags.named) return Json{};
    return to_json(ranges.of(tags.named->place));
}

struct NamedFile {
    fs::path path;
    Place place;
};

// What `include:` and `theme:` name in the file, as far as it is there.
std::vector<NamedFile> named_files(const Desk& desk, const Addressed& one) {
    std::vector<NamedFile> files;
    const auto add = [&](const fs::path& path, const syntax::Node& node) {
        std::error_code fault;
        if (fs::is_regular_file(path, fault))
            files.push_back({path.lexically_normal(), node.value.place()});
    };
    const auto look_at = [&](const syntax::Node& node) {
        if (node.value.empty()) return;
        const std::string value = node.value.joined();
        if (node.label.text == "include") add(one.path.parent_path() / value, node);
        if (node.label.text != "theme") return;
        const bool is_path = value.find('/') != value.npos || value.ends_with(".theme");
        add(is_path ? one.path.parent_path() / value
                    : themes_in(desk.session.means().data) / (value + ".theme"),
            node);
    };
    const syntax::Tree tree = session::tree_of(*one.state, one.file);
    for (const syntax::Block& block : tree.heading)
        std::ranges::for_each(block, look_at);
    for (const syntax::SectionTree& section : tree.sections)
        for (const syntax::Block& block : section.blocks)
            std::ranges::for_each(block, look_at);
    return files;
}

// A tag has no definition but its first use.
Answer definition(Desk& desk, const Json& params) {
    const Addressed one = addressed(desk, params);
    if (!one.document) return one.refusal;
    const session::Position at = position_from(params.at("position"));
    Ranges ranges(*one.state, desk.units);
    for (const NamedFile& file : named_files(desk, one)) {
        const session::Range range = ranges.of(file.place);
        if (range.start <= at && at <= range.end)
            return Json{{"uri", desk.uri_of(file.path)}, {"range", to_json(session::Range{})}};
    }
    const Json all = locations_of(desk, one, ranges, tags_at(one, ranges, at));
    return all.empty() ? Json{} : all.front();
}

Answer document_links(Desk& desk, const Json& params) {
    const Addressed one = addressed(desk, params);
    if (!one.document) return one.refusal;
    Ranges ranges(*one.state, desk.units);
    Json links = Json::array();
    for (const NamedFile& file : named_files(desk, one))
        links.push_back(
            {{"range", to_json(ranges.of(file.place))}, {"target", desk.uri_of(file.path)}});
    return links;
}

constexpr Method methods_of_tags[] = {{"textDocument/definition", definition},
                                      {"textDocument/references", references},
                                      {"textDocument/prepareRename", prepare_rename},
                                      {"textDocument/rename", rename_tag},
                                      {"textDocument/documentLink", document_links}};

void announce_tag_names(Json& capabilities) {
    capabilities["definitionProvider"] = true;
    capabilities["referencesProvider"] = true;
    capabilities["renameProvider"] = {{"prepareProvider", true}};
    capabilities["documentLinkProvider"] = Json::object();
}

}

Feature tag_names_feature() {
    return {methods_of_tags, announce_tag_names};
}

}
