// Redlines of the sample résumés: with themselves, and after random edits. QUOIN_FULL to any value
// for the long run.
#include "compiler/redlining/redline.hpp"

#include "tests/fixtures/tries.hpp"
#include "tests/redlining/random_edits.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cstdlib>
#include <random>
#include <set>
#include <string>
#include <vector>

namespace {

using namespace quoin::redlining;
using namespace quoin::redlining::test;
namespace model = quoin::model;

std::string shown(const Change& change) {
    std::string text = fmt::format("{} {}", name_of(change.kind), name_of(change.what));
    if (change.kind == Kind::changed) text += fmt::format(" {}", name_of(change.nature));
    return text;
}

std::string shown(const std::vector<Change>& changes) {
    std::string all;
    for (const Change& change : changes)
        all += fmt::format("{} [{} | {}] {}: '{}' -> '{}'\n", shown(change), change.section,
                           change.entry, change.label, change.before, change.after);
    return all;
}

std::vector<Change> redline_of(const model::Resume& before, const model::Resume& after) {
    return redline(align(before, after));
}

const std::string small_resume = "name: Ottoline Brandt\n"
                                 "phone: (360) 555-0142\n"
                                 "\n"
                                 "section: Experience\n"
                                 "\n"
                                 "role: Field Survey Intern\n"
                                 "employer: Salish Tidal Trust\n"
                                 "dates: Jun 2026 - Aug 2026\n"
                                 "- Counted 212 eelgrass quadrats at 9 sites\n"
                                 "- Trained 4 volunteers in GPS\n"
                                 "- Drew maps of the flats for the county\n"
                                 "\n"
                                 "role: Desk Assistant\n"
                                 "employer: Ellery State Library\n"
                                 "dates: Sep 2025 - May 2026\n"
                                 "- Answered questions at the desk\n"
                                 "\n"
                                 "section: Skills\n"
                                 "\n"
                                 "Laboratory: pH meter, titration, analytical balance\n";

std::string replaced(std::string text, const std::string& what, const std::string& by) {
    const std::size_t at = text.find(what);
    REQUIRE(at != text.npos);
    return text.replace(at, what.size(), by);
}

std::multiset<std::string> kinds_of(const std::vector<Change>& changes) {
    std::multiset<std::string> kinds;
    for (const Change& change : changes)
        kinds.insert(shown(change));
    return kinds;
}

std::multiset<std::string> wordings(const std::vector<Change>& changes, Kind kind) {
    std::multiset<std::string> all;
    for (const Change& change : changes)
        if (change.kind == kind) all.insert(kind == Kind::added ? change.after : change.before);
    return all;
}

}

TEST_CASE("redline: a résumé with itself says nothing") {
    for (const fs::path& path : samples()) {
        CAPTURE(path.string());
        const auto text = text_of(quoin::test::lines_in(path));
        const auto a = read(path, text), b = read(path, text);
        REQUIRE(a->resume);
        CHECK(shown(redline_of(*a->resume, *b->resume)) == "");
    }
}

TEST_CASE("redline: one change, a case a line") {
    struct Case {
        const char* what;
        const char* by;
        const char* shown;
    };
    const Case cases[] = {
        {"0142", "0143",
         "changed contact figures [ | ] phone: '(360) 555-0142' -> '(360) 555-0143'\n"},
        {"phone: (360) 555-0142\n", "", "removed contact [ | ] phone: '(360) 555-0142' -> ''\n"},
        {"\n\nsection: Exp", "\npages: 2\n\nsection: Exp",
         "changed setting value [ | ] pages: '1' -> '2'\n"},
        {"section: Experience", "section: Field Work",
         "changed section label [Field Work | ] : 'Experience' -> 'Field Work'\n"},
        {"Intern", "Assistant",
         "changed field wording [Experience | Field Survey Assistant, Salish Tidal Trust] role: "
         "'Field Survey Intern' -> 'Field Survey Assistant'\n"},
        {"Aug 2026", "Sep 2026",
         "changed field dates [Experience | Field Survey Intern, Salish Tidal Trust] dates: "
         "'Jun 2026 – Aug 2026' -> "
         "'Jun 2026 – Sep 2026'\n"},
        {"Jun 2026 - Aug 2026", "06/2026 to August 2026", ""},
        {"212", "240",
         "changed bullet figures [Experience | Field Survey Intern, Salish Tidal Trust] : 'Counted "
         "212 eelgrass quadrats at 9 sites' -> 'Counted 240 eelgrass quadrats at 9 sites'\n"},
        {"Counted 212", "Counted *212*",
         "changed bullet marks [Experience | Field Survey Intern, Salish Tidal Trust] : 'Counted "
         "212 eelgrass quadrats at 9 sites' -> 'Counted 212 eelgrass quadrats at 9 sites'\n"},
        {"in GPS\n", "in GPS {lab}\n",
         "changed bullet tags [Experience | Field Survey Intern, Salish Tidal Trust] : '' -> "
         "'{lab}'\n"},
        {"titration, ", "", "removed item [Skills | ] Laboratory: 'titration' -> ''\n"},
        {"pH meter, titration", "titration, pH meter",
         "changed field order [Skills | ] Laboratory: 'pH meter; titration; analytical balance' -> "
         "'titration; pH meter; analytical balance'\n"},
        {"Laboratory", "Bench", "changed field label [Skills | ] Bench: 'Laboratory' -> 'Bench'\n"},
        {"in GPS\n- Drew", "in GPS\n-- Drew",
         "changed bullet level [Experience | Field Survey Intern, Salish Tidal Trust] : '1' -> "
         "'2'\n"},
    };
    const auto before = read("draft.resume", small_resume);
    for (const Case& each : cases) {
        CAPTURE(each.what);
        const auto after = read("draft.resume", replaced(small_resume, each.what, each.by));
        REQUIRE(after->resume);
        CHECK(shown(redline_of(*before->resume, *after->resume)) == each.shown);
    }
}

TEST_CASE("redline: a bullet under another entry was moved there") {
    const std::string bullet = "- Trained 4 volunteers in GPS\n";
    const auto before = read("draft.resume", small_resume);
    const auto after = read("draft.resume", replaced(replaced(small_resume, bullet, ""),
                                                     "- Answered", bullet + "- Answered"));
    CHECK(shown(redline_of(*before->resume, *after->resume)) ==
          "moved bullet [Experience | Desk Assistant, Ellery State Library] : 'Field Survey "
          "Intern, Salish Tidal Trust' -> 'Trained 4 volunteers in GPS'\n");
}

TEST_CASE("redline: each of many random edits is told exactly once, and back again") {
    const std::size_t wanted =
        std::getenv("QUOIN_FULL") != nullptr ? 10'000 : std::size_t(quoin::tries(600));
    std::mt19937 random(16);
    const std::vector<fs::path> all = samples();
    std::size_t made = 0;
    std::set<std::string> seen;
    for (std::size_t trial = 0; made < wanted; ++trial) {
        const fs::path& path = all[trial % all.size()];
        CAPTURE(path.string());
        CAPTURE(trial);
        const auto lines = quoin::test::lines_in(path);
        const auto before = read(path, text_of(lines));
        REQUIRE(before->resume);
        Editor editor(*before->resume, lines, random);
        for (int edit = 0; edit < 8; ++edit)
            editor.edit();
        const auto after = read(path, editor.text());
        REQUIRE(after->resume);
        const auto there = redline_of(*before->resume, *after->resume);
        const auto back = redline_of(*after->resume, *before->resume);
        CAPTURE(shown(there));
        REQUIRE(kinds_of(there) == editor.expected);
        REQUIRE(wordings(there, Kind::added) == wordings(back, Kind::removed));
        REQUIRE(wordings(there, Kind::removed) == wordings(back, Kind::added));
        REQUIRE(there.size() == back.size());
        made += editor.expected.size();
        seen.insert(editor.expected.begin(), editor.expected.end());
    }
    CHECK(seen.size() == 11); // every kind was tried
}
