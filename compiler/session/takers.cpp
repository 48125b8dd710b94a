#include "compiler/session/takers.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/base/source.hpp"
#include "compiler/stages/syntax/parse.hpp"

#include <algorithm>
#include <system_error>

namespace quoin::session {

namespace {

namespace fs = std::filesystem;

constexpr int most_above = 4;               // folders
constexpr std::size_t most_looked_at = 200; // files

// As far as its own lines tell.
bool takes_in(const fs::path& resume, const fs::path& file) {
    Sources sources;
    Diagnostics ignored;
    const auto own = sources.read(resume, ignored);
    return own && is_one_of(file, named_includes(syntax::parse(sources, *own, ignored), resume));
}

bool is_worked_in(const fs::path& folder, const std::vector<fs::path>& folders) {
    return std::ranges::any_of(folders, [&](const fs::path& one) {
        return std::mismatch(one.begin(), one.end(), folder.begin(), folder.end()).first ==
               one.end();
    });
}

}

std::vector<fs::path> named_includes(const syntax::Tree& tree, const fs::path& file) {
    std::vector<fs::path> named;
    const auto look_at = [&](const syntax::Node& node) {
        if (node.label.text == "include")
            named.push_back((file.parent_path() / node.value.joined()).lexically_normal());
    };
    for (const syntax::Block& block : tree.heading)
        std::ranges::for_each(block, look_at);
    for (const syntax::SectionTree& section : tree.sections)
        for (const syntax::Block& block : section.blocks)
            std::ranges::for_each(block, look_at);
    return named;
}

std::optional<fs::path> taker_of(const fs::path& file, const std::vector<fs::path>& folders) {
    std::size_t looked_at = 0;
    fs::path folder = file.parent_path();
    for (int above = 0; above < most_above; ++above, folder = folder.parent_path()) {
        if (folders.empty() ? above > 1 : !is_worked_in(folder, folders)) break;
        std::error_code fault;
        std::vector<fs::path> found;
        for (fs::directory_iterator it(folder, fault), end; !fault && it != end;
             it.increment(fault))
            if (it->path().extension() == ".resume" && it->path() != file)
                found.push_back(it->path());
        std::ranges::sort(found);
        for (const fs::path& resume : found)
            if (looked_at++ < most_looked_at && takes_in(resume, file)) return resume;
        if (folder == folder.parent_path()) break;
    }
    return std::nullopt;
}

}
