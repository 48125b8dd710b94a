// What was set last time is told by bytes: times, which clocks differ in, count for nothing.
#include "compiler/commands/set/last_set.hpp"

#include <doctest/doctest.h>

#include <unistd.h>

#include <chrono>
#include <filesystem>
#include <fstream>
#include <functional>
#include <initializer_list>
#include <set>
#include <string>
#include <string_view>

namespace quoin::commands {

namespace {

namespace fs = std::filesystem;

class SetFolder {
public:
    SetFolder() { fs::create_directories(top); }
    ~SetFolder() { fs::remove_all(top); }
    SetFolder(const SetFolder&) = delete;
    SetFolder& operator=(const SetFolder&) = delete;

    void put(const fs::path& name, std::string_view bytes) const {
        std::ofstream(top / name, std::ios::binary) << bytes;
    }
    LastSet last(std::string_view asked = "draft=") const { return {top / "caches", asked}; }
    std::set<fs::path> files() const { return {top / "a.resume", top / "a.pdf"}; }

    const fs::path top = fs::temp_directory_path() / ("quoin last set " + std::to_string(getpid()));
};

void damage(const fs::path& caches) {
    for (const auto& kept : fs::directory_iterator(caches / "set"))
        std::ofstream(kept.path()) << "torn";
}

}

TEST_CASE("set --if-changed: what was read and written then holds the same bytes, or it is set") {
    using Change = std::function<void(const SetFolder&)>;
    struct Case {
        std::string_view what;
        Change change;
        bool stands;
    };
    const auto later = fs::file_time_type::clock::now() + std::chrono::hours(48);
    for (const Case& one : std::initializer_list<Case>{
             {"nothing", [](const SetFolder&) {}, true},
             {"a time",
              [&](const SetFolder& in) { fs::last_write_time(in.top / "a.resume", later); }, true},
             {"a source of the same length and time",
              [](const SetFolder& in) {
                  const auto time = fs::last_write_time(in.top / "a.resume");
                  in.put("a.resume", "name: B\n");
                  fs::last_write_time(in.top / "a.resume", time);
              },
              false},
             {"a PDF that is another's", [](const SetFolder& in) { in.put("a.pdf", "%PDF-2"); },
              false},
             {"a PDF that has gone", [](const SetFolder& in) { fs::remove(in.top / "a.pdf"); },
              false},
             {"what is kept is damaged", [](const SetFolder& in) { damage(in.top / "caches"); },
              false},
             {"what is kept has gone",
              [](const SetFolder& in) { fs::remove_all(in.top / "caches"); }, false}}) {
        const SetFolder in;
        in.put("a.resume", "name: A\n");
        in.put("a.pdf", "%PDF-1");
        in.last().keep(in.files());
        one.change(in);
        INFO(one.what);
        CHECK(in.last().still_stands() == one.stands);
        CHECK(!in.last("draft").still_stands());
    }
}

TEST_CASE("set --if-changed: nothing is kept of a file that cannot be read") {
    const SetFolder in;
    in.put("a.resume", "name: A\n");
    in.last().keep(in.files());
    CHECK(!in.last().still_stands());
}

}
