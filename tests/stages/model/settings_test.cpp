// Values of settings: what is read, what is refused and in which words.
#include "compiler/trade/vocabulary.hpp"
#include "grammar/settings.hpp"
#include "tests/fixtures/read_resume.hpp"

#include <doctest/doctest.h>

#include <tao/pegtl/contrib/analyze.hpp>

namespace quoin::model {
namespace {

using fixtures::read_below_name;

struct Good {
    std::string line;
    std::string value; // as show() has it
};

std::string number(double value) {
    std::string text = std::to_string(value);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text;
}

std::string show(const Interval& interval) {
    return number(interval.least) + " to " + number(interval.most);
}

// Every setting that is stated.
std::string show(const Settings& settings) {
    std::string text;
    const auto add = [&](bool stated, const std::string& value) {
        if (stated) text += (text.empty() ? "" : ", ") + value;
    };
    add(settings.stage.stated(), std::string{name_of(*settings.stage)});
    add(settings.pages.stated(), std::to_string(*settings.pages));
    add(settings.theme.stated(), *settings.theme);
    add(settings.paper.stated(), std::string{name_of(*settings.paper)});
    add(settings.size.stated(), show(*settings.size));
    add(settings.margins.stated(), show(*settings.margins));
    add(settings.dates_as.stated(), std::string{name_of(*settings.dates_as)});
    add(settings.language.stated(), *settings.language);
    add(settings.hyphenate.stated(), *settings.hyphenate ? "yes" : "no");
    if (settings.updated.stated()) add(true, edtf(**settings.updated));
    for (const std::string& word : settings.words)
        add(true, word);
    for (const Acceptance& one : settings.accept)
        add(true, one.check + "=" + one.reason);
    return text;
}

}

TEST_CASE("the grammar of settings neither loops nor recurs on the left") {
    namespace rules = grammar::settings;
    CHECK(tao::pegtl::analyze<rules::pages_value>() == 0);
    CHECK(tao::pegtl::analyze<rules::size_value>() == 0);
    CHECK(tao::pegtl::analyze<rules::margins_value>() == 0);
    CHECK(tao::pegtl::analyze<rules::language_value>() == 0);
    CHECK(tao::pegtl::analyze<rules::updated_value>() == 0);
    CHECK(tao::pegtl::analyze<rules::accept_value>() == 0);
}

TEST_CASE("settings are read") {
    const Good cases[] = {
        {"stage: undergraduate", "undergraduate"},
        {"stage: Recent Graduate", "recent graduate"},
        {"stage: graduate-applicant", "graduate applicant"},
        {"Stage: experienced", "experienced"},
        {"pages: 1", "1"},
        {"pages: 20", "20"},
        {"pages: 1..2", "2"},
        {"pages: 1 .. 2", "2"},
        {"pages: 1..1", "1"},
        {"theme: sandpiper", "sandpiper"},
        {"theme: mine/narrow.theme", "mine/narrow.theme"},
        {"paper: letter", "letter"},
        {"paper: A4", "a4"},
        {"size: 11", "11 to 11"},
        {"size: 10.5..11.5", "10.5 to 11.5"},
        {"size: 10 .. 12", "10 to 12"},
        {"size: 10..\n 12", "10 to 12"},
        {"margins: 0.75", "0.75 to 0.75"},
        {"margins: .6..0.8", "0.6 to 0.8"},
        {"margins: 0.5..1", "0.5 to 1"},
        {"dates-as: Jun 2026", "Jun 2026"},
        {"dates as: June 2026", "June 2026"},
        {"dates-as: 06/2026", "06/2026"},
        {"Dates-As: 2026-06", "2026-06"},
        {"hyphenate: yes", "yes"},
        {"hyphenate: no", "no"},
        {"updated: 2026-11-03", "2026-11-03"},
        {"updated: 2028-02-29", "2028-02-29"}, // a leap year
        {"updated: 2026-11", "2026-11"},
        {"words: eelgrass", "eelgrass"},
        {"words: eelgrass, quadrat; Salish benthic\nwords: macroalgae",
         "eelgrass, quadrat, Salish, benthic, macroalgae"},
        {"accept: gpa-scale (the school gives none)", "gpa-scale=the school gives none"},
        {"accept: order (asked for (twice) by the lab)", "order=asked for (twice) by the lab"},
        {"accept: one (a); two(b)\naccept: three ( c )", "one=a, two=b, three=c"},
    };
    for (const Good& good : cases) {
        CAPTURE(good.line);
        const auto reading = read_below_name(good.line);
        CHECK(reading.messages() == "");
        REQUIRE(reading.resume);
        CHECK(show(reading.resume->settings) == good.value);
    }
}

TEST_CASE("defaults") {
    const auto reading = read_below_name("");
    REQUIRE(reading.resume);
    const Settings& settings = reading.resume->settings;
    CHECK(show(settings) == "");
    CHECK(*settings.stage == trade::Stage::undergraduate);
    CHECK(*settings.pages == 1);
    CHECK(settings.theme->empty());
    CHECK(*settings.paper == trade::Paper::letter);
    CHECK(*settings.size == Interval{10, 12});
    CHECK(*settings.margins == Interval{0.5, 1});
    CHECK(*settings.dates_as == trade::DateForm::short_month);
    CHECK(*settings.language == "en-US");
    CHECK_FALSE(*settings.hyphenate);
    CHECK_FALSE(settings.updated->has_value());
}

TEST_CASE("the most pages allowed follow from the stage unless they are set") {
    const struct {
        std::string lines;
        int pages;
    } cases[] = {
        {"stage: undergraduate", 1},
        {"stage: recent graduate", 1},
        {"stage: graduate applicant", 2},
        {"stage: experienced", 2},
        {"stage: academic", 6},
        {"stage: experienced\npages: 1", 1},
        {"pages: 3\nstage: undergraduate", 3},
    };
    for (const auto& one : cases) {
        CAPTURE(one.lines);
        const auto reading = read_below_name(one.lines);
        REQUIRE(reading.resume);
        CHECK(*reading.resume->settings.pages == one.pages);
    }
}

// RFC 5646, appendix A: the examples of well-formed tags, and those that are not.
TEST_CASE("language tags after RFC 5646") {
    const char* const good[] = {
        "de",
        "fr",
        "ja",
        "zh-Hant",
        "zh-Hans",
        "sr-Cyrl",
        "sr-Latn",
        "zh-cmn-Hans-CN",
        "cmn-Hans-CN",
        "zh-yue-HK",
        "yue-HK",
        "zh-Hans-CN",
        "sr-Latn-RS",
        "sl-rozaj",
        "sl-rozaj-biske",
        "sl-nedis",
        "de-CH-1901",
        "sl-IT-nedis",
        "hy-Latn-IT-arevela",
        "de-DE",
        "en-US",
        "es-419",
        "de-CH-x-phonebk",
        "az-Arab-x-aze-derbend",
        "x-whatever",
        "qaa-Qaaa-QM-x-southern",
        "de-Qaaa",
        "sr-Latn-QM",
        "sr-Qaaa-RS",
        "en-US-u-islamcal",
        "zh-CN-a-myext-x-private",
        "en-a-myext-b-another",
    };
    for (const char* tag : good) {
        CAPTURE(tag);
        const auto reading = read_below_name("language: " + std::string{tag});
        if (reading.resume)
            CHECK(*reading.resume->settings.language == tag);
        else
            CHECK(reading.messages().starts_with(
                "draft.resume:2:11: error: a page has no words in "));
    }
    for (const char* tag : {"de-419-DE", "a-DE", "en_US", "english language", "en-", "-en",
                            "en--US", "abcdefghi", "en-x", "en-a"}) {
        CAPTURE(tag);
        CHECK(read_below_name("language: " + std::string{tag}).messages() ==
              "draft.resume:2:11: error: expected a BCP 47 language tag, such as 'en-US', found '" +
                  std::string{tag} + "'");
    }
}

// RFC 5646, section 2.1.1: `mn-Cyrl-MN`, `en-CA-x-ca`, `sgn-BE-FR`, `az-Latn-x-latn`
TEST_CASE("language tags in the case the standard advises") {
    for (const char* tag : {"mn-Cyrl-MN", "en-CA-x-ca", "az-Latn-x-latn", "en-US"}) {
        std::string shouted{tag};
        for (char& c : shouted)
            if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 32);
        const auto reading = read_below_name("language: " + shouted);
        if (reading.resume)
            CHECK(*reading.resume->settings.language == tag);
        else
            CHECK(reading.messages().find("no words in '" + std::string{tag} + "' yet") !=
                  std::string::npos);
    }
}

TEST_CASE("settings that cannot be") {
    const struct {
        std::string lines;
        std::string message;
    } cases[] = {
        {"stage: undergrad",
         "2:8: error: 'undergrad' is not how the markup has it: write 'stage: undergraduate'"},
        {"stage: experiencd",
         "2:8: error: 'stage' cannot be 'experiencd'; expected 'undergraduate', 'recent graduate', "
         "'graduate applicant', 'experienced' or 'academic'; did you mean 'experienced'?"},
        {"paper: a5", "2:8: error: 'paper' cannot be 'a5'; expected 'letter' or 'a4'; did you mean "
                      "'a4'?"},
        {"hyphenate: maybe", "2:12: error: 'hyphenate' cannot be 'maybe'; expected 'yes' or 'no'"},
        {"dates-as: 6/26", "2:11: error: 'dates-as' cannot be '6/26'; expected 'Jun 2026', 'June "
                           "2026', '06/2026' or '2026-06'"},
        {"pages: two", "2:8: error: 'two' is not how the markup has it: write 'pages: 2'"},
        {"pages: 1.5",
         "2:8: error: expected the most pages allowed, such as '2' or '1..2', found '1.5'"},
        {"pages: 2..3",
         "2:8: error: expected the most pages allowed, such as '2' or '1..2', found '2..3'"},
        {"pages: 1..21", "2:8: error: 'pages' '1..21' is out of bounds; expected 1 to 20"},
        {"pages: 0", "2:8: error: 'pages' '0' is out of bounds; expected 1 to 20"},
        {"pages: 99999999999999999999",
         "2:8: error: 'pages' '99999999999999999999' is out of bounds; expected 1 to 20"},
        {"size: 9", "2:7: error: 'size' '9' is out of bounds; expected 10 to 12 (points)"},
        {"size: 10..13",
         "2:7: error: 'size' '10..13' is out of bounds; expected 10 to 12 (points)"},
        {"size: 11.5..10.5", "2:7: error: '11.5..10.5' runs backwards; write '10.5..11.5'"},
        {"size: 11pt", "2:7: error: '11pt' is not how the markup has it: write 'size: 11'"},
        {"size: 10-12", "2:7: error: '10-12' is not how the markup has it: write 'size: 10..12'"},
        {"margins: 2", "2:10: error: 'margins' '2' is out of bounds; expected 0.5 to 1 (inches)"},
        {"margins: 0.49..1",
         "2:10: error: 'margins' '0.49..1' is out of bounds; expected 0.5 to 1 (inches)"},
        {"margins: 1 inch",
         "2:10: error: '1 inch' is not how the markup has it: write 'margins: 1'"},
        {"updated: 3 November 2026", "2:10: error: '3 November 2026' is not how the markup has it: "
                                     "write 'updated: 2026-11-03'"},
        {"updated: 2026", "2:10: error: expected an ISO 8601 date, such as '2026-11-03', found "
                          "'2026'"},
        {"updated: 2026-02-29", "2:10: error: '2026-02-29' is not in the calendar; expected a date "
                                "such as '2026-11-03'"},
        {"updated: 2026-13", "2:10: error: '2026-13' is not in the calendar; expected a date such "
                             "as '2026-11-03'"},
        {"accept: gpa-scale", "2:9: error: expected the name of a check and a reason, such as "
                              "'gpa-form (the school gives none)', found 'gpa-scale'"},
        {"accept: gpa-scale ()", "2:9: error: expected the name of a check and a reason, such as "
                                 "'gpa-form (the school gives none)', found 'gpa-scale ()'"},
        {"accept: a (b) c", "2:9: error: expected the name of a check and a reason, such as "
                            "'gpa-form (the school gives none)', found 'a (b) c'"},
        {"paper: a4\n\npaper: letter",
         "4:1: error: 'paper' is set twice, first in line 2; keep one of them"},
        {"paper: a4 {lab}",
         "2:12: error: 'paper' holds for every build; expected no tags after its value"},
    };
    for (const auto& one : cases) {
        CAPTURE(one.lines);
        const auto reading = read_below_name(one.lines);
        CHECK(reading.messages() == "draft.resume:" + one.message);
        CHECK_FALSE(reading.resume);
    }
}

TEST_CASE("an acceptance has the place of its check's name") {
    const auto reading = read_below_name("accept: one (a);\n  two (b)");
    REQUIRE(reading.resume);
    const auto& accept = reading.resume->settings.accept;
    REQUIRE(accept.size() == 2);
    CHECK(accept[0].place == Place{0, 2, 9, 3});
    CHECK(accept[1].place == Place{0, 3, 3, 3});
}

}
