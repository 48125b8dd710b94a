// What is kept of a draft comes back as it was, and what is no such thing is refused.
#include "compiler/base/digest.hpp"
#include "compiler/caseload/appraisal.hpp"

#include <doctest/doctest.h>

namespace quoin::caseload {

TEST_CASE("caseload: an appraisal comes back as it was kept") {
    const Appraisal all{
        .name = "Ottoline Brandt",
        .stage = "undergraduate",
        .pages = 2,
        .allowed = 1,
        .size = 10.25,
        .good = "one hand",
        .advice = "Tuesdays",
        .stale_months = 4,
        .remarks = {{"spelling", trade::Weight::must, 12, "'a' \"b\"\n", "- c", true},
                    {"page-fill", trade::Weight::consider, 0, "", "", false}}};
    CHECK(appraisal_from(to_bytes(all)) == all);
    CHECK(appraisal_from(to_bytes({})) == Appraisal{});
    CHECK(all.counts() == Counts{1, 0, 1});
}

TEST_CASE("caseload: what nothing was kept as is refused") {
    std::string kept = to_bytes({.name = "a", .remarks = {{"spelling", {}, 1, "", "", false}}});
    for (std::size_t end = 0; end < kept.size(); ++end)
        CHECK_FALSE(appraisal_from(std::string_view(kept).substr(0, end)).has_value());
    for (const std::string_view bad :
         {"", "{}", "[]", "null", "\xFF", R"({"name":1})", "[[[[[[[[", R"({"remarks":[[]]})"})
        CHECK_FALSE(appraisal_from(bad).has_value());
    kept.replace(kept.find("[\"spelling\",0"), 13, "[\"spelling\",7");
    CHECK_FALSE(appraisal_from(kept).has_value());
}

TEST_CASE("caseload: days are those of ISO 8601") {
    struct Case {
        std::string_view text;
        bool good;
    };
    for (const Case& c :
         {Case{"2026-11-29", true}, Case{"2024-02-29", true}, Case{"2026-02-29", false},
          Case{"2026-13-01", false}, Case{"2026-1-01", false}, Case{"26-11-29", false},
          Case{"2026/11/29", false}, Case{"2026-11-2x", false}, Case{"2026-11--1", false},
          Case{"", false}}) {
        CAPTURE(c.text);
        const auto day = day_of(c.text);
        CHECK(day.has_value() == c.good);
        if (day) CHECK(iso(*day) == c.text);
    }
}

TEST_CASE("caseload: a digest tells where its pieces end") {
    CHECK(Digest().add("ab").add("c").bytes() != Digest().add("a").add("bc").bytes());
    CHECK(digest_of("abc").size() == 2 * digest_size);
    CHECK(in_hexadecimal("\x0F\xA0") == "0fa0");
}

}
