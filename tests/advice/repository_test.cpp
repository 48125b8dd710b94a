// Where a file is sent, read from git's own files: work trees, a shortened index, other addresses.
// The indexes were made by git 2.39; their form is https://git-scm.com/docs/gitformat-index.
#include "compiler/advice/repository.hpp"

#include <doctest/doctest.h>

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>

namespace quoin::advice::repository_test {

namespace {

namespace fs = std::filesystem;

// `git update-index --index-version 4`, of drafts/autumn.resume and drafts/fall.resume
constexpr std::string_view version_4 =
    "4449524300000004000000026b07288823a5d69c6b07288823a5d69c0000fe0000ace07e000081a4000000000000"
    "000000000002587be6b4c3f93f93c489c0111bba5596147a26cb0014006472616674732f617574756d6e2e726573"
    "756d65006b07288823a5d69c6b07288823a5d69c0000fe0000ace07f000081a4000000000000000000000002975f"
    "bec8256d3e8a3797e7a3611380f27c49f4ac00120d66616c6c2e726573756d6500390ee4b68e654d962cbb07c4cc"
    "065c1c01ce3a49";
// `git update-index --index-version 2`, of the same
constexpr std::string_view version_2 =
    "4449524300000002000000026b07288823a5d69c6b07288823a5d69c0000fe0000ace07e000081a4000000000000"
    "000000000002587be6b4c3f93f93c489c0111bba5596147a26cb00146472616674732f617574756d6e2e72657375"
    "6d650000000000006b07288823a5d69c6b07288823a5d69c0000fe0000ace07f000081a400000000000000000000"
    "0002975fbec8256d3e8a3797e7a3611380f27c49f4ac00126472616674732f66616c6c2e726573756d6500000000"
    "0000000059b41cdb3f1b91b5656d3b8b69d60cf68c26a8f3";

std::string bytes(std::string_view hex) {
    const auto value = [](char c) { return c <= '9' ? c - '0' : c - 'a' + 10; };
    std::string text;
    for (std::size_t i = 0; i + 1 < hex.size(); i += 2)
        text += static_cast<char>(value(hex[i]) * 16 + value(hex[i + 1]));
    return text;
}

class Folder {
public:
    Folder() {
        fs::remove_all(path_);
        fs::create_directories(path_);
    }
    ~Folder() { fs::remove_all(path_); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    fs::path write(const std::string& name, const std::string& text) const {
        fs::create_directories((path_ / name).parent_path());
        std::ofstream(path_ / name, std::ios::binary) << text;
        return path_ / name;
    }

private:
    fs::path path_ =
        fs::temp_directory_path() / ("quoin repository test " + std::to_string(::getpid()));
};

const std::string remote = "[remote \"origin\"]\n\turl = https://github.com/obrandt/papers\n";

}

TEST_CASE("repository: paths of an index of version 2 and of version 4") {
    for (const std::string_view index : {version_2, version_4}) {
        const Folder folder;
        folder.write(".git/config", remote);
        folder.write(".git/index", bytes(index));
        CHECK(public_host(folder.write("drafts/autumn.resume", "")) == "github.com");
        CHECK(public_host(folder.write("drafts/fall.resume", "")) == "github.com");
        CHECK_FALSE(public_host(folder.write("fall.resume", "")).has_value());
        CHECK_FALSE(public_host(folder.write("drafts/autumnfall.resume", "")).has_value());
    }
}

TEST_CASE("repository: an index cut short anywhere is read to where it goes") {
    const std::string whole = bytes(version_4);
    const Folder folder;
    folder.write(".git/config", remote);
    const fs::path file = folder.write("drafts/fall.resume", "");
    constexpr std::size_t checksum = 20;
    for (std::size_t length = 0; length < whole.size() - checksum; ++length) {
        folder.write(".git/index", whole.substr(0, length));
        CHECK_FALSE(public_host(file).has_value());
    }
}

// https://git-scm.com/docs/gitrepository-layout
TEST_CASE("repository: a further work tree has its index elsewhere") {
    const Folder folder;
    folder.write("main/.git/config", remote);
    folder.write("main/.git/worktrees/fall/commondir", "../..\n");
    folder.write("main/.git/worktrees/fall/index", bytes(version_4));
    folder.write("fall/.git", "gitdir: ../main/.git/worktrees/fall\n");
    CHECK(public_host(folder.write("fall/drafts/fall.resume", "")) == "github.com");
    CHECK_FALSE(public_host(folder.write("fall/other.resume", "")).has_value());
    folder.write("fall/.git", "gitdir: ../nowhere\n");
    CHECK_FALSE(public_host(folder.write("fall/drafts/fall.resume", "")).has_value());
}

// https://git-scm.com/docs/git-config, url.<base>.insteadOf: the longest that fits
TEST_CASE("repository: an address that stands for another") {
    struct Case {
        const char* config;
        const char* host; // "" for silence
    };
    const Case cases[] = {
        {"[url \"git@github.com:\"]\n insteadOf = gh:\n[remote \"o\"]\n url = gh:o/p\n",
         "github.com"},
        {"[remote \"o\"]\n url = gh:o/p\n[url \"https://GitLab.com/\"]\n insteadof = \"gh:\"\n",
         "gitlab.com"},
        {"[url \"git@github.com:\"]\n insteadOf = x:\n[url \"git@ellery.example:\"]\n insteadOf = "
         "x:own/\n[remote \"o\"]\n url = x:own/p\n",
         ""},
        {"[url \"git@github.com:\"]\n insteadOf = gh:\n[remote \"o\"]\n url = ghost:o/p\n", ""},
        {"[submodule \"theme\"]\n url = https://github.com/o/theme\n", ""},
    };
    for (const Case& c : cases) {
        CAPTURE(c.config);
        const Folder folder;
        folder.write(".git/config", c.config);
        folder.write(".git/index", bytes(version_4));
        CHECK(public_host(folder.write("drafts/fall.resume", "")).value_or("") == c.host);
    }
}

}
