// Files taken in: where their sections go, and which files may not be.
#include "tests/fixtures/own_folder.hpp"
#include "tests/fixtures/read_resume.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>

namespace quoin::model::include_test {
namespace {

namespace fs = std::filesystem;

class Folder : public fixtures::OwnFolder {
public:
    fixtures::Reading read(const std::string& name) const {
        fixtures::Reading reading;
        const auto file = reading.sources.read(path() / name, reading.diagnostics);
        if (file)
            reading.resume = build_resume(reading.sources, *file, QUOIN_DATA_FOLDER "/themes/words",
                                          reading.diagnostics);
        return reading;
    }
    // With the folder's own path taken out of the messages.
    std::string messages(const fixtures::Reading& reading) const {
        std::string text = reading.messages();
        const std::string prefix = path().string() + "/";
        for (auto at = text.find(prefix); at != std::string::npos; at = text.find(prefix))
            text.erase(at, prefix.size());
        return text;
    }
    std::string messages(const std::string& name) const { return messages(read(name)); }
};

std::string titles(const Resume& resume) {
    std::string text;
    for (const Section& section : resume.sections)
        text += section.title.plain() + "/" + std::to_string(section.entries.size()) + " ";
    return text;
}

constexpr const char* name = "name: Ottoline Brandt\n";

std::string section(const std::string& title) {
    return "section: " + title + "\nholds: honors\n\naward: " + title + "\n\n";
}

}

TEST_CASE("sections are taken in where the include stands") {
    const Folder folder;
    folder.write("main.resume", name + std::string{"include: parts/first.resume\n\n"} +
                                    section("B") +
                                    "award: More\n\n# and now\ninclude: parts/middle.resume\n\n" +
                                    "include: parts/deep/last.resume\n\n" + section("D"));
    folder.write("parts/first.resume", "# a comment is fine\n\n" + section("A"));
    folder.write("parts/middle.resume",
                 section("C1") + "include: deep/inner.resume\n\n" + section("C3"));
    folder.write("parts/deep/inner.resume", section("C2"));
    folder.write("parts/deep/last.resume", "include: inner.resume\n\n" + section("C4"));
    const auto reading = folder.read("main.resume");
    CHECK(folder.messages(reading) == "");
    REQUIRE(reading.resume);
    CHECK(titles(*reading.resume) == "A/1 B/2 C1/1 C2/1 C3/1 C2/1 C4/1 D/1 ");
    const std::vector<fs::path> files{
        folder.path() / "main.resume", folder.path() / "parts/first.resume",
        folder.path() / "parts/middle.resume", folder.path() / "parts/deep/inner.resume",
        folder.path() / "parts/deep/last.resume"};
    CHECK(reading.resume->files == files);
    const Place place = reading.resume->sections[3].entries[0].fields[0].place;
    CHECK(reading.sources.file(place.file).path == folder.path() / "parts/deep/inner.resume");
    CHECK(place.line == 4);
}

TEST_CASE("a circle is reported whole") {
    const Folder folder;
    folder.write("self.resume", name + std::string{"include: ./self.resume\n"});
    CHECK(folder.messages("self.resume") ==
          "self.resume:2:10: error: files include each other in a circle: self.resume -> "
          "self.resume; take one of these lines out");
    folder.write("a.resume", name + std::string{"include: parts/b.resume\n"});
    folder.write("parts/b.resume", "include: c.resume\n");
    folder.write("parts/c.resume", section("C") + "include: b.resume\n");
    CHECK(folder.messages("a.resume") ==
          "parts/c.resume:6:10: error: files include each other in a circle: parts/b.resume -> "
          "parts/c.resume -> parts/b.resume; take one of these lines out");
}

TEST_CASE("files that may not be taken in") {
    const Folder folder;
    folder.write("outside.resume", section("A"));
    folder.write("home/folder/x.resume", section("A"));
    fs::create_symlink("../outside.resume", folder.path() / "home/link.resume");
    fs::create_symlink("..", folder.path() / "home/up");
    fs::create_symlink("nowhere", folder.path() / "home/dangling.resume");
    const struct {
        std::string path;
        std::string message;
    } cases[] = {
        {"/etc/hosts", "'/etc/hosts' leads out of the folder of the résumé; expected a path below "
                       "it, such as 'parts/projects.resume'"},
        {"../outside.resume", "'../outside.resume' leads out of the folder of the résumé; expected "
                              "a path below it, such as 'parts/projects.resume'"},
        {"folder/../folder/x.resume",
         "'folder/../folder/x.resume' leads out of the folder of the résumé; expected a path below "
         "it, such as 'parts/projects.resume'"},
        {"link.resume", "'link.resume' is a link that leads out of the folder of the résumé; "
                        "expected a file in it"},
        {"up/outside.resume", "'up/outside.resume' is a link that leads out of the folder of the "
                              "résumé; expected a file in it"},
        {"none.resume", "no file 'none.resume'; its path is read from the folder of this file"},
        {"dangling.resume",
         "no file 'dangling.resume'; its path is read from the folder of this file"},
        {"folder", "'folder' is a folder; expected a file in it"},
    };
    for (const auto& one : cases) {
        CAPTURE(one.path);
        folder.write("home/main.resume", std::string{name} + "include: " + one.path + "\n");
        const auto reading = folder.read("home/main.resume");
        CHECK(folder.messages(reading) == "home/main.resume:2:10: error: " + one.message);
        CHECK_FALSE(reading.resume);
    }
    folder.write("home/main.resume", std::string{name} + "include: folder/x.resume {lab}\n");
    CHECK(folder.messages("home/main.resume") ==
          "home/main.resume:2:27: error: 'include' holds for every build; expected no tags after "
          "its value");
}

TEST_CASE("a link that stays in the folder is taken in") {
    const Folder folder;
    folder.write("parts/x.resume", section("A"));
    fs::create_symlink("parts/x.resume", folder.path() / "link.resume");
    folder.write("main.resume", std::string{name} + "include: link.resume\n");
    const auto reading = folder.read("main.resume");
    REQUIRE(reading.resume);
    CHECK(titles(*reading.resume) == "A/1 ");
}

TEST_CASE("an included file gives sections only") {
    const Folder folder;
    folder.write("main.resume", std::string{name} + "include: x.resume\n");
    const std::string move =
        " does not belong in an included file, which gives sections only; move "
        "it to 'main.resume', above the first 'section:' line";
    const struct {
        std::string lines;
        std::string message;
    } cases[] = {
        {"phone: (360) 555-0142\n", "1:1: error: 'phone'" + move},
        {"stage: experienced\n", "1:1: error: 'stage'" + move},
        {"award: A\n", "1:1: error: 'award' does not belong in the heading block; it is a field of "
                       "honors; expected a 'section:' line above it"},
        {"- A\n", "1:1: error: a bullet belongs to an entry; expected a 'section:' line above it"},
    };
    for (const auto& one : cases) {
        folder.write("x.resume", one.lines + section("A"));
        CHECK(folder.messages("main.resume") == "x.resume:" + one.message);
    }
}

TEST_CASE("an include stands apart from entries") {
    const Folder folder;
    folder.write("x.resume", section("X"));
    folder.write("main.resume", name + section("A") + "award: B\ninclude: x.resume\n");
    CHECK(folder.messages("main.resume") ==
          "main.resume:8:1: error: 'include' takes in whole sections; expected a blank line above "
          "and below it");
    folder.write("main.resume", name + section("A") + "include: x.resume\n\naward: B\n");
    CHECK(folder.messages("main.resume") ==
          "main.resume:9:1: error: an entry below 'include' is in no section; expected a "
          "'section:' line above it");
    folder.write("main.resume",
                 name + std::string{"section: Skills\n\nA: B\n\ninclude: x.resume\n"});
    const auto reading = folder.read("main.resume");
    CHECK(folder.messages(reading) == "");
    REQUIRE(reading.resume);
    CHECK(titles(*reading.resume) == "Skills/1 X/1 ");
}

TEST_CASE("how deep and how many are bounded") {
    const Folder folder;
    folder.write("main.resume", std::string{name} + "include: 1.resume\n");
    for (int i = 1; i <= 17; ++i)
        folder.write(std::to_string(i) + ".resume",
                     i == 17 ? section("A") : "include: " + std::to_string(i + 1) + ".resume\n");
    CHECK(folder.messages("main.resume") ==
          "16.resume:1:10: error: files include one another more than 16 deep; expected fewer "
          "steps");
    folder.write("16.resume", section("A"));
    CHECK(folder.messages("main.resume") == "");

    std::string many = name;
    for (int i = 0; i < 65; ++i)
        many += "include: 16.resume\n";
    folder.write("main.resume", many);
    CHECK(folder.messages("main.resume") ==
          "main.resume:66:10: error: more than 64 files are taken in; expected fewer");

    folder.write("large.resume", "#" + std::string(600'000, '-') + "\n");
    folder.write("main.resume",
                 std::string(name) + "include: large.resume\ninclude: large.resume\n");
    CHECK(folder.messages("main.resume") ==
          "main.resume:3:10: error: the files taken in are larger than 1 MiB all told; a résumé is "
          "a few kilobytes of text");
}

TEST_CASE("faults in an included file are named there, and where it is taken in") {
    const Folder folder;
    folder.write("main.resume", std::string{name} + "include: x.resume\n");
    folder.write("x.resume", "section: \xFF\n");
    const std::string messages = folder.messages("main.resume");
    CHECK(messages.find("x.resume:1:10: error: ") != std::string::npos);
    CHECK(messages.find("main.resume:2:10: note: 'x.resume' is included here") !=
          std::string::npos);
    folder.write("x.resume", section("A") + "awrd: B\n");
    CHECK(
        folder.messages("main.resume") ==
        "x.resume:6:1: error: unknown label 'awrd' in an 'honors' section; did you mean 'award'?");
}

TEST_CASE("text without a path takes files from the working folder") {
    const auto reading = fixtures::read_below_name("include: no-such-file.resume");
    CHECK(reading.messages() ==
          "draft.resume:2:10: error: no file 'no-such-file.resume'; its path is read from the "
          "folder of this file");
}

}
