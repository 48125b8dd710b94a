// The words that a page says by itself: those installed, and what is wrong with others.
#include "compiler/stages/model/dates.hpp"
#include "compiler/stages/page_words/words.hpp"
#include "tests/fixtures/read_resume.hpp"

#include <doctest/doctest.h>
#include <unicode/udat.h>
#include <unicode/unistr.h>

#include <filesystem>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;
using quoin::page_words::Words;

const fs::path folder = fs::path(QUOIN_DATA_FOLDER) / "themes" / "words";

Words words_of(const std::string& language) {
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    auto words = quoin::page_words::read_words(sources, folder, language, {}, diagnostics);
    CHECK(diagnostics.all().empty());
    return words;
}

// What is said of the English words with a piece replaced.
std::string said_of(const std::string& find, const std::string& replace) {
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    const auto file = sources.read(folder / "en", diagnostics);
    REQUIRE(file);
    std::string text = sources.file(*file).text;
    REQUIRE(text.find(find) != std::string::npos);
    sources.hold(folder / "en", text.replace(text.find(find), find.size(), replace));
    quoin::page_words::read_words(sources, folder, "en", {}, diagnostics);
    std::string said;
    for (const auto& one : diagnostics.all())
        said += one.text + '\n';
    return said;
}

std::vector<std::string> icu_names(const char* language, UDateFormatSymbolType which) {
    UErrorCode fault = U_ZERO_ERROR;
    UDateFormat* format = udat_open(UDAT_NONE, UDAT_LONG, language, nullptr, 0, nullptr, 0, &fault);
    std::vector<std::string> names;
    for (int i = 0; i < udat_countSymbols(format, which); ++i) {
        UChar name[64];
        const int32_t length = udat_getSymbols(format, which, i, name, 64, &fault);
        std::string text;
        icu::UnicodeString(name, length).toUTF8String(text);
        names.push_back(text);
    }
    udat_close(format);
    REQUIRE(U_SUCCESS(fault));
    return names;
}

std::string printed(const std::string& typed, const std::string& language,
                    quoin::trade::DateForm form) {
    const Words words = words_of(language);
    const auto read = quoin::model::read_dates(typed, quoin::model::LocalDates(words.dates));
    if (const auto* fault = std::get_if<quoin::model::DateFault>(&read)) return fault->text;
    std::string text = print(std::get<quoin::model::DateRange>(read), form, words.dates);
    for (auto at = text.find("\u00A0"); at != std::string::npos; at = text.find("\u00A0"))
        text.replace(at, 2, " ");
    return text;
}

}

TEST_CASE("words: English") {
    const Words words = words_of("en-US");
    CHECK(words.dates.months[8] == "September");
    CHECK(words.dates.short_months[8] == "Sep");
    CHECK(words.dates.seasons[2] == "Fall");
    CHECK(words.dates.present == "Present");
    CHECK(words.dates.expected == "(expected)");
    CHECK(words.email + words.phone + words.web_page == "EmailPhoneWeb page");
    CHECK(words.resume == "résumé");
    CHECK(words.of_pattern("courses") == "Relevant courses:");
}

TEST_CASE("words: what sections are headed by, for who reads a page") {
    const Words french = words_of("fr");
    REQUIRE(!french.titles.empty());
    CHECK(french.titles.front().title == "Formation");
    CHECK(french.titles.front().holds == quoin::trade::Holds::education);
    CHECK(said_of("resume: ", "titles-hobbies: Tides\nresume: ").find("'titles-hobbies'") !=
          std::string::npos);
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    CHECK(quoin::page_words::read_all_words(sources, folder, diagnostics).size() == 4);
    CHECK(diagnostics.all().empty());
}

// A region has the words of its language but for those of its own file.
TEST_CASE("words: regions") {
    CHECK(words_of("en-GB").dates.seasons[2] == "Autumn");
    CHECK(words_of("en-GB").dates.present == "Present");
    CHECK(words_of("fr-CA").dates.present == "aujourd’hui");
    CHECK(words_of("de-Latn-AT").of_pattern("page") == "Seite");
}

// Against the Unicode CLDR, as ICU carries it.
TEST_CASE("words: months as the CLDR has them beside a year") {
    for (const char* language : {"en", "en-GB", "fr", "de", "es"}) {
        CAPTURE(language);
        const auto dates = words_of(language).dates;
        CHECK(std::vector(dates.months.begin(), dates.months.end()) ==
              icu_names(language, UDAT_MONTHS));
        CHECK(std::vector(dates.short_months.begin(), dates.short_months.end()) ==
              icu_names(language, UDAT_SHORT_MONTHS));
    }
}

TEST_CASE("words: dates are read and printed in their language") {
    using enum quoin::trade::DateForm;
    const struct {
        const char* language;
        const char* typed;
        quoin::trade::DateForm form;
        const char* printed;
    } cases[] = {
        {"fr", "juin 2025 - août 2025", short_month, "juin 2025 – août 2025"},
        {"fr", "Février 2025 à Décembre 2025", short_month, "févr. 2025 – déc. 2025"},
        {"fr", "fevrier 2025 - dec. 2025", long_month, "février 2025 – décembre 2025"},
        {"fr", "depuis sept. 2024", short_month, "sept. 2024 – aujourd’hui"},
        {"fr", "sept 2024 - aujourd'hui", short_month, "sept. 2024 – aujourd’hui"},
        {"fr", "sept. 2024 – à ce jour", short_month, "sept. 2024 – aujourd’hui"},
        {"fr", "de mai à juillet 2025", short_month, "mai 2025 – juil. 2025"},
        {"fr", "1er juin 2025", short_month, "juin 2025"},
        {"fr", "été 2025", short_month, "été 2025"},
        {"fr", "juin 2027 (prévu)", short_month, "juin 2027 (prévu)"},
        {"fr", "May 2027 (expected)", short_month, "mai 2027 (prévu)"},
        {"fr", "jui 2025", short_month, "'jui' is no month or season; did you mean 'juin'?"},
        {"de", "März 2025 bis Okt. 2025", short_month, "März 2025 – Okt. 2025"},
        {"de", "15. Juni 2025", long_month, "Juni 2025"},
        {"de", "seit Dezember 2024", short_month, "Dez. 2024 – heute"},
        {"es", "junio de 2025 - agosto de 2025", long_month, "junio de 2025 – agosto de 2025"},
        {"es", "ene 2025 a sept 2025", short_month, "ene 2025 – sept 2025"},
        {"es", "desde mayo de 2025", short_month, "may 2025 – actualidad"},
        {"es", "15 de junio de 2025", short_month, "jun 2025"},
        {"es", "marzo 2025 - presente", month_slash_year, "03/2025 – actualidad"},
        {"en-GB", "Sep 2025", short_month, "Sept 2025"},
    };
    for (const auto& each : cases) {
        CAPTURE(each.language);
        CAPTURE(each.typed);
        CHECK(printed(each.typed, each.language, each.form) == each.printed);
    }
}

TEST_CASE("words: a language without them is refused by name") {
    CHECK(quoin::fixtures::read_below_name("language: pt-BR").messages() ==
          "draft.resume:2:11: error: a page has no words in 'pt-BR' yet; expected one of de, en, "
          "en-GB, es, fr, or a file 'pt' with its words beside them");
}

TEST_CASE("words: what is wrong") {
    CHECK(said_of("email: Email", "email: Mail") == "");
    CHECK(said_of("email: Email\n", "") ==
          "there is no 'email' in these words of a page: add the line\n");
    CHECK(said_of("present: Present", "present: Present\nhere: Here") ==
          "no page says 'here': expected a label as in 'words/en'\n");
    CHECK(said_of("Spring, ", "") == "'seasons' has 4 words with commas between, found 3\n");
}
