#include "compiler/session/takers.hpp"

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
    if (!own) return false;
    const syntax::Tree tree = syntax::parse(sources, *own, ignored);
    const auto names_it = [&](const syntax::Node& node) {
        return node.label.text == "include" &&
               (resume.parent_path() / node.value.joined()).lexically_normal() == file;
    };
    const auto block_does = [&](const syntax::Block& block) {
        return std::ranges::any_of(block, names_it);
    };
    return std::ranges::any_of(tree.heading, block_does) ||
           std::ranges::any_of(tree.sections, [&](const syntax::SectionTree& section) {
               return std::ranges::any_of(section.blocks, block_does);
           });
}

bool is_worked_in(const fs::path& folder, const std::vector<fs::path>& folders) {
    return std::ranges::any_of(folders, [&](const fs::path& one) {
        return std::mismatch(one.begin(), one.end(), folder.begin(), folder.end()).first ==
               one.end();
    });
}

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
