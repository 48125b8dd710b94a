// Reading .git/config and .git/index as far as it takes to warn.
#include "compiler/advice/repository.hpp"

#include "compiler/advice/walk.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdlib>
#include <fstream>
#include <memory>
#include <mutex>
#include <string_view>
#include <system_error>
#include <unordered_set>
#include <vector>

namespace quoin::advice {

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

std::string_view first_line(std::string_view text) {
    text = text.substr(0, text.find_first_of("\r\n"));
    return text.substr(std::min(text.find_first_not_of(' '), text.size()));
}

struct Repository {
    fs::path folder; // that holds the files
    fs::path git;    // of this work tree: its index
    fs::path common; // of all work trees: the settings
};

// https://git-scm.com/docs/gitrepository-layout: in a further work tree `.git` is a file that names
// the folder, and `commondir` in there the one that all share.
std::optional<Repository> repository_at(const fs::path& folder) {
    std::error_code fault;
    const fs::path git = folder / ".git";
    if (fs::is_directory(git, fault)) return Repository{folder, git, git};
    constexpr std::string_view named = "gitdir:";
    const std::string text = read_all(git);
    if (!text.starts_with(named)) return std::nullopt;
    const fs::path own = folder / first_line(std::string_view(text).substr(named.size()));
    const std::string common = read_all(own / "commondir");
    return Repository{folder, own, common.empty() ? own : own / first_line(common)};
}

std::optional<Repository> repository_of(const fs::path& file) {
    std::error_code fault;
    fs::path folder = fs::weakly_canonical(file, fault).parent_path();
    if (fault) return std::nullopt;
    for (int step = 0; step < most_steps && !folder.empty(); ++step) {
        if (auto repository = repository_at(folder)) return repository;
        if (folder == folder.root_path()) break;
        folder = folder.parent_path();
    }
    return std::nullopt;
}

// https://git-scm.com/docs/gitformat-index: the paths of an index, one after the other.
class IndexReader {
public:
    IndexReader(std::string_view index, std::size_t hash) : index_(index), hash_(hash) {
        constexpr std::size_t header = 12;
        if (!index.starts_with("DIRC") || index.size() < header) return;
        version_ = number(4);
        left_ = number(8);
        at_ = header;
        if (version_ < 2 || version_ > 4) left_ = 0;
    }

    // False at the end, or where it cannot be read.
    bool next(std::string& path) {
        constexpr std::size_t times_and_sizes = 40, flags = 2;
        const std::size_t begin = at_;
        std::size_t at = begin + times_and_sizes + hash_;
        if (left_ == 0 || at + flags > index_.size()) return false;
        --left_;
        const bool extended = version_ >= 3 && (byte(at) & 0x40U) != 0;
        at += extended ? 2 * flags : flags;
        if (version_ < 4)
            path.clear();
        else if (!take_end_off(path, at))
            return false;
        const std::size_t end = index_.find('\0', at);
        if (at > index_.size() || end == std::string_view::npos) return false;
        path += index_.substr(at, end - at);
        // up to version 3 with one to eight zeros, to a multiple of eight
        at_ = version_ < 4 ? begin + (end - begin) / 8 * 8 + 8 : end + 1;
        return true;
    }

private:
    unsigned byte(std::size_t at) const { return static_cast<unsigned char>(index_[at]); }

    std::uint32_t number(std::size_t at) const {
        return byte(at) << 24U | byte(at + 1) << 16U | byte(at + 2) << 8U | byte(at + 3);
    }

    // How many bytes of the path before are not in this one, in the coding of a pack's offsets.
    bool take_end_off(std::string& path, std::size_t& at) const {
        std::size_t count = 0;
        for (bool more = true, first = true; more; first = false, ++at) {
            if (at >= index_.size() || count > most_bytes) return false;
            count = ((first ? 0 : count + 1) << 7U) | (byte(at) & 0x7FU);
            more = (byte(at) & 0x80U) != 0;
        }
        if (count > path.size()) return false;
        path.erase(path.size() - count);
        return true;
    }

    std::string_view index_;
    std::size_t hash_;
    std::uint32_t version_ = 0, left_ = 0;
    std::size_t at_ = 0;
};

using Paths = std::unordered_set<std::string>;

// The index that was read last: of a folder of résumés each asks for the same.
class LastIndex {
public:
    std::shared_ptr<const Paths> paths_of(const fs::path& index, std::size_t hash) {
        std::error_code fault;
        const auto size = fs::file_size(index, fault);
        const auto written = fs::last_write_time(index, fault);
        const std::scoped_lock lock(mutex_);
        if (fault || !paths_ || index != index_ || size != size_ || written != written_) {
            paths_ = read_paths(read_all(index), hash);
            index_ = index;
            size_ = size;
            written_ = written;
        }
        return paths_;
    }

private:
    static std::shared_ptr<const Paths> read_paths(const std::string& index, std::size_t hash) {
        auto paths = std::make_shared<Paths>();
        IndexReader reader(index, hash);
        for (std::string path; reader.next(path);)
            paths->insert(path);
        return paths;
    }

    std::mutex mutex_; // guards all below
    fs::path index_;
    std::uintmax_t size_ = 0;
    fs::file_time_type written_;
    std::shared_ptr<const Paths> paths_;
};

bool is_tracked(const fs::path& index, std::size_t hash, const std::string& wanted) {
    static LastIndex last;
    return last.paths_of(index, hash)->contains(wanted);
}

// `https://host/…`, `ssh://user@host:port/…`, `user@host:…`
std::string remote_host(std::string_view url) {
    if (const std::size_t scheme = url.find("://"); scheme != std::string_view::npos)
        url.remove_prefix(scheme + 3);
    url = url.substr(0, url.find('/'));
    if (const std::size_t user = url.rfind('@'); user != std::string_view::npos)
        url.remove_prefix(user + 1);
    return lower_case(url.substr(0, url.find(':')));
}

// https://git-scm.com/docs/git-clone#_git_urls: with a scheme but `file`, or a host before the
// first colon, which no slash comes before.
bool is_elsewhere(std::string_view url) {
    if (const std::size_t scheme = url.find("://"); scheme != url.npos)
        return url.substr(0, scheme) != "file";
    const std::size_t colon = url.find(':');
    return colon != url.npos && colon > 1 && colon < url.find('/');
}

std::string without_user(const std::string& url) {
    const std::size_t scheme = url.find("://");
    const std::size_t begin = scheme == url.npos ? 0 : scheme + 3;
    const std::size_t end = std::min(url.find('/', begin), url.size());
    const std::size_t at = url.substr(0, end).rfind('@');
    return at == url.npos || at < begin ? url : url.substr(0, begin) + url.substr(at + 1);
}

// What https://git-scm.com/docs/git-config says of the pieces that tell where things are sent.
struct GitConfig {
    struct Rewrite {
        std::string instead_of, base;
    };
    std::vector<std::string> remotes;
    std::vector<Rewrite> rewrites;
    std::size_t hash = 20; // bytes of an object's name

    // The longest that fits is put in the place of the beginning.
    std::string rewritten(const std::string& url) const {
        const Rewrite* best = nullptr;
        for (const Rewrite& rewrite : rewrites)
            if (url.starts_with(rewrite.instead_of) &&
                (!best || rewrite.instead_of.size() > best->instead_of.size()))
                best = &rewrite;
        return best ? best->base + url.substr(best->instead_of.size()) : url;
    }
};

constexpr std::string_view blanks_and_quotes = " \t\r\"";

void read_git_setting(std::string_view line, const std::string& section, std::string_view name,
                      GitConfig& config) {
    const std::size_t equals = line.find('=');
    if (equals == std::string_view::npos) return;
    const std::string key = lower_case(trimmed(line.substr(0, equals), blanks_and_quotes));
    const std::string value(trimmed(line.substr(equals + 1), blanks_and_quotes));
    if (section == "remote" && (key == "url" || key == "pushurl")) config.remotes.push_back(value);
    if (section == "url" && (key == "insteadof" || key == "pushinsteadof") && !value.empty())
        config.rewrites.push_back({value, std::string(name)});
    if (section == "extensions" && key == "objectformat" && value == "sha256") config.hash = 32;
}

void read_config(std::string_view text, GitConfig& config) {
    std::string section;
    std::string_view name;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        std::string_view line = trimmed(text.substr(0, end), blanks_and_quotes);
        text.remove_prefix(std::min(end + 1, text.size()));
        if (!line.starts_with('[')) {
            read_git_setting(line, section, name, config);
            continue;
        }
        line = line.substr(1, line.find(']') - 1);
        const std::size_t space = std::min(line.find_first_of(" \t"), line.size());
        section = lower_case(line.substr(0, space));
        name = trimmed(line.substr(space), blanks_and_quotes);
    }
}

// Rewrites mostly stand in the user's own settings.
GitConfig config_of(const Repository& repository) {
    GitConfig config;
    const std::string own = read_all(repository.common / "config");
    read_config(own, config);
    GitConfig of_user;
    if (const char* home = std::getenv("HOME")) {
        const std::string text = read_all(fs::path(home) / ".gitconfig");
        read_config(text, of_user);
    }
    config.rewrites.insert(config.rewrites.end(), of_user.rewrites.begin(), of_user.rewrites.end());
    return config;
}

}

std::optional<std::string> public_host(const fs::path& file) {
    const auto repository = repository_of(file);
    if (!repository) return std::nullopt;
    std::error_code fault;
    const std::string path =
        fs::weakly_canonical(file, fault).lexically_relative(repository->folder).generic_string();
    if (fault) return std::nullopt;
    const GitConfig config = config_of(*repository);
    for (const std::string& remote : config.remotes) {
        const std::string host = remote_host(config.rewritten(remote));
        if (!is_one_of(host, open_hosts)) continue;
        if (!is_tracked(repository->git / "index", config.hash, path)) return std::nullopt;
        return host;
    }
    return std::nullopt;
}

std::optional<SentTo> sent_to(const fs::path& file) {
    const auto repository = repository_of(file);
    if (!repository) return std::nullopt;
    SentTo sent{repository->folder, {}};
    const GitConfig config = config_of(*repository);
    for (const std::string& remote : config.remotes) {
        const std::string address = without_user(config.rewritten(remote));
        if (is_elsewhere(address) && !is_one_of(address, sent.addresses))
            sent.addresses.push_back(address);
    }
    return sent;
}

}
