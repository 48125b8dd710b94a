// Files of rules: what is read, what is refused and where, all of it in one run.
#include "compiler/office/find.hpp"
#include "compiler/office/labels.hpp"
#include "tests/office/rules.hpp"

#include <filesystem>
#include <fstream>
#include <set>
#include <string_view>

namespace quoin::office { namespace {

using fixtures::rules_of;
using enum trade::Stage;

struct BadRules {
    std::string text;
    std::vector<std::string> faults;
};

// clang-format off
const BadRules bad_rules[] = {
    {"gpa-shown: 3.2\n", {"1:1: there is no rule 'gpa-shown'; did you mean 'gpa-show'?"}},
    {"mandatory: length\n", {"1:1: there is no rule 'mandatory'"}},
    {"section: Rules\n", {"1:1: an office's rules have no sections: expected 'label: value'"}},
    {"must: length\n- gpa-low\n", {"2:1: an office's rules have no bullets: expected 'label: value'"}},
    // checks
    {"must: lenght\n", {"1:7: there is no check 'lenght'; did you mean 'length'?"}},
    {"off: gpa-low; gpa-lo (why)\n", {"1:15: there is no check 'gpa-lo'; did you mean 'gpa-low'?"}},
    {"must: length;\n", {"1:14: expected the name of a check, as in 'gpa-unsaid', found the end of the line"}},
    {"must: length (two pages\n", {"1:24: expected ')', found the end of the line"}},
    {"must: length ()\n", {"1:15: expected words between the parentheses, found ')'"}},
    {"must: length, gpa-low\n", {"1:13: expected ';' and what comes next, or nothing more, found ', gpa-low'"}},
    {"must: length\nmust: length\n", {"2:7: 'length' is given twice, first in line 1"}},
    {"must: length\noff: gpa-low;\n length\n", {"3:2: 'length' is said in line 1 to be 'must', and here 'off': keep one of them"}},
    {"off: length\nalways: length\n", {"2:9: 'length' is off by line 1, and 'always' keeps it: keep one of them"}},
    {"off: length\n\nfor: experienced\nalways: length\n", {"4:9: 'length' is off by line 1, and 'always' keeps it: keep one of them"}},
    // numbers
    {"gpa-show: high\n", {"1:11: expected a number such as '4' or '3.2', found 'high'"}},
    {"gpa-show: 35\n", {"1:11: 'gpa-show' of '35' is outside 1 to 4 of 4"}},
    {"gpa-show: 3.2 of 4\n", {"1:15: expected nothing after the number but a reason in parentheses, found 'of 4'"}},
    {"gpa-show: 3.2..3.5\n", {"1:11: 'gpa-show' is one number: expected such as '3.5', found '3.2..3.5'"}},
    {"bullets: 5..3\n", {"1:10: 'bullets' runs from 5 down to 3; did you mean '3..5'?"}},
    {"bullets: 2..\n", {"1:13: expected a number after '..', as in '3..5', found the end of the line"}},
    {"bullets: 2.5..4\n", {"1:10: 'bullets' counts bullets: expected a whole number, found '2.5..4'"}},
    {"text-size: 9..11\n", {"1:12: 'text-size' of '9..11' is outside 10 to 12 pt"}},
    {"updated-within: 4\nupdated-within: 5\n", {"2:1: 'updated-within' is given twice, first in line 1"}},
    {"gpa-leave-out: 3.6\n", {"1:1: a GPA is left out under 3.6 and shown from 3.5 on: the first is to be no more than the second"}},
    // words
    {"avoid: synergy; Synergy\n", {"1:17: 'Synergy' is given twice, first in line 1"}},
    {"avoid: helped\nprefer: helped\n", {"2:9: 'helped' is to be avoided by line 1, and is preferred here: keep one of them"}},
    {"avoid: ;\n", {"1:8: expected words, as in 'synergy (say who worked with whom)', found ';'"}},
    {"phrase: people person\n", {"1:9: 'people person' has no advice: add a line 'advice:' right below, with what to do in its place"}},
    {"advice: name one\n", {"1:1: 'advice' belongs right below a 'phrase', in the same block"}},
    {"phrase: people person\nadvice: name one\nweight: heavy\n", {"3:9: 'weight' cannot be 'heavy': expected 'must', 'should' or 'consider'"}},
    {"phrase: people person\nadvice: name one\nadvice: name two\n", {"3:1: 'advice' is given twice, first in line 1"}},
    {"phrase: people person\nadvice: name one\nmust: length\nsource: p. 4\n", {"4:1: 'source' belongs right below a 'phrase', in the same block"}},
    // what is allowed
    {"order: education, skils\n", {"1:19: 'order' cannot be 'skils': expected 'education', 'experience', 'projects', 'activities', 'skills', 'honors', 'credentials', 'languages', 'publications', 'prose' or 'other'; did you mean 'skills'?"}},
    {"order: skills, skills\n", {"1:16: 'skills' is given twice, first in line 1"}},
    {"themes: turnstne\n", {"1:9: there is no theme 'turnstne': expected one of sanderling or turnstone, or the name of a theme file, which ends in '.theme'; did you mean 'turnstone'?"}},
    {"dates-as: Jun 26\n", {"1:11: 'dates-as' cannot be 'Jun 26': expected 'Jun 2026', 'June 2026', '06/2026' or '2026-06'; did you mean 'Jun 2026'?"}},
    {"schools: Ellery State College\nschools: Ellery State College\n", {"2:10: 'Ellery State College' is given twice, first in line 1"}},
    // blocks
    {"must: length\nfor: experienced\n", {"2:1: 'for' opens a block: put it first, below a blank line, and its rules under it"}},
    {"for: freshman\n", {"1:6: 'for' cannot be 'freshman': expected 'undergraduate', 'recent graduate', 'graduate applicant', 'experienced' or 'academic'"}},
    {"for: experienced\noffice: Marrow Bay career office\n", {"2:1: 'office' is of the whole office: it stands in no block that 'for' opens"}},
    {"for: experienced\nmost-pages: 2\n\nfor: experienced, academic\nmost-pages: 3\n", {"5:1: 'most-pages' is given twice, first in line 2"}},
    // all of it in one run
    {"must: lenght\nbullets: 5..3\nclosin: Tuesdays\n", {"1:7: there is no check 'lenght'; did you mean 'length'?", "2:10: 'bullets' runs from 5 down to 3; did you mean '3..5'?", "3:1: there is no rule 'closin'; did you mean 'closing'?"}},
};
// clang-format on

TEST_CASE("a rule that cannot be read is an error at its place") {
    for (const BadRules& bad : bad_rules) {
        CAPTURE(bad.text);
        const auto read = rules_of(bad.text);
        CHECK(!read.office);
        CHECK(read.faults == bad.faults);
    }
}

TEST_CASE("what holds at a stage is what is said for it, else for all") {
    const auto read = rules_of("# Fall term\n"
                               "office: Marrow Bay career office\n"
                               "closing: Tuesdays, 1 to 4\n"
                               "bullets: 2..4 (the fifth is not read)\n"
                               "gpa-show: 3.2\n"
                               "must: gpa-unsaid (our employers ask)\n"
                               "off: references-line\n"
                               "\n"
                               "for: graduate applicant, experienced\n"
                               "most-pages: 2\n"
                               "bullets: 6\n"
                               "consider: gpa-unsaid\n"
                               "order: experience, education\n");
    CHECK(read.faults.empty());
    REQUIRE(read.office);
    const Office& office = *read.office;
    CHECK(office.name == "Marrow Bay career office");
    CHECK(office.closing == "Tuesdays, 1 to 4");
    const Rules &student = office.at(undergraduate), &old = office.at(experienced);
    CHECK(student.limits.least_bullets == 2);
    CHECK(student.limits.most_bullets == 4);
    CHECK(student.limits.gpa_show == 3.2);
    CHECK(student.limits.most_pages == 0);
    CHECK(student.limits.updated_within == Limits{}.updated_within);
    CHECK(student.set_by(&Limits::most_bullets)->line == 4);
    CHECK(student.set_by(&Limits::most_bullets)->reason == "the fifth is not read");
    CHECK(student.set_by(&Limits::updated_within) == nullptr);
    CHECK(student.checks.at("gpa-unsaid").weight == trade::Weight::must);
    CHECK(student.checks.at("gpa-unsaid").asked.reason == "our employers ask");
    CHECK(!student.checks.at("references-line").weight);
    CHECK(student.order.values.empty());
    CHECK(old.limits.least_bullets == 6);
    CHECK(old.limits.most_bullets == 6);
    CHECK(old.limits.gpa_show == 3.2);
    CHECK(old.limits.most_pages == 2);
    CHECK(old.checks.at("gpa-unsaid").weight == trade::Weight::consider);
    CHECK(old.order.values == std::vector{trade::Holds::experience, trade::Holds::education});
    CHECK(office.says("asks for this", student.checks.at("gpa-unsaid").asked) ==
          "Marrow Bay career office asks for this, office.rules:6: our employers ask");
}

TEST_CASE("words, phrases and names are taken as they are written") {
    const auto read =
        rules_of("avoid: Synergy (say who (and with whom)); go-getter;\n"
                 "  utilized\n"
                 "prefer: surveyed (site, plot); titrated\n"
                 "always: length (one page)\n"
                 "themes: turnstone, house/ellery.theme\n"
                 "dates-as: Jun 2026, 2026-06\n"
                 "employers: Marrow Bay Kelp Co-op; Lantern Street Coffee (Dock Road)\n"
                 "\n"
                 "phrase: proficient in\n"
                 "advice: say what you made with it\n"
                 "source: the office's handbook, page 4\n"
                 "weight: must\n");
    CHECK(read.faults.empty());
    REQUIRE(read.office);
    const Rules& rules = read.office->at(academic);
    REQUIRE(rules.avoid.size() == 3);
    CHECK(rules.avoid[0].words == "synergy");
    CHECK(rules.avoid[0].advice == "say who (and with whom)");
    CHECK(rules.avoid[1].words == "go-getter");
    CHECK(rules.avoid[2].words == "utilized");
    CHECK(rules.avoid[2].line == 2);
    REQUIRE(rules.prefer.size() == 2);
    CHECK(rules.prefer[0].of == std::vector<std::string>{"site", "plot"});
    CHECK(rules.prefer[1].of.empty());
    CHECK(rules.not_acceptable.at("length").reason == "one page");
    CHECK(rules.themes.values == std::vector<std::string>{"turnstone", "ellery"});
    CHECK(rules.date_forms.values.size() == 2);
    REQUIRE(rules.employers.size() == 2);
    CHECK(rules.employers[1].name == "Lantern Street Coffee (Dock Road)");
    REQUIRE(rules.phrases.size() == 1);
    CHECK(rules.phrases[0].advice == "say what you made with it");
    CHECK(rules.phrases[0].source == "the office's handbook, page 4");
    CHECK(rules.phrases[0].weight == trade::Weight::must);
}

TEST_CASE("an empty file of rules changes nothing") {
    const auto read = rules_of("# nothing yet\n");
    REQUIRE(read.office);
    CHECK(read.office->name == "the career office");
    CHECK(read.office->at(undergraduate).limits_set.empty());
}

TEST_CASE("every number has its default within its range") {
    std::set<std::string_view> labels;
    for (const LabelRow& row : label_rows)
        CHECK(labels.insert(row.label).second);
    for (const LimitRow& row : limit_rows) {
        CAPTURE(row.label);
        CHECK(labels.insert(row.label).second);
        const double least = Limits{}.*row.of, most = row.most ? Limits{}.*row.most : least;
        CHECK(least <= most);
        CHECK((least == 0 || least >= row.range.least));
        CHECK(most <= row.range.most);
    }
    CHECK(value_text(row_of(&Limits::most_bullets), {}) == "1 to 5 bullets");
    CHECK(value_text(row_of(&Limits::gpa_show), {}) == "3.5 of 4");
    CHECK(value_text(row_of(&Limits::most_pages), {}) == "by stage");
}

// Folders that are gone with the test.
struct RulesFolder {
    std::filesystem::path root;

    RulesFolder() {
        std::string pattern =
            (std::filesystem::temp_directory_path() / "quoin-rules-XXXXXX").string();
        REQUIRE(mkdtemp(pattern.data()) != nullptr);
        root = pattern;
    }
    ~RulesFolder() { std::filesystem::remove_all(root); }
    RulesFolder(const RulesFolder&) = delete;
    RulesFolder& operator=(const RulesFolder&) = delete;

    void put(const std::filesystem::path& path) const {
        create_directories((root / path).parent_path());
        std::ofstream(root / path) << '\n';
    }
};

TEST_CASE("rules are those nearest above the résumé, within its repository") {
    const RulesFolder folder;
    folder.put("office.rules");
    folder.put("term/ada/draft.resume");
    folder.put("repo/.git/HEAD");
    folder.put("repo/work/draft.resume");
    folder.put("own/office.rules");
    folder.put("own/draft.resume");
    const auto found = [&](const std::string& path) { return find_rules(folder.root / path); };
    CHECK(found("term/ada/draft.resume") == folder.root / "office.rules");
    CHECK(found("own/draft.resume") == folder.root / "own/office.rules");
    CHECK(!found("repo/work/draft.resume"));
    folder.put("repo/office.rules");
    CHECK(found("repo/work/draft.resume") == folder.root / "repo/office.rules");
}

}}
