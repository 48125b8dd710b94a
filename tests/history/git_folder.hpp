// A folder with a git repository in it, made by git itself, for tests.
#pragma once

#include <doctest/doctest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <unistd.h>

class GitFolder {
public:
    GitFolder() {
        std::string pattern =
            (std::filesystem::temp_directory_path() / "quoin-git-XXXXXX").string();
        REQUIRE(mkdtemp(pattern.data()) != nullptr);
        path = std::filesystem::canonical(pattern);
    }
    ~GitFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(path, ignored);
    }
    GitFolder(const GitFolder&) = delete;
    GitFolder& operator=(const GitFolder&) = delete;

    void write(const std::string& name, const std::string& text) const {
        std::filesystem::create_directories((path / name).parent_path());
        std::ofstream(path / name) << text;
    }

    // A shell's line, in the folder; no settings of the machine's have a part in it.
    void run(const std::string& line) const {
        const std::string command =
            "cd '" + path.string() +
            "' && export HOME=/nonexistent GIT_CONFIG_NOSYSTEM=1 GIT_AUTHOR_NAME=Student "
            "GIT_AUTHOR_EMAIL=student@ellerystate.example GIT_COMMITTER_NAME=Student "
            "GIT_COMMITTER_EMAIL=student@ellerystate.example && ( " +
            line + " ) >/dev/null 2>&1";
        REQUIRE_MESSAGE(std::system(command.c_str()) == 0, line);
    }

    void commit(const std::string& what, long time) const {
        const std::string date = "'@" + std::to_string(time) + " +0000'";
        run("git add -A && GIT_AUTHOR_DATE=" + date + " GIT_COMMITTER_DATE=" + date +
            " git commit -q -m '" + what + "'");
    }

    std::filesystem::path path;
};
