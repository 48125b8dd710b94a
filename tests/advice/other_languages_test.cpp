// Résumés in other languages: what is read of them, and what is said to be passed over.
#include "compiler/advice/other_languages.hpp"
#include "compiler/advice/proof.hpp"
#include "tests/advice/proofread.hpp"
#include "tests/fixtures/read_resume.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

namespace {

using namespace quoin;

const std::string french_page = QUOIN_SOURCE_FOLDER "/tests/fixtures/french.resume";

std::string found_in(const std::string& text) {
    std::string found;
    const auto read = fixtures::proof_of(text);
    for (const advice::Finding& finding : read->proof.findings)
        found += std::string(finding.check) + ": " + finding.text + '\n';
    return found;
}

std::string french_with(const std::string& find, const std::string& replace) {
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.read(french_page, diagnostics);
    REQUIRE(file);
    std::string text = sources.file(*file).text;
    REQUIRE(text.find(find) != std::string::npos);
    return text.replace(text.find(find), find.size(), replace);
}

}

TEST_CASE("a page in French gets no advice on English") {
    CHECK(found_in(french_with("", "")) == "");
}

// Against Debian's hunspell-fr and hunspell-de-de
TEST_CASE("spelling by the dictionary of the language") {
    CHECK(found_in(french_with("bénévoles", "bénévolles")) ==
          "spelling: 'bénévolles' is not in the dictionary of 'fr'\n");
    CHECK(found_in(french_with("d’herbiers", "d’herbeirs")) ==
          "spelling: 'herbeirs' is not in the dictionary of 'fr'\n");
    CHECK(found_in("name: Jule Brandt\nemail: a@ellerystate.example\nphone: 030 23125 042\n"
                   "language: de\n\nsection: Erfahrung\nholds: experience\n\nrole: Hilfskraft\n"
                   "employer: Küstenstiftung\nplace: Ellery\ndates: seit Okt. 2024\n"
                   "- Proben für das Labor zusammengestelt und geprüft\n- Zwei Boote gewartet\n\n"
                   "section: Kenntnisse\nholds: skills\n\nLabor: Titration\n") ==
          "spelling: 'zusammengestelt' is not in the dictionary of 'de'\n");
}

// 020 7946 0xxx is kept by Ofcom for drama
TEST_CASE("phones of other countries are not told to be American") {
    const std::string page = "name: Ana Reyes\nemail: a@ellerystate.example\nphone: ";
    for (const char* number : {"020 7946 0958", "(020) 7946 0958", "+44 20 7946 0958"})
        CHECK(found_in(page + number + "\nlanguage: en-GB\n").find("phone-form") ==
              std::string::npos);
    CHECK(found_in(page + "020 7946\nlanguage: en-GB\n").find("phone-form") != std::string::npos);
    CHECK(found_in(page + "020 7946 0958\n").find("phone-form") != std::string::npos);
}

TEST_CASE("what is passed over is said once") {
    const auto said = [](const std::string& language) {
        const auto reading = fixtures::read_below_name("language: " + language);
        REQUIRE(reading.resume);
        return advice::passed_over(*reading.resume);
    };
    CHECK(said("en-US").empty());
    CHECK(said("fr") ==
          std::vector<std::string>{"in 'fr' what the words say is not read: wording, degrees, "
                                   "places and titles of sections are for a reader of that "
                                   "language to judge"});
    CHECK(said("fr-CA").size() == 1);
    CHECK(said("en-AU") == std::vector<std::string>{
                               "in 'en-AU' spelling is not looked at: quoin knows of no dictionary"});
}

TEST_CASE("the checks of any language are checks") {
    std::size_t known = 0;
    for (const advice::Check* check : advice::all_checks())
        if (advice::reads_any_language(check->name)) ++known;
    CHECK(known == 37); // those of the list, and the two of what is accepted
}
