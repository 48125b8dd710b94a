// What an office's rules change of what is found in tests/advice/clean.resume with one piece
// replaced: bad beside good. That offices differ so is common practice.
#include "compiler/advice/offices.hpp"
#include "compiler/commands/caseload/appraise.hpp"
#include "compiler/commands/checks/checks.hpp"
#include "compiler/commands/proof/proof_report.hpp"
#include "tests/advice/proofread.hpp"
#include "tests/office/rules.hpp"

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <optional>
#include <set>

namespace quoin::advice { namespace {

namespace fs = std::filesystem;
using fixtures::clean_with;
using fixtures::proof_of;

office::Office office_of_text(const std::string& text) {
    static const office::Known known = [] {
        office::Known names{{}, {"sanderling", "turnstone"}};
        for (const Check* check : all_checks())
            names.checks.push_back(check->name);
        return names;
    }();
    auto read = fixtures::rules_of("office: Ellery State career office\n" + text, known);
    for (const std::string& fault : read.faults)
        MESSAGE(fault);
    REQUIRE(read.office);
    return *read.office;
}

std::string told(const fixtures::ProofOf& one, std::string_view check) {
    std::string all;
    for (const Finding& finding : one.of(check))
        all += fmt::format("{} [{}]: {}; {} ({})\n", name_of(weight_of(finding)), finding.check,
                           finding.text, finding.suggestion, finding.office);
    return all;
}

struct OfficeCase {
    std::string rules;
    std::string_view check;
    std::string find, replace; // in the clean résumé
    std::string says;          // a piece of what is told; empty: nothing is
    bool with_page = false;
};

// clang-format off
const OfficeCase office_cases[] = {
    // numbers
    {"gpa-show: 3.2 (our employers ask)\n", "gpa-unsaid", "gpa: 3.62 / 4.00\n", "", "show it if it is 3.2 or over; from 3.0 it may be shown (Ellery State career office sets 'gpa-show' to 3.2 of 4, office.rules:2: our employers ask)"},
    {"", "gpa-unsaid", "gpa: 3.62 / 4.00\n", "", "show it if it is 3.5 or over; from 3.0 it may be shown ()"},
    {"gpa-leave-out: 3.25\n", "gpa-low", "3.62", "3.10", "'3.10 / 4.00' is under 3.25"},
    {"", "gpa-low", "3.62", "3.10", ""},
    {"gpa-leave-out: 2.5\n", "gpa-low", "3.62", "2.80", ""},
    {"bullets: 2..3\n", "bullet-count", "- Won second prize among 31 posters at spring symposium\n", "", "has one bullet; say what you did and what came of it, in two to three (Ellery State career office sets 'bullets' to 2 to 3 bullets, office.rules:2)"},
    {"", "bullet-count", "- Won second prize among 31 posters at spring symposium\n", "", ""},
    {"bullets: 1..2\n", "bullet-count", "Barista", "Barista", "'Research Assistant' has three bullets; keep the two that"},
    {"same-opening: 1\n", "repeated-opening", "- Rebuilt algae", "- Raised algae", "sets 'same-opening' to 1 bullet,"},
    {"most-courses: 3\n", "course-count", "Field Methods", "Field Methods", "keep the three or fewer"},
    {"updated-within: 3\n", "not-updated", "updated: 2026-11-03", "updated: 2026-08-01", "not brought up to date for three months"},
    {"", "not-updated", "updated: 2026-11-03", "updated: 2026-08-01", ""},
    {"present-within: 3\n", "stale-present", "updated: 2026-11-03", "updated: 2026-08-01", "sets 'present-within' to 3 months"},
    {"job-years: 1\n", "long-ago", "Field Methods", "Field Methods", "sets 'job-years' to 1 year,"},
    {"page-filled: 95\n", "page-fill", "\n\nproject: Eelgrass Disease in Ellery Sound\ncourse: Marine Ecology Capstone\ndates: Jan 2026 - May 2026\n- Scored lesions on 480 blades from 8 sites and found them 2.3 times more often on warm flats\n- Won second prize among 31 posters at spring symposium\n", "\n", "sets 'page-filled' to 95 percent", true},
    {"page-filled: 30\n", "page-fill", "Field Methods", "Field Methods", "", true},
    {"text-size: 10..10.2\n", "text-size", "Field Methods", "Field Methods", "ask for it by 'size: 10..10.2'", true},
    {"page-margins: 0.5..0.55\n", "margins", "Field Methods", "Field Methods", "ask for it by 'margins: 0.5..0.55'", true},
    {"bullet-lines: 1\n", "two-lines", "with no reading missed", "with no reading missed in 14 months and all pump faults caught within the hour", "it one, or make two bullets", true},
    // checks
    {"must: gpa-unsaid\n", "gpa-unsaid", "gpa: 3.62 / 4.00\n", "", "must [gpa-unsaid]: no GPA is given"},
    {"must: gpa-unsaid (they ask)\n", "gpa-unsaid", "gpa: 3.62 / 4.00\n", "", "(Ellery State career office makes this a must, office.rules:2: they ask)"},
    {"off: gpa-unsaid\n", "gpa-unsaid", "gpa: 3.62 / 4.00\n", "", ""},
    {"\nfor: experienced\noff: gpa-unsaid\n", "gpa-unsaid", "gpa: 3.62 / 4.00\n", "", "no GPA"},
    {"should: voicemail\n", "voicemail", "(360) 555-0142", "(360) 555-0142", "should [voicemail]"},
    {"always: gpa-low\n", "gpa-low", "updated: 2026-11-03", "updated: 2026-11-03\naccept: gpa-low (asked for)", ""},
    // words
    {"avoid: utilize (write 'used')\n", "office-words", "- Trained 4", "- Utilized 9 maps and trained 4", "should [office-words]: 'Utilized' is to be avoided; write 'used' (Ellery State career office asks for this, office.rules:2)"},
    {"avoid: go-getter\n", "office-words", "- Trained 4", "- Trained 4 go-getters, 4", "'go-getters' is to be avoided; say it in another word"},
    {"avoid: hard work\n", "office-words", "- Trained 4", "- Worked hard and trained 4", ""},
    {"avoid: use\n", "office-words", "- Trained 4", "- Fused 9 maps and trained 4", ""},
    {"phrase: proficient in\nadvice: say what you made with it\nsource: the handbook, page 4\nweight: must\n", "office-phrases", "- Trained 4", "- Proficient in maps, trained 4", "must [office-phrases]: 'Proficient in' is not liked here; say what you made with it (Ellery State career office warns of it by the handbook, page 4, office.rules:2)"},
    {"phrase: proficient in\nadvice: say what you made\n", "office-phrases", "- Trained 4", "- Proficient with maps, trained 4", ""},
    {"prefer: coordinated\n", "weak-opening", "- Trained 4 volunteers", "- Responsible for 4 volunteers", "begin with what you did: 'Coordinated'"},
    {"prefer: surveyed (volunteer); coordinated\n", "weak-opening", "- Trained 4 volunteers", "- Responsible for 4 volunteers", "begin with what you did: 'Surveyed' or 'Coordinated'"},
    {"prefer: balanced (till)\n", "weak-opening", "- Trained 4 volunteers", "- Responsible for 4 volunteers", "begin with what you did"},
    // what is allowed
    {"order: skills, education\n", "office-order", "Barista", "Barista", "'Education' stands above 'Skills'; the order is skills, education (Ellery State career office asks for this, office.rules:2)"},
    {"order: education, skills\n", "office-order", "Barista", "Barista", ""},
    {"order: experience, education\n", "education-first", "section: Education", "section: Projects\n\nproject: Kelp Map\ndates: Jan 2026 - May 2026\n- Mapped 9 beds for 2 towns\n\nsection: Education", ""},
    {"themes: sanderling\n", "office-theme", "stage: undergraduate", "theme: turnstone", "the theme is 'turnstone'; set 'theme' to 'sanderling'", true},
    {"themes: sanderling, turnstone\n", "office-theme", "stage: undergraduate", "theme: turnstone", "", true},
    {"dates-as: 2026-06\n", "office-dates", "Barista", "Barista", "dates are printed as 'Jun 2026'; set 'dates-as' to '2026-06'"},
    {"dates-as: 2026-06, Jun 2026\n", "office-dates", "Barista", "Barista", ""},
    // names
    {"employers: Cape Morrow Shell-fish\n", "office-names", "Barista", "Barista", "'Cape Morrow Shellfish' is spelled otherwise in the office's list; write 'Cape Morrow Shell-fish'"},
    {"employers: Cape Morrow Shellfish\n", "office-names", "Cape Morrow", "Cape Morow", "write 'Cape Morrow Shellfish' (Ellery State career office asks for this, office.rules:2)"},
    {"employers: Cape Morrow Shellfish\n", "office-names", "Barista", "Barista", ""},
    {"employers: Cape Morrow Seafood; Cape Morrow Shellfish\n", "office-names", "Barista", "Barista", ""},
    {"schools: Ellery State College\n", "office-names", "school: Ellery State College", "school: Elery State College", "write 'Ellery State College'"},
    {"courses: Benthic Ecology\n", "office-names", "Benthic Ecology;", "benthic ecology;", "write 'Benthic Ecology'"},
    {"employers: Zosterra Works\n", "spelling", "- Trained 4", "- Trained for zosterra 4", ""},
};
// clang-format on

TEST_CASE("office checks: what the rules of an office change") {
    for (const OfficeCase& one : office_cases) {
        CAPTURE(one.rules);
        CAPTURE(one.replace);
        const office::Office office = office_of_text(one.rules);
        const std::string text =
            one.find == "Barista" ? fixtures::clean_resume() : clean_with(one.find, one.replace);
        const std::string all =
            told(*proof_of(text, {.with_page = one.with_page, .office = &office}), one.check);
        CAPTURE(all);
        CHECK(one.says.empty() == all.empty());
        CHECK(all.find(one.says) != std::string::npos);
    }
}

TEST_CASE("office checks: every one has a case that makes it speak and one that keeps it silent") {
    std::set<std::string_view> speak, silent;
    for (const OfficeCase& one : office_cases)
        (one.says.empty() ? silent : speak).insert(one.check);
    for (const Check& check : office_checks()) {
        CAPTURE(check.name);
        CHECK(speak.contains(check.name));
        CHECK(silent.contains(check.name));
    }
}

TEST_CASE("office checks: what 'always' keeps stands beside the résumé's 'accept'") {
    const std::string text =
        clean_with("updated: 2026-11-03", "updated: 2026-11-03\naccept: gpa-unsaid (asked for)");
    const std::string unsaid = std::string(text).replace(text.find("gpa: 3.62 / 4.00\n"), 17, "");
    const office::Office strict = office_of_text("always: gpa-unsaid (they ask)\n");
    const auto kept = proof_of(unsaid, {.office = &strict});
    CHECK(kept->proof.set_aside.empty());
    CHECK(
        told(*kept, "gpa-unsaid").find("does not let it be set aside, office.rules:2: they ask") !=
        std::string::npos);
    CHECK(told(*kept, "accept-idle").empty());
    const office::Office none = office_of_text("");
    CHECK(proof_of(unsaid, {.office = &none})->proof.set_aside.size() == 1);
}

TEST_CASE("office checks: what is off is counted, and hides nothing") {
    const office::Office office =
        office_of_text("off: gpa-unsaid (never); weak-opening; page-fill\n");
    const std::string text = clean_with("gpa: 3.62 / 4.00\n", "");
    const auto one = proof_of(text, {.office = &office});
    REQUIRE(one->proof.left_out.size() == 1);
    CHECK(one->proof.left_out[0].check == "gpa-unsaid");
    CHECK(one->proof.left_out[0].office ==
          "Ellery State career office leaves out one finding of [gpa-unsaid], office.rules:2: "
          "never");
    const auto accepted = proof_of(
        clean_with("updated: 2026-11-03", "updated: 2026-11-03\naccept: gpa-unsaid (none yet)"),
        {.office = &office});
    CHECK(told(*accepted, "accept-idle").empty());
}

TEST_CASE("office checks: an office of the stage is not that of another") {
    const office::Office office = office_of_text("\nfor: experienced\nmost-pages: 3\nbullets: 4\n");
    CHECK(told(*proof_of(fixtures::clean_resume(), {.office = &office}), "bullet-count").empty());
    const auto old =
        proof_of(clean_with("stage: undergraduate", "stage: experienced"), {.office = &office});
    CHECK(!told(*old, "bullet-count").empty());
}

struct OfficeFolder { // gone with the test
    fs::path root;

    OfficeFolder() {
        std::string pattern = (fs::temp_directory_path() / "quoin-office-XXXXXX").string();
        REQUIRE(mkdtemp(pattern.data()) != nullptr);
        root = pattern;
    }
    ~OfficeFolder() { fs::remove_all(root); }
    OfficeFolder(const OfficeFolder&) = delete;
    OfficeFolder& operator=(const OfficeFolder&) = delete;

    fs::path put(const std::string& name, const std::string& text) const {
        std::ofstream(root / name) << text;
        return root / name;
    }
};

TEST_CASE("offices: each file is read once, and faults are told once") {
    const OfficeFolder folder;
    folder.put("office.rules", "office: Ellery State career office\nthemes: turnstone\n");
    const fs::path bad = folder.put("bad.rules", "must: lenght\n");
    const fs::path themes = fs::path(QUOIN_DATA_FOLDER) / "themes";
    Offices offices(themes, {});
    const office::Office* found = offices.of(folder.root / "a.resume");
    REQUIRE(found != nullptr);
    CHECK(found->name == "Ellery State career office");
    CHECK(offices.of(folder.root / "b.resume") == found);
    CHECK(Offices(themes, {{}, true}).of(folder.root / "a.resume") == nullptr);
    Offices named(themes, {bad.string(), false});
    CHECK(named.of(folder.root / "a.resume") == nullptr);
    CHECK(named.of(folder.root / "b.resume") == nullptr);
    CHECK(named.diagnostics().count(Severity::error) == 1);
    Offices missing(themes, {(folder.root / "none.rules").string(), false});
    CHECK(missing.of(folder.root / "a.resume") == nullptr);
    CHECK(missing.diagnostics().count(Severity::error) == 1);
}

TEST_CASE(
    "offices: the reports say whose rule it is, and the marked page ends as the office does") {
    const OfficeFolder folder;
    folder.put("office.rules", "office: Ellery State career office\n"
                               "closing: Book at careers.ellerystate.example.\n"
                               "must: gpa-unsaid\noff: page-fill\n");
    const fs::path draft = folder.put("a.resume", clean_with("gpa: 3.62 / 4.00\n", ""));
    Offices offices(fs::path(QUOIN_DATA_FOLDER) / "themes", {});
    const commands::ProofTools tools{QUOIN_DATA_FOLDER, fixtures::fonts(), fixtures::language(),
                                     fixtures::read_on, &offices};
    std::vector<std::unique_ptr<commands::Proofread>> all;
    all.push_back(commands::proofread(draft.string(), {}, tools));
    const std::string whose = "(Ellery State career office makes this a must, office.rules:3)";
    for (const std::string& text :
         {commands::proof_text(*all.front(), false), commands::proof_summary(*all.front()),
          commands::proof_for_programs(all, "sarif")})
        CHECK(text.find(whose) != std::string::npos);
    const std::string json = commands::proof_for_programs(all, "json");
    CHECK(
        json.find(R"("office": "Ellery State career office makes this a must, office.rules:3")") !=
        std::string::npos);
    CHECK(commands::proof_roster(*all.front()).find("1 must") != std::string::npos);
    CHECK(!commands::marked_proof(*all.front(), tools, std::nullopt).empty());
}

TEST_CASE("offices: a caseload follows them, each folder's own") {
    const OfficeFolder folder;
    folder.put("office.rules", "office: Ellery State career office\n"
                               "closing: Book at careers.ellerystate.example.\n"
                               "updated-within: 3\nmust: gpa-unsaid\n");
    const fs::path draft = folder.put("a.resume", clean_with("gpa: 3.62 / 4.00\n", ""));
    Offices offices(fs::path(QUOIN_DATA_FOLDER) / "themes", {});
    commands::ProofTools tools{QUOIN_DATA_FOLDER, fixtures::fonts(), fixtures::language(),
                               fixtures::read_on, &offices};
    const auto musts = [](const caseload::Appraisal& appraisal) {
        return std::ranges::count(appraisal.remarks, Weight::must, &caseload::Remark::weight);
    };
    const caseload::Appraisal ruled = commands::appraise(draft, std::nullopt, tools);
    CHECK(ruled.advice == "Book at careers.ellerystate.example.");
    CHECK(ruled.stale_months == 3);
    CHECK(musts(ruled) == 1);
    tools.offices = nullptr;
    const caseload::Appraisal free = commands::appraise(draft, std::nullopt, tools);
    CHECK(free.advice.empty());
    CHECK_FALSE(free.stale_months.has_value());
    CHECK(musts(free) == 0);
}

TEST_CASE("offices: the sample's draft meets a rule of every kind") {
    const fs::path draft = fs::path(QUOIN_SOURCE_FOLDER) / "samples/office/kelp-intern.resume";
    Offices offices(fs::path(QUOIN_DATA_FOLDER) / "themes", {});
    const office::Office* office = offices.of(draft);
    REQUIRE(office != nullptr);
    const auto one = proof_of("", {.with_page = true, .path = draft, .office = office});
    for (const std::string_view check :
         {"office-words", "office-phrases", "office-order", "office-dates", "office-names",
          "page-fill", "weak-opening", "bullet-count"}) {
        CAPTURE(check);
        const auto found = one->of(check);
        REQUIRE(!found.empty());
        CHECK(found.front().office.starts_with("Ellery State career office "));
    }
}

TEST_CASE("offices: the list of checks shows what the rules change") {
    const office::Office office = office_of_text("must: gpa-unsaid (they ask)\n"
                                                 "off: salary\nalways: phone-form\nbullets: 2..4\n"
                                                 "avoid: synergy\n"
                                                 "\nfor: experienced, academic\nmost-pages: 2\n");
    const std::string list = commands::list_of_checks(&office);
    for (const std::string_view piece :
         {"consider → must (office.rules:2: they ask)", "→ off (office.rules:3)",
          "not to be set aside (office.rules:4)",
          "bullets              1 to 5 bullets → 2 to 4 bullets (office.rules:5)",
          "most-pages           by stage → 2 pages (office.rules:9), for experienced and academic",
          "gpa-show             3.5 of 4\n", "avoid                synergy\n"})
        CHECK_MESSAGE(list.find(piece) != std::string::npos, piece);
    CHECK(commands::list_of_checks().find("\nnumbers\n") == std::string::npos);
}

}}
