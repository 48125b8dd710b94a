// The choice against all choices there are, and against its rules.
#include "compiler/tailoring/choose.hpp"
#include "compiler/tailoring/fixing.hpp"
#include "compiler/tailoring/improve.hpp"
#include "compiler/tailoring/relaxation.hpp"
#include "tests/fixtures/tries.hpp"
#include "tests/tailoring/problems.hpp"

#include <doctest/doctest.h>

#include <cstdint>
#include <string>

namespace {

using quoin::tailoring::Choice;
using quoin::tailoring::Problem;
using quoin::tailoring::Taken;
using quoin::tailoring_tests::Maker;
using quoin::tailoring_tests::Size;

// The slow way: every set of pieces that is lawful and fits. -1 if there is none.
std::int64_t best_of_all(const Problem& problem, Taken& taken, std::size_t next = 0) {
    if (next == problem.pieces.size()) {
        const bool good =
            is_lawful(problem, taken) && height_of(problem, taken) <= problem.capacity;
        return good ? worth_of(problem, taken) : -1;
    }
    const std::size_t within = problem.pieces[next].within;
    taken[next] = false;
    std::int64_t best = best_of_all(problem, taken, next + 1);
    if (within != quoin::tailoring::none && !taken[within]) return best;
    taken[next] = true;
    best = std::max(best, best_of_all(problem, taken, next + 1));
    taken[next] = false;
    return best;
}

std::int64_t best_of_all(const Problem& problem) {
    Taken taken(problem.pieces.size());
    return best_of_all(problem, taken);
}

}

TEST_CASE("choosing: what is chosen is worth what the best of all choices is") {
    int possible = 0;
    for (int seed = 0, tried = 0; tried < quoin::tries(300); ++seed) {
        Maker maker(static_cast<unsigned>(seed));
        const double part = 0.2 + 0.1 * (seed % 8);
        const Problem problem = maker.problem({2, 2, 4, 5, part});
        if (problem.pieces.size() > 18) continue;
        ++tried;
        CAPTURE(seed);
        const std::int64_t best = best_of_all(problem);
        const auto chosen = quoin::tailoring::choose(problem);
        REQUIRE(chosen.has_value() == (best >= 0));
        if (!chosen) continue;
        ++possible;
        CHECK(is_lawful(problem, chosen->taken));
        CHECK(height_of(problem, chosen->taken) <= problem.capacity);
        CHECK(chosen->worth == worth_of(problem, chosen->taken));
        CHECK(chosen->worth == best);
        CHECK(chosen->is_best());
    }
    CHECK(possible > quoin::tries(150));
}

TEST_CASE("choosing: no rule is broken, and nothing is beyond the bound") {
    for (int seed = 0; seed < quoin::tries(1000); ++seed) {
        Maker maker(static_cast<unsigned>(seed));
        const Problem problem = maker.problem(
            {static_cast<std::size_t>(1 + seed % 6), 4, 7, 12, 0.1 + 0.1 * (seed % 9)});
        CAPTURE(seed);
        const auto chosen = quoin::tailoring::choose(problem, 500);
        if (!chosen) continue;
        CHECK(is_lawful(problem, chosen->taken));
        CHECK(height_of(problem, chosen->taken) <= problem.capacity);
        CHECK(chosen->worth == worth_of(problem, chosen->taken));
        CHECK(chosen->worth <= chosen->bound);
    }
}

TEST_CASE("choosing: the same answer every time") {
    Maker maker(7);
    const Problem problem = maker.problem({8, 5, 6, 20, 0.3});
    const auto first = quoin::tailoring::choose(problem),
               second = quoin::tailoring::choose(problem);
    REQUIRE(first);
    REQUIRE(second);
    CHECK(first->taken == second->taken);
    CHECK(first->bound == second->bound);
}

TEST_CASE("choosing: of more than anybody could choose from, what is looked at has an end") {
    for (const double part : {0.02, 0.3, 0.9}) {
        Maker maker(11);
        const Problem problem = maker.problem({90, 4, 7, 12, part});
        CAPTURE(part);
        REQUIRE(problem.pieces.size() > 1000);
        const auto chosen = quoin::tailoring::choose(problem, 60);
        if (!chosen) continue;
        CHECK(is_lawful(problem, chosen->taken));
        CHECK(height_of(problem, chosen->taken) <= problem.capacity);
    }
}

TEST_CASE("choosing: once there were looks enough, what each is worth decides what goes") {
    Problem problem;
    for (const std::int64_t worth : {9, 1, 7, 3, 8})
        problem.pieces.push_back({.height = 10, .worth = worth});
    problem.capacity = 30;
    const auto parts = parts_of(problem);
    quoin::tailoring::Relaxation relaxation(problem, parts);
    relaxation.bound({0, {}}, quoin::tailoring::Fixing(problem, parts));
    for (const std::size_t looks : {0U, 1U, 1000U}) {
        quoin::tailoring::Arrangement arrangement(problem, parts);
        arrangement.assign(Taken(problem.pieces.size(), true));
        quoin::tailoring::Improver improver(problem, parts, relaxation, looks);
        CAPTURE(looks);
        CHECK(improver.lower(arrangement));
        CHECK(arrangement.taken() == Taken{true, false, true, false, true});
    }
}
