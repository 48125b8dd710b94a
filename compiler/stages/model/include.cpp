// Files taken in: only from the folder of the first file, never around in a circle.
#include "compiler/stages/model/build_steps.hpp"

#include "compiler/base/folder.hpp"
#include "compiler/stages/model/messages.hpp"
#include "compiler/stages/model/text_pieces.hpp"
#include "compiler/stages/syntax/parse.hpp"

#include <algorithm>
#include <system_error>
#include <utility>

namespace quoin::model {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t deepest = 16;       // files open at once, the first one aside
constexpr std::size_t most_included = 64; // taken in, all told

struct Include { // one `include:` line
    Build& build;
    const syntax::Node& node;
    JoinedValue value;

    Place place() const { return value.place(0, value.text().size()); }
    void error(std::string text) const { build.diagnostics.error(place(), std::move(text)); }
};

// Text without a path of its own (standard input, an editor's) is named as if it were a file.
fs::path path_of(const SourceFile& file) {
    return file.path.empty() ? fs::path{file.name} : file.path;
}

fs::path resolved(const fs::path& path) {
    std::error_code code;
    auto result = fs::weakly_canonical(path, code);
    return code ? fs::absolute(path, code).lexically_normal() : result;
}

bool lies_in(const fs::path& folder, const fs::path& path) {
    const auto [in_folder, in_path] =
        std::mismatch(folder.begin(), folder.end(), path.begin(), path.end());
    return in_folder == folder.end() && in_path != path.end();
}

fs::path root_of(const Build& build) {
    return resolved(folder_of(path_of(build.sources.file(build.open.front().file))));
}

// None, and an error, for a path that is not one of a file in the first file's folder.
std::optional<fs::path> find_file(const Include& include) {
    const Build& build = include.build;
    const std::string found = in_quotes(include.value.text());
    const fs::path given = include.value.text();
    if (given.is_absolute() || std::ranges::find(given, fs::path{".."}) != given.end()) {
        include.error(fill<messages::path_leads_out>(found));
        return std::nullopt;
    }
    const fs::path path =
        (folder_of(path_of(build.sources.file(build.open.back().file))) / given).lexically_normal();
    if (build.sources.holds(path)) return path;
    std::error_code code;
    const auto status = fs::status(path, code);
    if (!fs::exists(status))
        include.error(fill<messages::no_file>(found));
    else if (fs::is_directory(status))
        include.error(fill<messages::is_folder>(found));
    else if (!fs::is_regular_file(status))
        include.error(fill<messages::no_regular_file>(found));
    else if (!lies_in(root_of(build), resolved(path)))
        include.error(fill<messages::link_leads_out>(found));
    else
        return path;
    return std::nullopt;
}

// "a.resume -> b.resume -> a.resume", from where the circle begins; empty if there is none.
std::string circle(const Build& build, const fs::path& target) {
    const fs::path root = root_of(build);
    const auto start = std::ranges::find(build.open, target, &OpenFile::canonical);
    if (start == build.open.end()) return {};
    std::string names;
    for (auto file = start; file != build.open.end(); ++file)
        names += file->canonical.lexically_relative(root).generic_string() + " -> ";
    return names + target.lexically_relative(root).generic_string();
}

bool may_open(const Include& include, const fs::path& target) {
    const Build& build = include.build;
    if (build.included_bytes > Sources::most_bytes) return false; // told at the one that was more
    if (const std::string names = circle(build, target); !names.empty())
        include.error(fill<messages::circle>(names));
    else if (build.open.size() > deepest)
        include.error(fill<messages::included_too_deep>(deepest));
    else if (build.included >= most_included)
        include.error(fill<messages::included_too_often>(most_included));
    else
        return true;
    return false;
}

void note_file(Resume& resume, const fs::path& path) {
    if (!path.empty() && std::ranges::find(resume.files, path) == resume.files.end())
        resume.files.push_back(path);
}

void read_file(const Include& include, const fs::path& path) {
    Build& build = include.build;
    ++build.included;
    note_file(build.resume, path);
    const auto file = build.sources.read(path, build.diagnostics);
    if (!file) {
        build.diagnostics.note(include.place(),
                               fill<messages::included_here>(in_quotes(include.value.text())));
        return;
    }
    build.included_bytes += build.sources.file(*file).bytes.size();
    if (build.included_bytes > Sources::most_bytes) {
        include.error(fill<messages::included_too_much>());
        return;
    }
    syntax::Tree tree = syntax::parse(build.sources, *file, build.diagnostics);
    open_sections(tree, build.diagnostics);
    build.open.push_back({*file, resolved(path)});
    build_included_heading(build, tree);
    build_sections(build, tree);
    build.open.pop_back();
}

}

void open_first(Build& build, std::uint32_t file) {
    const SourceFile& source = build.sources.file(file);
    build.open.push_back({file, resolved(path_of(source))});
    note_file(build.resume, source.path);
}

void take_in(Build& build, const syntax::Node& node) {
    const Include include{build, node, JoinedValue{node.value}};
    refuse_tags(node, build.diagnostics);
    const auto path = find_file(include);
    if (path && may_open(include, resolved(*path))) read_file(include, *path);
}

}
