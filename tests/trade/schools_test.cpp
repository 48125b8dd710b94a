// Which schools come before college, and the months by name: facts that all read from one place.
#include "compiler/trade/months.hpp"
#include "compiler/trade/schools.hpp"

#include <doctest/doctest.h>

namespace quoin::trade {

TEST_CASE("schools: before college, by name or by award") {
    struct Case {
        const char* school;
        const char* degree;
        bool before;
    };
    for (const Case& test : {
             Case{"North Jetty High School", "", true},
             Case{"Skerry Preparatory Academy", "", true},
             Case{"Port Ellery Senior High", "", true},
             Case{"ELLERY SECONDARY SCHOOL", "", true},
             Case{"Jetty Academy", "High School Diploma", true},
             Case{"North Jetty High School", "Certificate in Welding", false},
             Case{"Ellery State College", "Bachelor of Arts", false},
             Case{"Highline College", "", false},
             Case{"", "", false},
         }) {
        CAPTURE(test.school);
        CHECK(is_before_college(test.school, test.degree) == test.before);
    }
}

TEST_CASE("months: whole, shortened, and words that only begin like one") {
    struct Case {
        const char* word;
        int month; // 0 for none
        bool whole;
    };
    for (const Case& test : {
             Case{"January", 1, true},
             Case{"jan", 1, false},
             Case{"MAY", 5, true},
             Case{"Sept", 9, false},
             Case{"Sep", 9, false},
             Case{"december", 12, true},
             Case{"Marc", 0, false},
             Case{"Juno", 0, false},
             Case{"ju", 0, false},
             Case{"", 0, false},
         }) {
        CAPTURE(test.word);
        const auto named = month_named(test.word);
        CHECK((named ? named->month : 0) == test.month);
        if (named) CHECK(named->whole == test.whole);
    }
}

}
