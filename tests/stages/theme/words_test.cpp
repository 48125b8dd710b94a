// The words that a page says by itself: those installed, and what is wrong with others.
#include "compiler/stages/theme/words.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <string>

namespace {

namespace fs = std::filesystem;

const fs::path english_file = fs::path(QUOIN_DATA_FOLDER) / "themes" / "words" / "en";

// What is said of the English words with a piece replaced.
std::string said_of(const std::string& find, const std::string& replace) {
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    const auto file = sources.read(english_file, diagnostics);
    REQUIRE(file);
    std::string text = sources.file(*file).text;
    REQUIRE(text.find(find) != std::string::npos);
    sources.hold("words", text.replace(text.find(find), find.size(), replace));
    quoin::theme::read_words(sources, "words", diagnostics);
    std::string said;
    for (const auto& one : diagnostics.all())
        said += format(one, sources) + '\n';
    return said;
}

}

TEST_CASE("words: English") {
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    const auto words = quoin::theme::read_words(sources, english_file, diagnostics);
    CHECK(diagnostics.all().empty());
    CHECK(words.dates.months[8] == "September");
    CHECK(words.dates.short_months[8] == "Sep");
    CHECK(words.dates.seasons[2] == "Fall");
    CHECK(words.dates.present == "Present");
    CHECK(words.dates.expected == "(expected)");
    CHECK(words.email + words.phone + words.web_page == "EmailPhoneWeb page");
    CHECK(words.resume == "résumé");
}

TEST_CASE("words: what is wrong") {
    CHECK(said_of("email: Email", "email: Mail") == "");
    CHECK(said_of("email: Email\n", "") ==
          "words: error: there is no 'email' in these words of a page: add the line\n");
    CHECK(said_of("present: Present", "present: Present\nhere: Here") ==
          "words:9:1: error: no page says 'here': expected a label as in 'words/en'\n");
    CHECK(said_of("Spring, ", "") ==
          "words:7:10: error: 'seasons' has 4 words with commas between, found 3\n");
}
