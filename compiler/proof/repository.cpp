// Reading .git/config and .git/index as far as it takes to warn.
#include "compiler/proof/repository.hpp"

#include <algorithm>
#include <array>
#include <fstream>
#include <string_view>
#include <system_error>
#include <vector>

namespace quoin {

namespace {

namespace fs = std::filesystem;

constexpr std::array<std::string_view, 6> open_hosts{"github.com",   "gitlab.com", "bitbucket.org",
                                                     "codeberg.org", "git.sr.ht",  "gitea.com"};

constexpr std::uintmax_t most_bytes = std::uintmax_t{16} << 20;
constexpr int most_steps = 40; // folders upward

std::string read_all(const fs::path& path) {
    std::error_code fault;
    if (!fs::is_regular_file(path, fault) || fs::file_size(path, fault) > most_bytes || fault)
        return {};
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

struct Repository {
    fs::path folder; // that holds the files
    fs::path git;
};

std::optional<Repository> repository_of(const fs::path& file) {
    std::error_code fault;
    fs::path folder = fs::weakly_canonical(file, fault).parent_path();
    if (fault) return std::nullopt;
    for (int step = 0; step < most_steps && !folder.empty(); ++step) {
        if (fs::is_directory(folder / ".git", fault)) return Repository{folder, folder / ".git"};
        if (folder == folder.root_path()) break;
        folder = folder.parent_path();
    }
    return std::nullopt;
}

// https://git-scm.com/docs/index-format: before a path stand two bytes of flags, whose lower twelve
// bits are its length; version 4 shortens paths and is not read.
bool is_tracked(const std::string& index, const std::string& path) {
    constexpr std::size_t longest = 0xFFF;
    if (!index.starts_with("DIRC") || index.size() < 12 || index[7] > 3 || path.size() >= longest)
        return false;
    std::string entry;
    entry += static_cast<char>(path.size() >> 8);
    entry += static_cast<char>(path.size() & 0xFFU);
    entry += path;
    entry += '\0';
    for (std::size_t at = index.find(entry.substr(1)); at != std::string::npos;
         at = index.find(entry.substr(1), at + 1))
        if (at > 0 && (index[at - 1] & 0x0F) == entry[0]) return true;
    return false;
}

// `https://host/…`, `ssh://user@host:port/…`, `user@host:…`
std::string host_of(std::string_view url) {
    if (const std::size_t scheme = url.find("://"); scheme != std::string_view::npos)
        url.remove_prefix(scheme + 3);
    url = url.substr(0, url.find('/'));
    if (const std::size_t user = url.rfind('@'); user != std::string_view::npos)
        url.remove_prefix(user + 1);
    return std::string(url.substr(0, url.find(':')));
}

std::vector<std::string> hosts_in(const std::string& config) {
    std::vector<std::string> hosts;
    std::size_t at = 0;
    while (at < config.size()) {
        const std::size_t end = std::min(config.find('\n', at), config.size());
        std::string_view line = std::string_view(config).substr(at, end - at);
        at = end + 1;
        line.remove_prefix(std::min(line.find_first_not_of(" \t"), line.size()));
        if (!line.starts_with("url")) continue;
        line.remove_prefix(3);
        line.remove_prefix(std::min(line.find_first_not_of(" \t"), line.size()));
        if (!line.starts_with('=')) continue;
        line.remove_prefix(1);
        line.remove_prefix(std::min(line.find_first_not_of(" \t\""), line.size()));
        hosts.push_back(host_of(line));
    }
    return hosts;
}

}

std::optional<std::string> public_host(const fs::path& file) {
    const auto repository = repository_of(file);
    if (!repository) return std::nullopt;
    std::error_code fault;
    const std::string path =
        fs::weakly_canonical(file, fault).lexically_relative(repository->folder).generic_string();
    if (fault || !is_tracked(read_all(repository->git / "index"), path)) return std::nullopt;
    for (std::string& host : hosts_in(read_all(repository->git / "config")))
        if (std::ranges::find(open_hosts, host) != open_hosts.end()) return std::move(host);
    return std::nullopt;
}

}
