// Depfiles: GNU make 4.3 as the outside reader, which takes the names apart again.
#include "compiler/commands/set/depfile.hpp"

#include "tests/fixtures/own_folder.hpp"
#include "tests/fixtures/run_command.hpp"

#include <doctest/doctest.h>

#include <fmt/format.h>

#include <cctype>
#include <filesystem>
#include <string>
#include <vector>

namespace quoin::commands {

namespace {

// What make makes of a name that stands before a rule's colon, and of one behind it.
std::string read_back(const fixtures::OwnFolder& folder, const std::string& makefile,
                      const std::string& target, const std::string& prerequisite) {
    const std::string targets[] = {target};
    const std::filesystem::path prerequisites[] = {prerequisite};
    folder.write("out.d", depfile(targets, prerequisites));
    folder.write("Makefile", makefile);
    return fixtures::run("make -s -C '" + folder.path().string() + "' 2>&1");
}

// Each sign of ASCII before, within and behind a name.
std::vector<std::string> names_with_signs() {
    std::vector<std::string> names;
    for (int code = ' '; code < 0x7F; ++code) {
        const std::string sign(1, static_cast<char>(code));
        if (sign == "/" || std::isalnum(code) != 0) continue;
        for (const char* form : {"{}ab", "a{}b", "ab{}", "a{}{}b"})
            names.push_back(fmt::format(fmt::runtime(form), sign, sign));
    }
    return names;
}

}

TEST_CASE("depfile: one rule, and an empty rule for each prerequisite") {
    const std::string targets[] = {"a.pdf", "a.txt"};
    const std::filesystem::path prerequisites[] = {"a.resume", "shared/b.resume"};
    CHECK(depfile(targets, prerequisites) ==
          "a.pdf a.txt: \\\n  a.resume \\\n  shared/b.resume\n\na.resume:\n\nshared/b.resume:\n");
}

TEST_CASE("depfile: GNU make reads back each name that may be held") {
    std::vector<std::string> names = names_with_signs();
    for (const char* name :
         {"plain",       "two words",    "hash#mark", "dollar$sign",  "$(touch ran)",
          "back\\slash", "back\\ space", "é — ü",     "co:lon",       "back\\:colon",
          "a&b",         "a`b`",         "~",         "~root",        "*",
          "?",           "[ab]",         "a(b)",      "a (b).resume", "define",
          "undefine",    "export",       "include",   "endif",        ".IGNORE",
          ".SILENT",     ".c.o",         ".resume",   "a]b[c"})
        names.emplace_back(name);
    const fixtures::OwnFolder folder;
    for (const char* decoy : {"a", "b", "xab", "axb", "axxb", "abx"}) // what a pattern would find
        folder.write(decoy, "decoy");
    int held = 0;
    for (const std::string& name : names) {
        if (!unholdable(name).empty()) continue;
        ++held;
        CAPTURE(name);
        folder.write(name, "x");
        const char* prerequisites = "all: out.pdf\nout.pdf:\n"
                                    "\t@printf %s '$(subst ','\\'',$^)'\ninclude out.d\n";
        CHECK(read_back(folder, prerequisites, "out.pdf", name) == name);
        if (name.starts_with('.')) continue; // which is no goal of itself
        const char* goal = "include out.d\n$(info $(.DEFAULT_GOAL))\n";
        CHECK(read_back(folder, goal, name, "a") == name + '\n');
    }
    CHECK(held > 80);
    CHECK_FALSE(std::filesystem::exists(folder.path() / "ran"));
}

TEST_CASE("depfile: names that make cannot read are told by their sign") {
    const struct {
        std::string name, sign;
    } cases[] = {{"a;b", ";"},     {"a|b", "|"},   {"a%b", "%"},   {"a=b", "="},
                 {"a\tb", "\t"},   {"a\nb", "\n"}, {"a\\", "\\"},  {"a&", "&"},
                 {"a*.pdf", "*"},  {"a?", "?"},    {"[1].d", "["}, {"~root/a", "~"},
                 {"lib(a)", "("},  {"(a", ""},     {"a~", ""},     {".IGNORE", ".IGNORE"},
                 {".ignore", ""},  {"a.B", ""},    {".", ""},      {"define", "define"},
                 {"defined", ""},  {"a b.c", ""},  {"a:b", ""},    {"../a", ""},
                 {"a/.IGNORE", ""}};
    for (const auto& one : cases) {
        CAPTURE(one.name);
        CHECK(unholdable(one.name) == one.sign);
    }
}

}
