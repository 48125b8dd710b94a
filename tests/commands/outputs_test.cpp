// What outputs may take the place of.
#include "compiler/commands/outputs.hpp"

#include "tests/fixtures/own_folder.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <string>
#include <utility>
#include <vector>

namespace quoin::commands {

TEST_CASE("outputs: a page or a report takes the place of no source, read or not") {
    const fixtures::OwnFolder folder;
    for (const char* name : {"read.txt", "other.resume", "own.theme", "draft.begin", "office.rules",
                             "old.pdf", "report.html"})
        folder.write(name, "name: Ottoline Brandt\n");
    std::filesystem::create_symlink("read.txt", folder.path() / "link.pdf");
    std::filesystem::create_hard_link(folder.path() / "read.txt", folder.path() / "same.pdf");
    for (const auto& [target, link] : {std::pair("other.resume", "to-other.pdf"),
                                       {"to-other.pdf", "by-two.pdf"},
                                       {"own.theme", "to-theme.txt"},
                                       {"old.pdf", "to-old.pdf"},
                                       {"gone.resume", "to-gone.pdf"}})
        std::filesystem::create_symlink(target, folder.path() / link);
    Sources sources;
    Diagnostics diagnostics;
    REQUIRE(sources.read(folder.path() / "read.txt", diagnostics));
    const struct {
        std::string output;
        bool spoils;
    } cases[] = {
        {"read.txt", true},     {"./read.txt", true},   {"link.pdf", true},
        {"same.pdf", true},     {"own.theme", true},    {"other.resume", true},
        {"draft.begin", true},  {"office.rules", true}, {"to-other.pdf", true},
        {"by-two.pdf", true},   {"to-theme.txt", true}, {"to-old.pdf", false},
        {"to-gone.pdf", false}, {"old.pdf", false},     {"report.html", false},
        {"new.pdf", false},     {"new.resume", false}, // nothing is there to be lost
    };
    for (const auto& one : cases) {
        CAPTURE(one.output);
        CHECK(would_spoil((folder.path() / one.output).string(), sources) == one.spoils);
    }
    CHECK_FALSE(would_spoil("-", sources));
    CHECK_FALSE(would_spoil("/dev/null", sources));
    CHECK_FALSE(would_write_over((folder.path() / "other.resume").string(), sources));
}

TEST_CASE("outputs: of several, none takes the place of any input, by whichever name") {
    const fixtures::OwnFolder folder;
    const auto path = [&](const std::string& name) { return (folder.path() / name).string(); };
    for (const char* name : {"one.resume", "two.resume"})
        folder.write(name, "name: Ottoline Brandt\n");
    SetRequest request;
    request.inputs = {path("one.resume"), path("two.resume"), path("gone.resume")};
    request.output = path("out");
    const auto fault = [&] {
        std::vector<Outputs> outputs;
        return plan_outputs(request, outputs);
    };
    std::filesystem::create_directory(request.output);
    CHECK_FALSE(fault());
    folder.write("out/one.pdf", "an old page");
    CHECK_FALSE(fault());
    std::filesystem::create_hard_link(path("two.resume"), path("out/gone.pdf"));
    CHECK(fault() == "'" + path("out/gone.pdf") +
                         "' is a source and would be overwritten; name another output with -o");
    std::filesystem::remove(path("out/gone.pdf"));
    std::filesystem::create_symlink(path("one.resume"), path("out/two.pdf"));
    CHECK(fault());
    request.inputs.pop_back();
    request.inputs.back() = path("out/one.pdf");
    CHECK(fault()); // by its own name
}

}
