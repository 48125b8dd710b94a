// Who needs help first and why, who is asked for, and what a cohort has in common.
#include "compiler/caseload/asked.hpp"
#include "compiler/caseload/caseload.hpp"
#include "compiler/caseload/cohort.hpp"
#include "compiler/caseload/student.hpp"
#include "compiler/caseload/terms.hpp"

#include <doctest/doctest.h>

namespace quoin::caseload {

namespace {

constexpr trade::Weight must = trade::Weight::must, should = trade::Weight::should;

Student student(std::size_t musts, std::size_t shoulds, int days) {
    Student one{.called = "A"};
    one.now = {
        .name = "A", .stage = "undergraduate", .pages = 1, .allowed = 1, .size = 11, .fits = true};
    for (std::size_t i = 0; i < musts; ++i)
        one.now.remarks.push_back(
            {"spelling", must, 3, "slip", "- Counted recieved forms here", false});
    for (std::size_t i = 0; i < shoulds; ++i)
        one.now.remarks.push_back({"email-tone", should, 4, "tone", "email: a@b.example", true});
    one.days = days;
    one.drafts = {{Day(std::chrono::days(20000 - days)), ""}};
    return one;
}

Student unreadable() {
    Student one = student(0, 0, 3);
    one.now = {.fault = "unknown label 'rol'", .fault_line = 20};
    return one;
}

Student not_to_be_opened() {
    Student one = unreadable();
    one.now = {.fault = "cannot be read: Permission denied"};
    return one;
}

Student too_long() {
    Student one = student(0, 0, 3);
    one.now.fits = false;
    one.now.pages = 2;
    return one;
}

Student worse() {
    Student one = student(2, 0, 3);
    one.before = Counts{1, 9, 9};
    return one;
}

}

TEST_CASE("caseload: why a student stands where she does is said in words, the heaviest first") {
    struct Case {
        Student one;
        std::string_view why;
        bool ready, due;
    };
    for (Case& c : std::vector<Case>{
             {unreadable(), "cannot be read: unknown label 'rol' (line 20)", false, true},
             {not_to_be_opened(), "cannot be read: Permission denied", false, true},
             {student(2, 3, 41), "2 musts, no draft for 41 days", false, true},
             {student(1, 0, 13), "1 must", false, true},
             {too_long(), "too long for its page", false, true},
             {worse(), "2 musts, worse than the draft before", false, true},
             {student(0, 2, 41), "2 shoulds", true, false},
             {student(0, 1, 181), "no draft for 181 days, 1 should", true, true},
             {student(0, 0, 180), "ready", true, false}}) {
        weigh(c.one);
        CHECK(c.one.why == c.why);
        CHECK(c.one.now.ready() == c.ready);
        CHECK(c.one.due() == c.due);
    }
}

TEST_CASE("caseload: a must outweighs any shoulds, and a file that cannot be read any musts") {
    std::vector<Student> all{student(0, 0, 1), student(0, 30, 170), student(1, 0, 0),
                             student(30, 30, 400), unreadable()};
    for (std::size_t i = 0; i < all.size(); ++i) {
        weigh(all[i]);
        if (i > 0) CHECK(all[i].need > all[i - 1].need);
    }
}

TEST_CASE("caseload: the trend is of musts, else of shoulds") {
    struct Case {
        std::size_t musts, shoulds;
        Counts before;
        std::string_view words;
    };
    for (const auto& [musts, shoulds, before, words] :
         {Case{1, 5, {3, 0, 0}, "2 must fewer"}, Case{1, 5, {0, 9, 0}, "1 must more"},
          Case{1, 5, {1, 2, 0}, "3 should more"}, Case{1, 5, {1, 5, 7}, "as before"}}) {
        Student one = student(musts, shoulds, 1);
        one.before = before;
        CHECK(trend_words(one) == words);
    }
    CHECK(trend_words(student(1, 1, 1)).empty());
}

TEST_CASE("caseload: only who is asked for is left") {
    const Student waiting = student(1, 1, 41), stale = student(0, 0, 200), fine = student(0, 0, 2);
    const Day day(std::chrono::days(20000 - 41));
    struct Case {
        Asked asked;
        bool waiting, stale, fine, unreadable;
    };
    for (const Case& c : std::vector<Case>{{{}, true, true, true, true},
                                           {{.due = true}, true, true, false, true},
                                           {{.stage = "undergraduate"}, true, true, true, false},
                                           {{.stage = "experienced"}, false, false, false, false},
                                           {{.needs = "must"}, true, false, false, false},
                                           {{.needs = "should"}, true, false, false, false},
                                           {{.needs = "reading"}, false, false, false, true},
                                           {{.needs = "draft"}, false, true, false, false},
                                           {{.needs = "fit"}, false, false, false, false},
                                           {{.check = "spelling"}, true, false, false, false},
                                           {{.since = day}, true, false, true, true},
                                           {{.until = day}, true, true, false, false}}) {
        CHECK(is_asked_for(waiting, c.asked) == c.waiting);
        CHECK(is_asked_for(stale, c.asked) == c.stale);
        CHECK(is_asked_for(fine, c.asked) == c.fine);
        CHECK(is_asked_for(unreadable(), c.asked) == c.unreadable);
    }
    CHECK(is_asked_for(too_long(), {.needs = "fit"}));
    std::vector<Student> all{waiting, stale, fine};
    keep_asked(all, {.first = 2});
    CHECK(all.size() == 2);
}

TEST_CASE("caseload: a cohort's findings, by how many students have them; no personal line") {
    const std::vector<CommonFinding> common =
        common_findings({student(2, 1, 1), student(1, 0, 1), student(0, 1, 1), student(3, 1, 1)});
    REQUIRE(common.size() == 2);
    CHECK(common[0].check == "spelling"); // of equals the heavier
    CHECK(common[0].students == 3);
    CHECK(common[0].findings == 6);
    CHECK(common[0].example == "- Counted recieved forms here");
    CHECK(common[1].students == 3);
    CHECK(common[1].example.empty());
}

TEST_CASE("caseload: terms end in May, in August and in December") {
    struct Case {
        std::string_view day, term;
    };
    for (const auto& [day, term] :
         {Case{"2026-01-01", "Spring 2026"}, Case{"2026-05-31", "Spring 2026"},
          Case{"2026-06-01", "Summer 2026"}, Case{"2026-08-31", "Summer 2026"},
          Case{"2026-09-01", "Fall 2026"}, Case{"2026-12-31", "Fall 2026"}})
        CHECK(term_of(*day_of(day)) == term);
}

TEST_CASE(
    "caseload: of a term the last draft counts, and for the terms without one the last before") {
    const auto draft = [](std::string_view day) { return Draft{.day = *day_of(day)}; };
    const std::vector<Draft> drafts{draft("2026-02-01"), draft("2026-05-30"), draft("2026-06-02"),
                                    draft("2026-12-01")};
    CHECK(last_of_terms(drafts) == std::vector{drafts[1], drafts[2], drafts[3]});

    Student steady, late;
    steady.drafts = {drafts[0], drafts[1], drafts[3]};
    steady.at_ends = {{drafts[1].day, {4, 2, 0}, false}, {drafts[3].day, {0, 1, 0}, true}};
    late.drafts = {drafts[2]};
    late.at_ends = {{drafts[2].day, {1, 0, 0}, false}};
    CHECK(terms_of({steady, late}) == std::vector<TermState>{{"Spring 2026", 1, 2, 0, 4, 2},
                                                             {"Summer 2026", 2, 1, 0, 2.5, 1},
                                                             {"Fall 2026", 2, 1, 1, 0.5, 0.5}});
    CHECK(terms_of({}).empty());
}

}
