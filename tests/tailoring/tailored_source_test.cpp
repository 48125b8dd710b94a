// The source that tailoring writes: line by line, and read again.
#include "compiler/tailoring/tailored_source.hpp"
#include "tests/composed.hpp"
#include "tests/fixtures/own_folder.hpp"
#include "tests/fixtures/read_resume.hpp"
#include "tests/tailoring/demands.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <optional>
#include <string>

namespace tailored_source_test {

namespace {

using namespace quoin;
using tailoring_tests::Words;

const std::filesystem::path folder = QUOIN_DATA_FOLDER;

struct Case {
    Sources sources;
    Diagnostics diagnostics;
    std::uint32_t file = 0;
    std::optional<model::Resume> resume;
    std::optional<tailoring::Tailored> tailored;
    tailoring::Demand demand;

    Case(const std::string& text, const Words& words) {
        tailor(sources.add("draft.resume", text, diagnostics), words);
    }
    Case(const fixtures::OwnFolder& own, const Words& words) {
        tailor(sources.read(own.path() / "draft.resume", diagnostics), words);
    }

    void tailor(std::optional<std::uint32_t> read, const Words& words) {
        REQUIRE(read);
        file = *read;
        resume = model::build_resume(sources, file, folder / "themes" / "words", diagnostics);
        REQUIRE(resume);
        demand = tailoring_tests::demand(*resume, words);
        const auto theme = theme::read_theme(sources, folder / "themes", "turnstone", "",
                                             {file, 0, 0, 0}, diagnostics);
        REQUIRE(theme);
        tailored =
            tailoring::tailor(*resume, demand, {*theme, folder, composed::fonts()}, diagnostics);
        REQUIRE(tailored);
    }

    std::string source(const std::filesystem::path& into = "draft-folder") const {
        const std::filesystem::path words = folder / "themes" / "words";
        return tailoring::tailored_source(
            *resume, demand, *tailored,
            {.sources = sources, .file = file, .folder = into, .words = words});
    }
};

const std::string heading = "name: Ottoline Brandt\nsize: 12\n\n";

// What the sections hold: fields, items and bullets, without where they stand.
std::string held(const model::Resume& resume) {
    std::string text;
    for (const model::Field& field : resume.heading)
        text += fixtures::value_of(field) + "\n";
    for (const model::Section& section : resume.sections) {
        text +=
            section.title.plain() + " " + std::to_string(static_cast<int>(section.holds)) + "\n";
        for (const model::Entry& entry : section.entries) {
            const auto show = [&](const model::Entry& position) {
                for (const model::Field& field : position.fields)
                    text += "  " + fixtures::value_of(field) + "\n";
                for (const model::Bullet& bullet : position.bullets)
                    text += "  - " + bullet.text.plain() + "\n";
            };
            show(entry);
            for (const model::Entry& further : entry.further)
                show(further);
        }
    }
    return text;
}

}

TEST_CASE("tailored source: what is left out is a comment that says why") {
    const Case one(
        heading + "section: Experience\n"
                  "\n"
                  "role: Intern\n"
                  "# of all summers the best\n"
                  "- Counted eelgrass on\n"
                  "  long transects\n"
                  "- Swept floors\n"
                  "- Mapped eelgrass\n"
                  "- Titrated samples\n"
                  "- Mended nets\n"
                  "- Kept eelgrass log\n"
                  "  on paper {log}\n"
                  "- Wrote on salinity\n"
                  "\n"
                  "# seasonal work\n"
                  "role: Deckhand\n"
                  "- Painted decks {!log}\n",
        {{"salinity", 9}, {"eelgrass", 2}, {"Titrated", 2}, {"decks", 2}, {"Mended", 1}});
    CHECK(one.source() ==
          heading + "section: Experience\n"
                    "\n"
                    "role: Intern\n"
                    "# of all summers the best\n"
                    "- Wrote on salinity\n"
                    "# left out for this posting: it asks for nothing here, and the page is full\n"
                    "# - Swept floors\n"
                    "- Counted eelgrass on\n"
                    "  long transects\n"
                    "- Mapped eelgrass\n"
                    "- Titrated samples\n"
                    "# left out for this posting: shows 'eelgrass', which line 11 "
                    "shows already\n"
                    "# - Kept eelgrass log\n"
                    "#   on paper {log}\n"
                    "- Mended nets\n"
                    "\n"
                    "# seasonal work\n"
                    "role: Deckhand\n"
                    "- Painted decks {!log}\n");
}

TEST_CASE("tailored source: of wordings one, and lists to save a line") {
    const Case one("name: Ottoline Brandt\nheadline: Bench {lab}\nheadline: Field {field}\n\n"
                   "section: Skills\n\nData: R, QGIS\n",
                   {{"Field", 1}});
    CHECK(one.source() == "name: Ottoline Brandt\n"
                          "# left out for this posting: another wording serves it better\n"
                          "# headline: Bench {lab}\nheadline: Field\n\n"
                          "section: Skills\n\nData: R, QGIS\n");
}

TEST_CASE("tailored source: read again it is what was chosen") {
    std::ifstream in(QUOIN_SOURCE_FOLDER "/samples/everything/marine-biology.resume");
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    for (const Words& words :
         {Words{{"eelgrass", 9}, {"QGIS", 5}, {"water samples", 4}, {"skiff", 3}, {"Spanish", 2}},
          Words{{"Tutor", 5}, {"safety", 4}, {"laboratory", 4}, {"Python", 1}},
          Words{{"coffee", 5}}}) {
        const Case one(text, words);
        REQUIRE(std::holds_alternative<fit::Fit>(one.tailored->typeset.fit));
        const auto again = fixtures::read_resume(one.source());
        CAPTURE(one.source());
        CAPTURE(again.messages());
        REQUIRE(again.resume);
        CHECK(again.messages().empty());
        CHECK(held(*again.resume) == held(one.tailored->typeset.resume));
    }
}

TEST_CASE("tailored source: files taken in stay so where they can") {
    const fixtures::OwnFolder own;
    own.write("draft.resume", "name: Ottoline Brandt\ninclude: shared/skills.resume\nsize: 12\n\n"
                              "# what I did\nsection: Experience\n\nrole: Intern\n");
    const std::string skills = "# kept once\nsection: Skills\n\nData: R, QGIS\n";
    own.write("shared/skills.resume", skills);
    const Case whole(own, Words{});
    CHECK(whole.source(own.path()) ==
          "name: Ottoline Brandt\ninclude: shared/skills.resume\nsize: 12\n\n"
          "# what I did\nsection: Experience\n\nrole: Intern\n");
    CHECK(whole.source(own.path() / "shared") ==
          "name: Ottoline Brandt\ninclude: skills.resume\nsize: 12\n\n"
          "# what I did\nsection: Experience\n\nrole: Intern\n");
    const std::string taken_in = "name: Ottoline Brandt\nsize: 12\n\n# taken in: skills.resume\n" +
                                 skills + "\n# what I did\nsection: Experience\n\nrole: Intern\n";
    CHECK(whole.source(own.path() / "elsewhere") == taken_in);
    const auto again = fixtures::read_resume(taken_in);
    REQUIRE(again.resume);
    CHECK(held(*again.resume) == held(whole.tailored->typeset.resume));

    const std::string bullets = "- a\n- b\n- c\n- d\n- e\n- f eelgrass\n";
    own.write("shared/skills.resume", "section: Work\n\nrole: Diver\n" + bullets);
    const Case part(own, Words{{"eelgrass", 1}});
    const std::string source = part.source(own.path());
    CHECK(source.find("include:") == std::string::npos);
    CHECK(source.find("# - e\n") != std::string::npos);
    const auto read = fixtures::read_resume(source);
    REQUIRE(read.resume);
    CHECK(held(*read.resume) == held(part.tailored->typeset.resume));
}

} // namespace tailored_source_test
