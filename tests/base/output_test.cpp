// Output: whole or not at all, and each system fault in words.
#include "compiler/base/part_file.hpp"
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

    TEST_CASE("several outputs are one step") {
        const Folder folder;
        put(folder / "a.pdf", "last good");
        const std::string pdf = folder / "a.pdf", text = folder / "none/a.txt", full = "/dev/full";
        for (const std::string& other : {text, full}) {
            const FileOutput outputs[] = {{pdf, "new"}, {other, "words"}};
            CHECK(write_files(outputs).has_value());
            CHECK(read(pdf) == "last good");
            CHECK(folder.files() == 1);
        }
        const FileOutput outputs[] = {{pdf, "new"}, {folder / "a.txt", "words"}};
        CHECK_FALSE(write_files(outputs).has_value());
        CHECK(read(pdf) == "new");
        CHECK(read(folder / "a.txt") == "words");
        CHECK(folder.files() == 2);
    }

    TEST_CASE("where a later output cannot be put in place, those before it are put back") {
        const Folder folder;
        const std::string old_one = folder / "a.pdf", new_one = folder / "a.txt",
                          changed = folder / "a.d", before = "as it was read\n";
        put(old_one, "last good");
        put(changed, "edited meanwhile\n");
        const FileOutput outputs[] = {
            {old_one, "new"}, {new_one, "new"}, {changed, "new", &before}};
        CHECK(write_files(outputs).has_value());
        CHECK(read(old_one) == "last good");
        CHECK(read(changed) == "edited meanwhile\n");
        CHECK(folder.files() == 2);
        put(changed, before);
        CHECK_FALSE(write_files(outputs).has_value());
        CHECK(read(old_one) + read(new_one) + read(changed) == "newnewnew");
        CHECK(folder.files() == 3);
    }

    TEST_CASE("an edit made meanwhile is not written over") {
        const Folder folder;
        const std::string file = folder / "a.resume", before = "name: Ana\n", other = "name: Bo\n";
        put(file, other);
        const FileOutput output{file, "name: Ana Reyes\n", &before};
        CHECK(write_files({&output, 1}).value_or("") ==
              "cannot write '" + file +
                  "': it was changed while this ran, and is left as it is; run it again");
        CHECK(read(file) == other);
        CHECK(folder.files() == 1);
        put(file, before);
        CHECK_FALSE(write_files({&output, 1}).has_value());
        CHECK(read(file) == "name: Ana Reyes\n");
    }

    TEST_CASE("what a killed process left is taken away, what a living one writes is not") {
        const Folder folder;
        const std::string file = folder / "a.pdf";
        CHECK(in_child([&] {
            auto* part = new PartFile(file); // as one that is killed leaves it
            return part->write_safely("half") == 0;
        }));
        CHECK(folder.files() == 1);
        CHECK(fault_of(folder / "b.pdf") == ""); // of another target
        CHECK(folder.files() == 2);
        {
            PartFile own(file); // in the place of the one left
            REQUIRE(own.error() == 0);
            CHECK(folder.files() == 2);
            CHECK(fault_of(file) == "");
            CHECK(folder.files() == 3);
            CHECK(own.write_safely("later") == 0);
            CHECK(own.put_in_place() == 0);
        }
        CHECK(read(file) == "later");
        CHECK(folder.files() == 2);
    }

    TEST_CASE("a process that is told to stop leaves no part file") {
        for (const int signal : {SIGINT, SIGTERM, SIGHUP, SIGPIPE}) {
            const Folder folder;
            const pid_t child = ::fork();
            if (child == 0) {
                ::signal(signal, SIG_DFL);
                take_parts_away_when_stopped();
                PartFile part(folder / "a.pdf");
                part.write_safely("half");
                ::raise(signal);
                ::_exit(0);
            }
            int status = 0;
            ::waitpid(child, &status, 0);
            CHECK(WIFSIGNALED(status));
            CHECK(WTERMSIG(status) == signal);
            CHECK(folder.files() == 0);
        }
        CHECK(in_child([] { // as nohup has it
            ::signal(SIGHUP, SIG_IGN);
            take_parts_away_when_stopped();
            ::raise(SIGHUP);
            return true;
        }));
    }

    TEST_CASE("a link that somebody else put into a folder for all is not followed") {
        if (::geteuid() != 0 || read("/proc/sys/fs/protected_symlinks") != "1\n") return;
        const Folder folder;
        fs::create_directory(folder / "own");
        put(folder / "own/target", "old");
        REQUIRE(::chown((folder / "own").c_str(), 65533, 65533) == 0);
        REQUIRE(::chown((folder / "own/target").c_str(), 65533, 65533) == 0);
        fs::create_directory(folder / "all");
        fs::create_symlink(folder / "own/target", folder / "all/link");
        REQUIRE(::lchown((folder / "all/link").c_str(), 65534, 65534) == 0);
        fs::permissions(folder / "", fs::perms::all);
        ::chmod((folder / "all").c_str(), 01777);
        const std::string link = folder / "all/link";
        CHECK(in_child([&] {
            return ::setuid(65533) == 0 &&
                   fault_of(link) == "cannot write '" + link +
                                         "': it is a link that somebody else has put there, which "
                                         "the system does not follow";
        }));
        CHECK(read(folder / "own/target") == "old");
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
