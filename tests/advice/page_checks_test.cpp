// Checks of the page's room and lines, in one column and in two: what they measure and advise.
#include "compiler/stages/fit/shorten.hpp"
#include "tests/advice/proofread.hpp"

#include <algorithm>
#include <tuple>

namespace quoin::advice {

namespace {

using fixtures::proof_of;

std::string replaced(const std::string& find, const std::string& replace) {
    std::string text = fixtures::clean_resume();
    const std::size_t at = text.find(find);
    REQUIRE(at != std::string::npos);
    return text.replace(at, find.size(), replace);
}

// In a theme of two columns there are two, whatever the narrow one is filled to.
std::string with_side(std::string markup) {
    for (const std::string title : {"section: Activities\n", "section: Skills\n"}) {
        REQUIRE(markup.find(title) != std::string::npos);
        markup.insert(markup.find(title) + title.size(), "column: side\n");
    }
    return markup;
}

// With a bullet that just goes over its line: with the size pinned the layout stays as it is, and
// so large that the page has no room to spare.
std::string with_word_over() {
    std::string text = replaced("stage: undergraduate", "stage: undergraduate\nsize: 11.7\n"
                                                        "margins: 1");
    const std::string mapped =
        "- Mapped 34 acres of eelgrass edge; planners cited maps in 2 permit reviews";
    const std::size_t at = text.find(mapped);
    text.erase(at, mapped.size());
    std::string bullet = "- Counted";
    for (std::size_t words = 1; words < 40; ++words) {
        bullet += " plots";
        std::string markup = text;
        markup.insert(at, bullet);
        for (const Finding& each : proof_of(markup, {.with_page = true})->of("one-word-over"))
            if (each.place.line == 42) return markup;
    }
    return text;
}

// Lines of the bullet that opens so.
std::size_t lines_of(const fixtures::ProofOf& one, std::string_view opening) {
    const auto& paragraphs = one.typeset->composition.paragraphs;
    const fit::Fit& fit = std::get<fit::Fit>(one.typeset->fit);
    for (std::size_t i = 0; i < paragraphs.size(); ++i)
        if (fit::text_of(paragraphs[i]).starts_with(opening)) return fit.lines[i].size();
    return 0;
}

// The first of ever longer bullets with `middle` in it that goes over; empty if none does.
std::string first_over(const std::string& settings, const std::string& middle) {
    for (std::size_t letters = 1; letters < 120; ++letters) {
        std::string bullet = "- Mapped \"tide\" " + middle + " ";
        for (std::size_t i = 0; i < letters; ++i)
            bullet += i % 8 == 7 ? ' ' : 'n';
        std::string markup =
            with_side(replaced("stage: undergraduate", "stage: undergraduate\n" + settings));
        markup.insert(markup.find("- Mapped 34"), bullet + "edge\n");
        const auto one = proof_of(markup, {.with_page = true});
        for (const Finding& finding : one->of("one-word-over"))
            if (finding.suggestion.starts_with("cut '")) return markup;
    }
    return {};
}

}

TEST_CASE("proof: what a first look does not reach") {
    std::string jobs = "section: Experience\n";
    for (int i = 0; i < 9; ++i)
        jobs += "\nrole: Senior Assistant to the Deputy Keeper of Tidal Survey Records\n"
                "employer: Salish Tidal Trust, Office of Estuary and Foreshore Survey\n"
                "dates: Jun 20" +
                std::to_string(24 - i) + " - Aug 20" + std::to_string(24 - i) + '\n';
    const std::string text =
        "name: Ottoline Brandt\nemail: ottoline.brandt@ellerystate.example\n\n" + jobs +
        "\nsection: Education\n\nschool: Ellery State College\n"
        "degree: Bachelor of Science in Marine Biology\n"
        "graduation: May 2027 (expected)\n";
    const auto found = proof_of(text, {.with_page = true})->of("first-look");
    REQUIRE(found.size() == 1);
    CHECK(found.front().text ==
          "a first look of 10 seconds, by a model, does not reach the school, "
          "the degree and the degree's date");
}

TEST_CASE("proof: a short page, and a bullet that goes over its line by a word") {
    const std::string text = fixtures::clean_resume();
    const std::string half = text.substr(0, text.find("role: Hatchery Technician"));
    const auto short_page = proof_of(half, {.with_page = true});
    REQUIRE(short_page->of("page-fill").size() == 1);
    CHECK(short_page->of("page-fill").front().text.find("percent of the page") !=
          std::string::npos);

    auto over = proof_of(with_word_over(), {.with_page = true})->of("one-word-over");
    std::erase_if(over, [](const Finding& each) { return each.place.line != 42; });
    REQUIRE(over.size() == 1);
    CHECK(over.front().text.starts_with("this bullet is up to "));
    CHECK(over.front().text.find(" too long for one line, and its last line holds '") !=
          std::string::npos);
    CHECK(over.front().suggestion == "cut a short word, or choose a shorter one");
}

TEST_CASE("proof: the word to cut is named, and without it the bullet is a line shorter") {
    for (const std::string settings :
         {"size: 11.7\nmargins: 1", "theme: oystercatcher\nsize: 11.4\nmargins: 0.8"}) {
        CAPTURE(settings);
        std::string markup = first_over(settings, "edges for the survey");
        REQUIRE(!markup.empty());
        const auto one = proof_of(markup, {.with_page = true});
        const std::size_t at = markup.find("- Mapped \"tide") + 2;
        const auto line = std::count(markup.begin(), markup.begin() + static_cast<long>(at), '\n');
        auto found = one->of("one-word-over");
        std::erase_if(found, [&](const Finding& each) { return each.place.line != line + 1; });
        REQUIRE(found.size() == 1);
        CHECK(found.front().suggestion == "cut 'the'");
        CHECK(found.front().place.length == markup.find('\n', at) - at); // beyond the quotation
        markup.replace(markup.find("for the survey"), 14, "for survey");
        const auto shorter = proof_of(markup, {.with_page = true});
        CHECK(lines_of(*shorter, "Mapped \u201Ctide") + 1 == lines_of(*one, "Mapped \u201Ctide"));
    }
    // so many to each: that article is none to cut
    CHECK(first_over("size: 11.7\nmargins: 1", "5 pages an issue").empty());
}

TEST_CASE("proof: a bullet of three lines in a column may be of two across the page") {
    const std::string bullet =
        "- Mapped 34 acres of eelgrass edge along 9 miles of open shore, and 14 plots of kelp at "
        "each of 9 sites off the northern harbor, for planners of 2 counties\n";
    for (const auto& [settings, times, told] :
         {std::tuple<std::string, std::size_t, bool>{"theme: oystercatcher\n", 1, false},
          {"theme: oystercatcher\n", 2, true}}) {
        std::string markup =
            with_side(replaced("stage: undergraduate", settings + "stage: undergraduate"));
        std::string longer = bullet;
        for (std::size_t i = 1; i < times; ++i)
            longer.insert(longer.size() - 1, ", and " + bullet.substr(2, bullet.size() - 3));
        markup.insert(markup.find("- Mapped 34"), longer);
        const auto one = proof_of(markup, {.with_page = true});
        CHECK(lines_of(*one, "Mapped 34 acres of eelgrass edge along") > 2);
        CHECK(one->of("two-lines").empty() != told);
    }
}

}
