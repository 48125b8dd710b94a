// A line for each file: the digest of its bytes, a space, and its path.
#include "compiler/commands/set/last_set.hpp"

#include "compiler/base/digest.hpp"
#include "compiler/base/write_file.hpp"

#include <fstream>
#include <iterator>
#include <optional>
#include <string>
#include <system_error>

namespace quoin::commands {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t figures = 2 * digest_size; // of a digest

std::optional<std::string> digest_of_file(const fs::path& path) {
    std::error_code fault;
    if (!fs::is_regular_file(path, fault)) return std::nullopt;
    std::ifstream file(path, std::ios::binary);
    if (!file) return std::nullopt;
    const std::string bytes(std::istreambuf_iterator<char>(file), {});
    return digest_of(bytes);
}

bool holds(const std::string& line) {
    if (line.size() <= figures + 1) return false;
    return digest_of_file(line.substr(figures + 1)) == line.substr(0, figures);
}

}

LastSet::LastSet(const fs::path& caches, std::string_view asked)
    : file_(caches / "set" / digest_of(asked)) {}

bool LastSet::still_stands() const {
    std::ifstream kept(file_);
    bool any = false;
    for (std::string line; std::getline(kept, line); any = true)
        if (!holds(line)) return false;
    return any;
}

void LastSet::keep(const std::set<fs::path>& files) const {
    std::string text;
    for (const fs::path& path : files) {
        const auto digest = digest_of_file(path);
        const std::string name = path.string();
        if (!digest || name.find('\n') != name.npos) return;
        text += *digest + ' ' + name + '\n';
    }
    std::error_code fault;
    if (fs::create_directories(file_.parent_path(), fault))
        fs::permissions(file_.parent_path(), fs::perms::owner_all, fault); // it tells of people
    write_file(file_.string(), text);
}

}
