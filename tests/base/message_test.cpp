// Messages with what was found in them. That one place too few or too many does not compile is for
// the compiler to say; so is that every message is there.
#include "compiler/base/message.hpp"

#include <doctest/doctest.h>

using quoin::fill;
using quoin::in_quotes;
using quoin::places_in;
using quoin::worded;

namespace {

constexpr quoin::Message nothing_found = "as in '{{lab}}'";
constexpr quoin::Message one_found = "{} is wrong";
constexpr quoin::Message measured = "'{}' of {:.3g} pt";

static_assert(places_in("") == 0);
static_assert(places_in(nothing_found.text) == 0);
static_assert(places_in(measured.text) == 2);
static_assert(places_in("{{{}}}") == 1);

std::string accents(std::size_t count) {
    std::string text;
    for (std::size_t i = 0; i < count; ++i)
        text += "é";
    return text;
}

}

TEST_CASE("message: takes what was found") {
    CHECK(fill<nothing_found>() == "as in '{lab}'");
    CHECK(fill<one_found>("{}") == "{} is wrong");
    CHECK(fill<measured>("a", 10.0 / 3) == "'a' of 3.33 pt");
    CHECK(worded<one_found>("x") == "'x' is wrong");
    CHECK(worded<nothing_found>("x") == "as in '{lab}'");
}

TEST_CASE("message: what was found is cut to a readable length") {
    CHECK(in_quotes("{}") == "'{}'");
    CHECK(in_quotes(accents(40)) == "'" + accents(40) + "'");
    CHECK(in_quotes(accents(41)) == "'" + accents(40) + "…'");
}
