// The order of the rooms, as DEVELOPERS.md prints it: no file includes against it, and every room
// has its namespace.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

std::string read(const fs::path& file) {
    std::ifstream in(file);
    return {std::istreambuf_iterator<char>(in), {}};
}

// The indented list of the section `## The order`.
std::vector<std::string> rooms_in_order() {
    std::istringstream text(read(QUOIN_SOURCE_FOLDER "/DEVELOPERS.md"));
    std::vector<std::string> rooms;
    bool there = false;
    for (std::string line; std::getline(text, line);) {
        if (line.starts_with("## ")) there = line == "## The order";
        if (there && line.starts_with("    ")) rooms.push_back(line.substr(4));
    }
    return rooms;
}

// `path` from the project's folder on. A verb's folder belongs to the room of the commands.
std::string room_of(const std::string& path) {
    if (path.starts_with("grammar/")) return "grammar";
    const std::string folder = fs::path(path).parent_path().string();
    if (path.starts_with("compiler/commands/") || folder == "compiler") return "commands";
    return folder.substr(std::string("compiler/").size());
}

std::string namespace_of(const std::string& room) {
    if (room == "base") return "quoin";
    return "quoin::" + room.substr(room.rfind('/') + 1);
}

// What a file of that text would do against the order, one a line; nothing if all is well.
std::string faults_of(const std::string& path, const std::string& text,
                      const std::vector<std::string>& rooms) {
    const auto rank = [&](const std::string& room) { return std::ranges::find(rooms, room); };
    const std::string room = room_of(path);
    if (rank(room) == rooms.end()) return path + " is in no room of the list\n";
    static const std::regex include("#include \"((?:compiler|grammar)/[^\"]+)\"");
    static const std::regex opening("\nnamespace (quoin[a-z:]*) \\{");
    std::string faults;
    for (std::sregex_iterator it(text.begin(), text.end(), include), end; it != end; ++it) {
        const std::string other = room_of((*it)[1]);
        if (rank(other) == rooms.end() || rank(other) > rank(room))
            faults += path + " includes " + (*it)[1].str() + "\n";
    }
    if (room == "grammar") return faults; // a namespace for each language
    for (std::sregex_iterator it(text.begin(), text.end(), opening), end; it != end; ++it)
        if ((*it)[1] != namespace_of(room) && (*it)[1] != namespace_of(room) + "::messages")
            faults += path + " opens " + (*it)[1].str() + "\n";
    return faults;
}

}

TEST_CASE("order: no file includes against it or opens another room's namespace") {
    const auto rooms = rooms_in_order();
    REQUIRE(rooms.size() > 10);
    std::size_t files = 0;
    for (const char* top : {"compiler", "grammar"})
        for (const auto& entry :
             fs::recursive_directory_iterator(fs::path(QUOIN_SOURCE_FOLDER) / top)) {
            const std::string kind = entry.path().extension().string();
            if (kind != ".cpp" && kind != ".hpp") continue;
            const std::string path =
                entry.path().lexically_relative(QUOIN_SOURCE_FOLDER).generic_string();
            CHECK(faults_of(path, read(entry.path()), rooms) == "");
            ++files;
        }
    CHECK(files > 200);
}

TEST_CASE("order: what goes against it is found") {
    const std::vector<std::string> rooms{"base", "stages/lines", "stages/fit", "commands"};
    struct Case {
        const char* path;
        const char* text;
        const char* faults;
    };
    for (const Case& test : {
             Case{"compiler/stages/fit/a.cpp",
                  "#include \"compiler/stages/lines/b.hpp\"\n\nnamespace quoin::fit {\n", ""},
             Case{"compiler/commands/set/a.cpp",
                  "#include \"compiler/stages/fit/b.hpp\"\n\nnamespace quoin::commands {\n", ""},
             Case{"compiler/stages/lines/a.hpp", "#include \"compiler/stages/fit/b.hpp\"\n",
                  "compiler/stages/lines/a.hpp includes compiler/stages/fit/b.hpp\n"},
             Case{"compiler/base/a.cpp", "#include \"compiler/attic/b.hpp\"\n",
                  "compiler/base/a.cpp includes compiler/attic/b.hpp\n"},
             Case{"compiler/base/a.cpp", "\nnamespace quoin::fit {\n",
                  "compiler/base/a.cpp opens quoin::fit\n"},
             Case{"compiler/attic/a.cpp", "", "compiler/attic/a.cpp is in no room of the list\n"},
         }) {
        CAPTURE(test.path);
        CHECK(faults_of(test.path, test.text, rooms) == test.faults);
    }
}
