// The cache may be deleted, damaged, read-only or shared, and what comes out is what went in.
#include "compiler/base/digest.hpp"
#include "compiler/caseload/cache.hpp"
#include "compiler/caseload/look.hpp"

#include <doctest/doctest.h>
#include <unistd.h>

#include <fstream>

namespace quoin::caseload {

namespace {

namespace fs = std::filesystem;

class CacheFolder {
public:
    ~CacheFolder() { fs::remove_all(path); }

    void write(const std::string& name, std::string_view text) const {
        fs::create_directories(path);
        std::ofstream(path / name, std::ios::binary) << text;
    }
    fs::path file() const { return path / "caseload-1.sqlite"; }

    fs::path path = fs::temp_directory_path() / ("quoin-cache-" + std::to_string(getpid()));
};

}

TEST_CASE("caseload: what is kept is found again, of its key and its day alone") {
    const CacheFolder folder;
    {
        Cache cache(folder.path);
        cache.keep("a", 7, std::string("\0value", 6));
        CHECK_FALSE(cache.find("b", 7).has_value());
        CHECK(cache.note().empty());
    }
    Cache again(folder.path), at_once(folder.path);
    CHECK(again.find("a", 7) == std::string("\0value", 6));
    CHECK_FALSE(again.find("a", 8).has_value());
    at_once.keep("a", 8, "new");
    at_once.flush();
    CHECK(again.find("a", 8) == "new");
    CHECK_FALSE(again.find("a", 7).has_value());
    const auto shut = fs::perms::group_all | fs::perms::others_all;
    CHECK((fs::status(folder.file()).permissions() & shut) == fs::perms::none);
}

TEST_CASE("caseload: a damaged cache is set aside and made anew, with one note") {
    const CacheFolder folder;
    for (const std::string& damage :
         {std::string("this is no data base at all, and has never been one"),
          std::string(20000, '\0'), "SQLite format 3" + std::string(5000, 'x')}) {
        folder.write("caseload-1.sqlite", damage);
        {
            Cache cache(folder.path);
            cache.keep("a", 1, "value");
            cache.flush();
            CHECK(cache.find("a", 1) == "value");
            CHECK(cache.note().find("was damaged") != std::string::npos);
            CHECK(cache.note().empty());
        }
        CHECK(fs::exists(folder.path / "caseload-1.sqlite.damaged"));
        Cache again(folder.path);
        CHECK(again.find("a", 1) == "value");
        CHECK(again.note().empty());
    }
}

// Every byte of it in turn, in steps: what comes out is what went in, or nothing.
TEST_CASE("caseload: a cache with a wrong byte gives no wrong answer") {
    const CacheFolder folder;
    {
        Cache cache(folder.path);
        for (int i = 0; i < 40; ++i)
            cache.keep("key" + std::to_string(i), 1, std::string(300, static_cast<char>('a' + i)));
    }
    std::ifstream in(folder.file(), std::ios::binary);
    const std::string whole{std::istreambuf_iterator<char>(in), {}};
    for (std::size_t at = 0; at < whole.size(); at += 97) {
        std::string wrong = whole;
        wrong[at] = static_cast<char>(wrong[at] ^ 0x55);
        folder.write("caseload-1.sqlite", wrong);
        Cache cache(folder.path);
        for (int i = 0; i < 40; ++i)
            if (const auto value = cache.find("key" + std::to_string(i), 1))
                CHECK(*value == std::string(300, static_cast<char>('a' + i)));
    }
}

TEST_CASE("caseload: without a folder to write to, all is found anew") {
    const CacheFolder folder;
    folder.write("file", "");
    Cache cache(folder.path / "file" / "below");
    cache.keep("a", 1, "value");
    cache.flush();
    CHECK_FALSE(cache.find("a", 1).has_value());
    CHECK(cache.note().find("cannot be written") != std::string::npos);
    CHECK_FALSE(cache.numbers("Fall 2026", {"a"}).has_value());
}

TEST_CASE("caseload: numbers stay through a term, and the next begins anew") {
    const CacheFolder folder;
    using Numbers = std::vector<std::int64_t>;
    {
        Cache cache(folder.path);
        CHECK(cache.numbers("Fall 2026", {"b", "a"}) == Numbers{1, 2});
    }
    Cache cache(folder.path);
    CHECK(cache.numbers("Fall 2026", {"a", "c", "b"}) == Numbers{2, 3, 1});
    CHECK(cache.numbers("Spring 2027", {"c", "a"}) == Numbers{1, 2});
}

TEST_CASE("caseload: a draft is looked at again when a byte that it hangs on has changed") {
    const CacheFolder folder;
    Cache cache(folder.path / "cache");
    folder.write("a.resume", "name: A\n");
    folder.write("part.resume", "section: B\n");
    int looked = 0;
    Means means{.appraise =
                    [&](const fs::path& path, const std::optional<std::string>& text) {
                        ++looked;
                        Appraisal found{.name = "A"};
                        const std::string own = text ? *text : *bytes_of(path);
                        found.read = {{path, digest_of(own)},
                                      {folder.path / "part.resume",
                                       digest_of(*bytes_of(folder.path / "part.resume"))}};
                        if (own.empty()) found.fault = "empty";
                        return found;
                    },
                .version = "1",
                .today = Day(std::chrono::days(20000)),
                .cache = &cache};
    const fs::path draft = folder.path / "a.resume";
    const auto look = [&] {
        looked = 0;
        CHECK(Look(means).at(draft).name == "A");
        return looked;
    };
    const auto look_at_earlier = [&](const std::string& name) {
        looked = 0;
        CHECK(Look(means).earlier(draft, name, [] { return "name: earlier\n"; })->name == "A");
        return looked;
    };
    CHECK(look() == 1);
    CHECK(look() == 0);
    CHECK(look_at_earlier("1") == 1); // under its own name
    CHECK(look_at_earlier("1") == 0);
    CHECK(look() == 0);
    folder.write("part.resume", "section: C\n");
    CHECK(look() == 1);
    CHECK(look() == 0);
    means.version = "2";
    CHECK(look() == 1);
    means.today += std::chrono::days(1);
    CHECK(look() == 1);
    folder.write("a.resume", "");
    CHECK(look() == 1);
    CHECK(look() == 1); // what failed is tried again
    means.cache = nullptr;
    CHECK(look() == 1);
}

}
