// Files watched: written in place, renamed over, taken away; others beside them are none of it.
#include "compiler/base/file_watch.hpp"
#include "tests/fixtures/own_folder.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <set>

using namespace quoin;
namespace fs = std::filesystem;

TEST_CASE("file watch: what is told, and what is not") {
    const fixtures::OwnFolder folder;
    const fs::path draft = folder.path() / "draft.resume", part = folder.path() / "parts/a.resume";
    folder.write("draft.resume", "1");
    folder.write("parts/a.resume", "1");
    FileWatch watch;
    CHECK(watch.watch({draft, part}));
    CHECK_FALSE(watch.watch({draft, part}));
    CHECK(watch.changes().empty());
    folder.write("other.resume", "1");
    CHECK(watch.changes().empty());
    folder.write("draft.resume", "2");
    CHECK(watch.changes() == std::set{draft});
    folder.write("parts/a.new", "2");
    fs::rename(folder.path() / "parts/a.new", part);
    CHECK(watch.changes() == std::set{part});
    fs::remove(draft);
    CHECK(watch.changes() == std::set{draft});
    folder.write("draft.resume", "3"); // and is there again
    CHECK(watch.changes() == std::set{draft});
    CHECK_FALSE(watch.watch({draft}));
    folder.write("parts/a.resume", "3");
    CHECK(watch.changes().empty());
}
