// Output: whole or not at all, and each system fault in words.
#include "compiler/base/write_file.hpp"

#include <doctest/doctest.h>

#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <thread>
#include <vector>

using namespace quoin;

namespace {

namespace fs = std::filesystem;

class Folder {
public:
    Folder() {
        std::string name = (fs::temp_directory_path() / "quoin-XXXXXX").string();
        path_ = ::mkdtemp(name.data());
    }
    ~Folder() {
        std::error_code ignored;
        fs::permissions(path_, fs::perms::owner_all, ignored);
        fs::remove_all(path_, ignored);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    std::string operator/(const std::string& name) const { return (path_ / name).string(); }
    std::size_t files() const {
        return static_cast<std::size_t>(
            std::distance(fs::directory_iterator(path_), fs::directory_iterator()));
    }

private:
    fs::path path_;
};

std::string read(const std::string& file) {
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
}

void put(const std::string& file, const std::string& bytes) {
    std::ofstream(file, std::ios::binary) << bytes;
}

unsigned mode(const std::string& file) {
    struct stat status {};
    REQUIRE(::stat(file.c_str(), &status) == 0);
    return status.st_mode & 07777U;
}

std::string fault_of(const std::string& target, std::string_view bytes = "new") {
    return write_file(target, bytes).value_or("");
}

// What `work` returns in a process of its own, whose limits and signals it may change.
template<typename Work>
bool in_child(Work work) {
    const pid_t child = ::fork();
    if (child == 0) ::_exit(work() ? 0 : 1);
    int status = 0;
    ::waitpid(child, &status, 0);
    return WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

}

TEST_SUITE("output") {
    TEST_CASE("a file is made, and replaced") {
        const Folder folder;
        const std::string file = folder / "a.pdf";
        CHECK(fault_of(file, std::string("one\0two", 7)) == "");
        CHECK(read(file) == std::string("one\0two", 7));
        CHECK(fault_of(file, "three") == "");
        CHECK(read(file) == "three");
        CHECK(fault_of(file, "") == "");
        CHECK(read(file) == "");
        CHECK(folder.files() == 1);
    }

    TEST_CASE("a large file is written whole") {
        const Folder folder;
        const std::string bytes(5'000'000, 'x');
        CHECK(fault_of(folder / "large", bytes) == "");
        CHECK(read(folder / "large") == bytes);
    }

    TEST_CASE("permissions: those of umask for a new file, those it had for an old one") {
        const Folder folder;
        const mode_t before = ::umask(027);
        CHECK(fault_of(folder / "new.pdf") == "");
        CHECK(mode(folder / "new.pdf") == 0640U);
        put(folder / "old.pdf", "old");
        ::chmod((folder / "old.pdf").c_str(), 0604);
        CHECK(fault_of(folder / "old.pdf") == "");
        CHECK(mode(folder / "old.pdf") == 0604U);
        ::umask(before);
    }

    TEST_CASE("a symbolic link stays one") {
        const Folder folder;
        fs::create_directory(folder / "there");
        put(folder / "there/real.pdf", "old");
        fs::create_symlink("there/real.pdf", folder / "link.pdf");
        fs::create_symlink("link.pdf", folder / "second.pdf");
        fs::create_symlink("there/none.pdf", folder / "dangling.pdf");
        CHECK(fault_of(folder / "second.pdf") == "");
        CHECK(fs::is_symlink(folder / "second.pdf"));
        CHECK(fs::is_symlink(folder / "link.pdf"));
        CHECK(read(folder / "there/real.pdf") == "new");
        CHECK(fault_of(folder / "dangling.pdf") == "");
        CHECK(read(folder / "there/none.pdf") == "new");
        fs::create_symlink("round.pdf", folder / "round.pdf");
        CHECK(fault_of(folder / "round.pdf") ==
              "cannot write '" + (folder / "round.pdf") + "': its symbolic links lead in a circle");
    }

    TEST_CASE("faults in words") {
        const Folder folder;
        put(folder / "file", "x");
        fs::create_directory(folder / "folder");
        const auto message = [&](const std::string& name, const std::string& why) {
            return "cannot write '" + (folder / name) + "': " + why;
        };
        CHECK(fault_of(folder / "none/a.pdf") ==
              message("none/a.pdf", "there is no folder '" + (folder / "none") + "'"));
        CHECK(fault_of(folder / "none/deep/a.pdf") ==
              message("none/deep/a.pdf", "there is no folder '" + (folder / "none") + "'"));
        CHECK(fault_of(folder / "file/a.pdf") ==
              message("file/a.pdf", "'" + (folder / "file") + "' is not a folder"));
        CHECK(fault_of(folder / "folder") == message("folder", "it is a folder"));
        CHECK(fault_of(folder / "folder/") == message("folder/", "it is a folder"));
        const std::string longest(300, 'a');
        CHECK(fault_of(folder / longest) == message(longest, "its name is too long"));
        CHECK(fault_of("") == "cannot write: the file's name is empty");
        CHECK(fault_of(std::string("a\0b", 3)) ==
              "cannot write: the file's name has a null character in it");
        CHECK(folder.files() == 2);
    }

    TEST_CASE("a name may be as long as names can be") {
        const Folder folder;
        CHECK(fault_of(folder / std::string(255, 'a')) == "");
        CHECK(folder.files() == 1);
    }

    TEST_CASE("no permission, for those who need one") {
        const Folder folder;
        put(folder / "a.pdf", "old");
        const std::string file = folder / "a.pdf", other = folder / "b.pdf";
        const std::string where = fs::path(file).parent_path().string();
        CHECK(in_child([&] { // the superuser may write anywhere
            if (::geteuid() == 0) {
                fs::permissions(where, fs::perms::all);
                if (::setuid(65534) != 0) return false;
            } else {
                fs::permissions(where, fs::perms::owner_read | fs::perms::owner_exec);
                return fault_of(other) == "cannot write '" + other +
                                              "': there is no permission to write in the folder '" +
                                              where + "'";
            }
            return fault_of(file) ==
                   "cannot write '" + file + "': there is no permission to write over it";
        }));
        CHECK(read(file) == "old");
        CHECK(in_child([&] {
            fs::permissions(where, fs::perms::owner_read | fs::perms::owner_exec |
                                       fs::perms::others_read | fs::perms::others_exec);
            if (::geteuid() == 0 && ::setuid(65534) != 0) return false;
            return fault_of(other) == "cannot write '" + other +
                                          "': there is no permission to write in the folder '" +
                                          where + "'";
        }));
    }

    TEST_CASE("devices and pipes are written directly") {
        CHECK(fault_of("/dev/null") == "");
        CHECK(fs::is_character_file("/dev/null"));
        CHECK(fault_of("/dev/full") == "cannot write '/dev/full': the disk is full");

        const Folder folder;
        const std::string pipe = folder / "pipe";
        REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
        std::string got;
        std::thread reader([&] { got = read(pipe); });
        CHECK(fault_of(pipe, "through") == "");
        reader.join();
        CHECK(got == "through");
        CHECK(fs::is_fifo(pipe));
    }

    TEST_CASE("a full disk leaves the last good file and no other") {
        const Folder folder;
        const std::string file = folder / "a.pdf";
        put(file, "last good");
        CHECK(in_child([&] { // a limit on a file's size stands in for the disk's
            ::signal(SIGXFSZ, SIG_IGN);
            const rlimit limit{1000, 1000};
            ::setrlimit(RLIMIT_FSIZE, &limit);
            return fault_of(file, std::string(5000, 'x')) ==
                   "cannot write '" + file + "': the file would be larger than is allowed";
        }));
        CHECK(read(file) == "last good");
        CHECK(folder.files() == 1);
    }

    TEST_CASE("standard output") {
        const Folder folder;
        const std::string file = folder / "out";
        for (const char* name : {"-", "/dev/stdout"}) {
            put(file, "");
            CHECK(in_child([&] {
                if (std::freopen(file.c_str(), "w", stdout) == nullptr) return false;
                return fault_of(name, "words") == "";
            }));
            CHECK(read(file) == "words");
            CHECK(in_child([&] {
                ::signal(SIGPIPE, SIG_IGN);
                int ends[2];
                if (::pipe(ends) != 0 || ::dup2(ends[1], STDOUT_FILENO) < 0) return false;
                ::close(ends[0]);
                ::close(ends[1]);
                return fault_of("-") ==
                       "cannot write to standard output: nobody reads from the pipe any more";
            }));
        }
        CHECK(folder.files() == 1);
    }

    TEST_CASE("writers at the same time leave one of their files, whole") {
        const Folder folder;
        const std::string file = folder / "a.pdf";
        std::vector<std::thread> writers;
        for (int i = 0; i < 4; ++i)
            writers.emplace_back([&, i] {
                for (int n = 0; n < 10; ++n)
                    write_file(file, std::string(10'000, static_cast<char>('a' + i)));
            });
        for (std::thread& writer : writers)
            writer.join();
        const std::string bytes = read(file);
        CHECK(bytes.size() == 10'000);
        CHECK(bytes == std::string(10'000, bytes.at(0)));
        CHECK(folder.files() == 1);
    }
}
