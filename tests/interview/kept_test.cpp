// What is kept between answers: it reads as it was written, and what is damaged is told at its
// line.
#include "tests/fixtures/own_folder.hpp"
#include "tests/interview/talk.hpp"

#include "compiler/interview/kept_file.hpp"

namespace quoin::interview {

namespace {

const std::string sound = "quoin begin, version 1\n"
                          "# a note\n"
                          "next: Heading / 1 / email / 1\n"
                          "\n"
                          "section: Beginning\n"
                          "\n"
                          "stage: undergraduate\n"
                          "\n"
                          "section: Heading\n"
                          "\n"
                          "name: Wren Halloran\n";

std::string with(std::string_view find, std::string_view replace) {
    std::string text = sound;
    const std::size_t at = text.find(find);
    REQUIRE(at != std::string::npos);
    return text.replace(at, find.size(), replace);
}

std::string faults_of(const std::string& text) {
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.add("draft.begin", text, diagnostics, TextOf::elsewhere);
    if (file && read_kept(sources, *file, diagnostics)) return {};
    std::string told;
    for (const Diagnostic& diagnostic : diagnostics.all())
        told += format(diagnostic, sources) + '\n';
    return told;
}

}

TEST_CASE("kept: what is damaged or of another version is told at its line") {
    struct Damaged {
        std::string text;
        const char* told;
    };
    for (const Damaged& one : {
             Damaged{sound, ""},
             Damaged{"", "draft.begin:1:1: error: these answers were kept by another version"},
             Damaged{with("version 1", "version 2"),
                     "draft.begin:1:1: error: these answers were kept by another version of quoin, "
                     "which this one cannot read; expected 'quoin begin, version 1'"},
             Damaged{with("next: Heading / 1 / email / 1", "next: Heading / 1 / e"),
                     "draft.begin:3:1: error: 'Heading / 1 / e' names no question"},
             Damaged{with("/ 1\n", "/ 0\n"), "draft.begin:3:1: error: "},
             Damaged{with("/ 1\n", "/ 99999999999999999999\n"), "draft.begin:3:1: error: "},
             Damaged{with("next: Heading / 1 / email / 1\n", ""), "error: '' names no question"},
             Damaged{with("section: Heading", "section: Heding"),
                     "draft.begin:9:1: error: 'Heding' is no section that is asked about; did you "
                     "mean 'Heading'?"},
             Damaged{with("name: Wren", "nam: Wren"),
                     "draft.begin:11:1: error: 'nam' is not asked about in this section; did you "
                     "mean 'name'?"},
             Damaged{with("name: Wren", "name Wren"), "draft.begin:11:1: error: 'name Wren"},
             Damaged{sound + "name: Otti Brandt\n",
                     "draft.begin:12:1: error: 'name' is answered twice"},
             Damaged{with("section: Beginning\n", ""), "draft.begin:6:1: error: expected a line"},
             Damaged{with("stage: undergraduate", "stage: freshman"),
                     "draft.begin:7:1: error: 'freshman' is none of these"},
             Damaged{with("Wren", "Wr\xff"), "draft.begin:11:"},
         }) {
        CAPTURE(one.text);
        const std::string told = faults_of(one.text);
        CAPTURE(told);
        CHECK((*one.told == '\0' ? told.empty() : told.find(one.told) != std::string::npos));
    }
}

TEST_CASE("kept: every form there is reads as what it was written from") {
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.read(QUOIN_SOURCE_FOLDER "/tests/interview/whole.begin", diagnostics);
    REQUIRE(file);
    const auto kept = read_kept(sources, *file, diagnostics);
    REQUIRE(kept);
    CHECK(kept->draft.entries("Experience").size() == 2);
    CHECK(kept->draft.entries("Experience").front().lines.size() == 2);
    CHECK(kept->draft.value("Education", "minor") == "Statistics");
    CHECK(label_at(plan_for(kept->draft), kept->next) == more_groups);
    CHECK(kept->next.line == 1);
    const std::string text = kept_text(*kept);
    const auto again = sources.add("again.begin", text, diagnostics);
    REQUIRE(again);
    CHECK(read_kept(sources, *again, diagnostics) == kept);
}

TEST_CASE("kept: one run has the file at a time, and lets go of it when it ends") {
    const fixtures::OwnFolder folder;
    const auto path = folder.path() / "draft.begin";
    {
        KeptFile first(path), second(path);
        CHECK_FALSE(first.is_there());
        CHECK(first.save({}) == std::nullopt);
        CHECK(second.is_there());
        CHECK(second.hold().value_or("").find("in use by another run") != std::string::npos);
        CHECK(first.save({}) == std::nullopt); // a new file of the same name, held again
        CHECK(second.hold().has_value());
    }
    KeptFile third(path);
    CHECK(third.hold() == std::nullopt);
    third.remove();
    CHECK_FALSE(third.is_there());
}

TEST_CASE("kept: a folder that cannot be written to is told") {
    KeptFile file("/nonexistent/draft.begin");
    CHECK(file.save({}).value_or("").find("/nonexistent") != std::string::npos);
}

}
