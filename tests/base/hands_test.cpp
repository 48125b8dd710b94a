// Work by several threads, and files read whole.
#include "compiler/base/hands.hpp"
#include "compiler/base/printable.hpp"
#include "compiler/base/whole_file.hpp"

#include "tests/fixtures/own_folder.hpp"

#include <doctest/doctest.h>
#include <sys/stat.h>

#include <atomic>
#include <cerrno>
#include <stdexcept>
#include <string>

namespace quoin {

TEST_CASE("hands: each works, and what one throws comes out when all are done") {
    std::atomic<int> worked = 0;
    work_with_hands(5, [&] { ++worked; });
    CHECK(worked == 5);
    const auto throwing = [&] {
        if (++worked == 7) throw std::runtime_error("the second");
    };
    CHECK_THROWS_WITH(work_with_hands(4, throwing), "the second");
    CHECK(worked == 9);
    work_with_hands(0, [&] { ++worked; }); // this thread is always one
    CHECK(worked == 10);
}

TEST_CASE("whole files: their bytes, or the system's own reason") {
    const fixtures::OwnFolder folder;
    folder.write("file", std::string("a\0b\n", 4));
    std::string bytes = "before";
    CHECK(read_whole_file(folder.path() / "file", bytes) == 0);
    CHECK(bytes == std::string("a\0b\n", 4));
    CHECK(read_whole_file(folder.path() / "none", bytes) == ENOENT);
    CHECK(bytes.empty());
    CHECK(read_whole_file(folder.path(), bytes) == EINVAL);
    REQUIRE(::mkfifo((folder.path() / "pipe").c_str(), 0600) == 0);
    CHECK(read_whole_file(folder.path() / "pipe", bytes) == EINVAL); // and is not waited for
    CHECK(read_whole_file("/dev/zero", bytes) == EINVAL);
}

TEST_CASE("names: a message about a file is one line, whatever the file is called") {
    CHECK(printable_name("a\nb\tc.resume") == "a<U+000A>b<U+0009>c.resume");
    CHECK(printable_name("\x1B[31m\u202E.pdf") == "<U+001B>[31m<U+202E>.pdf");
    CHECK(printable_name("résumé.resume") == "résumé.resume");
}

}
