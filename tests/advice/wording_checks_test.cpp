// The wording checks: what each says, and that it is silent where nothing is wrong. What advisers
// ask for is common practice.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/stages/model/build.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <initializer_list>
#include <string>
#include <vector>

namespace quoin::advice::wording_checks_test {

namespace {

const english::Language& language() {
    static const english::Language one{std::filesystem::path(QUOIN_DATA_FOLDER)};
    return one;
}

std::vector<Finding> findings_in(const std::string& markup, std::string_view check) {
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.add("test.resume", markup, diagnostics);
    REQUIRE(file);
    const auto resume =
        model::build_resume(sources, *file, QUOIN_DATA_FOLDER "/themes/words", diagnostics);
    REQUIRE(resume);
    const auto texts = read_texts(*resume, language());
    const auto bullets = read_bullets(*resume, texts, language());
    const ProofContext context{sources,    *resume, nullptr, model::Date{2026, 11, {}, {}},
                               language(), texts,   bullets};
    std::vector<Finding> findings;
    for (const Check& one : wording_checks())
        if (one.name == check) one.run(context, findings);
    return findings;
}

std::string entry(const std::string& dates, const std::string& bullets) {
    return "name: Ottoline Brandt\n\nsection: Experience\n\nrole: Field Intern\nemployer: Salish "
           "Tidal Trust\ndates: " +
           dates + "\n" + bullets;
}

const std::string ended = "Jun 2025 - Aug 2025", current = "Jun 2026 - present";
constexpr std::uint32_t first_bullet = 8; // its line

// The text and suggestion of the one finding, "text | suggestion"; "" if there is none.
std::string told(const std::string& markup, std::string_view check) {
    const auto findings = findings_in(markup, check);
    CHECK(findings.size() <= 1);
    if (findings.empty()) return "";
    return findings.front().text + " | " + findings.front().suggestion;
}

struct Case {
    std::string_view check;
    std::string dates, bullets, told;
};

}

TEST_CASE("what the checks say of a bullet") {
    for (
        const Case& one : std::initializer_list<Case>{
            {"tense", ended, "- Count 14 seals and log 3 tides\n",
             "'Count' and 'log' are in the present, but 'Field Intern' has ended | write 'Counted' "
             "and 'logged'"},
            {"tense", current, "- Led 14 dives every week\n",
             "'Led' is in the past, but 'Field Intern' goes on | write 'Lead'"},
            {"tense", current, "- Led 14 dives and log 3 tides\n",
             "'Led' is in the past, but 'Field Intern' goes on | write 'Lead'"},
            {"tense", current, "- Led 14 dives\n", ""}, // a finished deed
            {"tense", current, "- Rebuilt 3 tanks, now read each week\n", ""},
            {"tense", current, "- Assisted 3 divers weekly\n", ""}, // it is weak, and is to go
            {"tense", ended, "- Managing 3 tanks\n",
             "'Managing' is neither past nor present; 'Field Intern' has ended | write 'Managed'"},
            {"tense", ended, "- Cut 3 trails\n", ""},
            {"tense", current, "- Cut 3 trails\n", ""},
            {"tense", "Nov 2026", "- Count 14 seals\n", ""}, // this month: over or not
            {"no-figure", ended, "- Trained volunteers\n",
             "no bullet of 'Field Intern' has a figure in it | say how many, how often, how much "
             "or how large, where you know it"},
            {"no-figure", "Jun 2027 - Aug 2027", "- Train volunteers\n", ""}, // to come
            {"action-verb", ended, "- Design of 3 tanks\n",
             "this bullet opens with 'Design', not with what you did | begin with a verb, such as "
             "'Designed'"},
            {"action-verb", ended, "- Member of 3 crews\n",
             "this bullet opens with 'Member', not with what you did | begin with the verb that "
             "says it"},
            {"action-verb", ended, "- GIS maps of 3 bays\n",
             "this bullet opens with 'GIS', not with what you did | begin with the verb that says "
             "it"},
            {"action-verb", ended, "- Bake sale for 3 crews\n",
             "this bullet opens with 'Bake', not with what you did | begin with the verb that says "
             "it"},
            {"action-verb", current, "- Tutoring of 9 divers\n",
             "this bullet opens with 'Tutoring', not with what you did | begin with a verb, such "
             "as "
             "'Tutor'"},
            {"tense", ended, "- QA 3 builds\n",
             "'QA' is in the present, but 'Field Intern' has ended | "},
            {"weak-opening", ended, "- Responsible for training volunteers\n",
             "'Responsible for' says that you were near the work, not what you did | begin with "
             "what you did: 'Trained', if it is true"},
            {"weak-opening", current, "- Assist with training volunteers\n",
             "'Assist' says that you were near the work, not what you did | begin with what you "
             "do: 'Train', if it is true"},
            {"first-person", ended, "- I trained our volunteers\n",
             "'I' and 'our' speak in the first person | leave 'I' out and begin with the verb"},
            {"first-person", ended, "- Taught Calculus I to 3 students\n", ""},
            {"full-sentence", ended, "- The crew won 3 races\n",
             "this bullet is a sentence with a subject of its own, 'The crew won' | make it what "
             "you did, "
             "with the verb first"},
            {"passive", ended, "- Was selected for a cohort\n",
             "'Was selected' is passive and hides who did what | 'Selected' alone says as much"},
            {"passive", ended, "- Samples were collected at 3 sites\n",
             "'were collected' is passive and hides who did what | say who did it, in an active "
             "verb"},
            {"no-figure", ended, "- Trained volunteers\n- Counted seals in 2025\n",
             "no bullet of 'Field Intern' has a figure in it | say how many, how often, how much "
             "or "
             "how large, where you know it"},
            {"no-figure", ended, "- Trained volunteers\n- Counted 14 seals\n", ""},
            {"task-without-result", ended, "- Entered data\n",
             "this bullet of 'Field Intern' tells a task and not what came of it | add what "
             "changed, "
             "for how many, or what it was for"},
            {"task-without-result", ended, "- Entered data, halving the backlog\n", ""},
            {"little-words", ended, "- Cleaned the tanks, the pumps and the filters twice a week\n",
             "'the' cost three words | bullets go well without articles and other little words"},
            {"little-words", ended, "- Cleaned tanks for a third of the price\n", ""},
            {"empty-phrases", ended, "- Performed various tasks\n",
             "'various' tells the reader nothing | name them, or give their number"},
            {"empty-phrases", ended, "- Fed seals, otters, etc.\n",
             "'etc' tells the reader nothing | name what is meant, or stop before it"},
            {"empty-phrases", ended, "- Trained 4 volunteers\n", ""}}) {
        CAPTURE(one.check);
        CAPTURE(one.bullets);
        CHECK(told(entry(one.dates, one.bullets), one.check) == one.told);
    }
}

TEST_CASE("findings stand at their words") {
    const auto findings =
        findings_in(entry(ended, "- Counted seals with my crew\n"), "first-person");
    REQUIRE(findings.size() == 1);
    CHECK(findings.front().place == Place{0, first_bullet, 22, 2});
}

TEST_CASE("a verb may open two bullets, and not three") {
    const std::string two = "- Managed 3 tanks\n- Managed 4 divers\n";
    CHECK(told(entry(ended, two), "repeated-opening") == "");
    const auto findings =
        findings_in(entry(ended, two + "- Manages 5 boats\n"), "repeated-opening");
    REQUIRE(findings.size() == 1);
    CHECK(findings.front().text ==
          "'Manages' opens three bullets, on lines 8, 9 and 10, in one form or another");
    CHECK(findings.front().place.line == first_bullet + 2);
}

TEST_CASE("a title in italics is not the writer's own") {
    CHECK(told(entry(ended, "- Directed /My Fair Lady/ for 3 nights\n"), "first-person") == "");
    CHECK(told(entry(ended, "- Directed my play for 3 nights\n"), "first-person") != "");
}

TEST_CASE("the bad example of each check is found, and the good one is not") {
    for (const Check& check : wording_checks()) {
        CAPTURE(check.name);
        CHECK(!check.looks_at.empty());
        CHECK(!check.why.empty());
        CHECK(check.source == "common practice");
        if (!check.bad.starts_with("- ") || check.bad.find(", under") != check.bad.npos) continue;
        const std::string bad(check.bad), good(check.good);
        CHECK(!findings_in(entry(ended, bad + "\n"), check.name).empty());
        CHECK(findings_in(entry(ended, good + "\n"), check.name).empty());
    }
}

}
