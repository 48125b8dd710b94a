// Where a résumé shows a posting's terms, and the order that serves it.
#include "compiler/matching/coverage.hpp"
#include "compiler/matching/grouping.hpp"
#include "compiler/matching/rank.hpp"
#include "tests/fixtures/read_resume.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <vector>

using namespace quoin::matching;
using quoin::postings::Posting;
using quoin::postings::Term;

namespace {

const char* const page = "name: Ana Reyes\n"
                         "email: ana@example.org\n"
                         "abbreviations: EHR (electronic health record)\n\n"
                         "section: Experience\n"
                         "role: Aide\n"
                         "employer: Harbor Clinic\n"
                         "dates: Jan 2025 - May 2025\n"
                         "- Grafted 40 seedlings in the greenhouse\n"
                         "- Charted intake in the EHR for 12 residents\n"
                         "- Transferred 14 residents with a gait belt\n"
                         "- Labelled water samples and organised the data base\n"
                         "- Inspected hulls, then analyzed chemical residue of patients\n"
                         "section: Skills\n"
                         "Tools: GIS (geographic information systems); Pyhton; vital signs\n"
                         "section: Languages\n"
                         "Spoken: Spanish (fluent)\n";

struct Covered {
    Verdict verdict{};
    std::vector<Showing> showings;
};

Covered covered_in(const std::string& source, const std::string& words,
                   const std::string& other = {}, quoin::postings::Kind kind = {}) {
    const auto reading = quoin::fixtures::read_resume(source);
    REQUIRE(reading.resume);
    const quoin::model::Resume& resume = *reading.resume;
    static const quoin::english::WordList list(std::string(QUOIN_DATA_FOLDER) +
                                               "/dictionaries/en_US.words");
    Posting posting;
    Term term;
    term.words = words;
    term.other_form = other;
    term.kind = kind;
    term.weight = 1;
    posting.terms.push_back(term);
    const Coverage coverage = cover(resume, posting, list);
    return {coverage.terms.at(0).verdict, coverage.terms.at(0).showings};
}

Covered covered(const std::string& words, const std::string& other = {},
                quoin::postings::Kind kind = {}) {
    return covered_in(page, words, other, kind);
}

}

TEST_CASE("matching: how near a term is shown") {
    struct Row {
        const char* term;
        const char* other;
        Verdict verdict;
        Nearness how;
        std::uint32_t line;
    };
    const Row rows[] = {
        {"gait belt", "", Verdict::shown, Nearness::exact, 11},
        {"grafting", "", Verdict::shown, Nearness::form, 9},
        {"transfer residents", "", Verdict::shown, Nearness::form, 11},
        {"electronic health record", "", Verdict::shown, Nearness::acronym, 10},
        {"electronic medical record", "EHR", Verdict::shown, Nearness::acronym, 10},
        {"vital signs", "", Verdict::list_only, Nearness::exact, 15},
        {"geographic information systems", "", Verdict::list_only, Nearness::exact, 15},
        {"database", "", Verdict::not_found, Nearness::spelling, 12},
        {"residue analysis", "", Verdict::not_found, Nearness::near, 13},
        {"chemistry", "", Verdict::not_found, Nearness::near, 13},
        {"Python", "", Verdict::not_found, Nearness::spelling, 15},
    };
    for (const Row& row : rows) {
        CAPTURE(row.term);
        const Covered found = covered(row.term, row.other);
        CHECK(found.verdict == row.verdict);
        REQUIRE(!found.showings.empty());
        CHECK(found.showings[0].how == row.how);
        CHECK(found.showings[0].place.line == row.line);
    }
}

TEST_CASE("matching: a thing by another name, of its kind, or implied") {
    struct Row {
        const char* term;
        const char* source; // of entries beside the degree
        Verdict verdict;
        Nearness how;
    };
    const Row rows[] = {
        {"CPR", "credential: First Aid and CPR/AED\n", Verdict::shown, Nearness::exact},
        {"cash drawer", "role: Clerk\n- Balanced till nightly\n", Verdict::not_found,
         Nearness::other_words},
        {"upset customers", "role: Clerk\n- Calmed angry guests\n", Verdict::not_found,
         Nearness::other_words},
        {"greet customers", "role: Clerk\n- Greeted guests\n", Verdict::not_found,
         Nearness::other_words},
        {"spreadsheets", "role: Clerk\n- Built budget in Google Sheets\n", Verdict::not_found,
         Nearness::of_kind},
        {"spreadsheets", "role: Clerk\n- Excel at long hours\n", Verdict::missing, {}},
        {"Microsoft Office", "role: Clerk\n- Wrote word lists\n", Verdict::missing, {}},
        {"autism spectrum disorder", "role: Clerk\n- Sat with boy on the autism spectrum\n",
         Verdict::shown, Nearness::form},
        {"computer skills", "role: Clerk\n- Sold computer\n", Verdict::missing, {}},
        {"food service", "role: Barista\n- Poured 90 drinks an hour\n", Verdict::not_found,
         Nearness::of_kind},
        {"CNA", "role: Nursing Assistant\n- Turned 3 residents\n", Verdict::missing, {}},
        {"preschool", "role: Clerk\n- Read to children\n", Verdict::missing, {}},
        {"children", "role: Clerk\n- Read to 9 preschoolers\n", Verdict::not_found,
         Nearness::of_kind},
        {"patient care", "role: Clerk\n- Care for a residence\n", Verdict::missing, {}},
        {"Microsoft", "role: Clerk\n- Sold Words\n", Verdict::missing, {}},
        {"keep accurate records", "role: Clerk\n- Kept records of 40 boats\n", Verdict::not_found,
         Nearness::other_words},
        {"keep accurate logs", "role: Clerk\n- Keep logs of 40 boats\n", Verdict::not_found,
         Nearness::near},
        {"accurate records", "role: Clerk\n- Played records\n", Verdict::missing, {}},
        {"write tests", "role: Clerk\n- Added 60 unit tests\n", Verdict::not_found,
         Nearness::other_words},
        {"blood", "role: Aide\n- Took blood pressure\n", Verdict::missing, {}},
        {"borrowers", "role: Clerk\n- Helped 9 people borrow books\n", Verdict::missing, {}},
        {"borrowers", "role: Clerk\n- Registered each borrower\n", Verdict::shown, Nearness::form},
        {"CPR", "credential: BLS Provider\n", Verdict::not_found, Nearness::of_kind},
        {"customer service", "role: Clerk\n- Built tide server\n", Verdict::missing, {}},
        {"food service", "role: Clerk\n- Kept server of the barista club\n", Verdict::missing, {}},
        {"e-newsletter", "role: Clerk\n- Wrote newsletter\n", Verdict::not_found, Nearness::near},
        {"High school diploma", "", Verdict::shown, Nearness::implied},
        {"GED", "", Verdict::shown, Nearness::implied},
        {"nursing program", "", Verdict::shown, Nearness::implied},
        {"welding program", "", Verdict::missing, {}},
    };
    for (const Row& row : rows) {
        INFO(std::string(row.term));
        INFO(std::string(row.source));
        const Covered found =
            covered_in(std::string("name: Ana Reyes\nemail: ana@example.org\n\nsection: Education\n"
                                   "school: Ellery State College\n"
                                   "degree: Bachelor of Science in Nursing\n"
                                   "graduation: Jun 2028 (expected)\n\nsection: ") +
                           (std::string_view(row.source).starts_with("cred") ? "Certifications"
                                                                             : "Experience") +
                           "\n" + row.source,
                       row.term);
        CHECK(found.verdict == row.verdict);
        if (row.verdict == Verdict::missing) continue;
        REQUIRE(!found.showings.empty());
        CHECK(found.showings[0].how == row.how);
    }
}

TEST_CASE("matching: of a choice one will do, and it counts once") {
    const auto reading = quoin::fixtures::read_resume(page);
    REQUIRE(reading.resume);
    const quoin::english::WordList list(std::string(QUOIN_DATA_FOLDER) +
                                        "/dictionaries/en_US.words");
    Posting posting;
    const auto ask = [&](const char* words, quoin::postings::Choice choice) {
        Term term;
        term.words = words;
        term.weight = 1;
        term.choice = choice;
        posting.terms.push_back(term);
    };
    ask("gait belt", {1, 1, 1});
    ask("welding", {1, 1, 1});
    ask("rigging", {2, 1, 0}); // or
    ask("diving", {2, 1, 0});
    ask("residents", {2, 2, 0});
    ask("knots", {3, 1, 1}); // neither
    ask("sails", {3, 1, 1});
    const Coverage coverage = cover(*reading.resume, posting, list);
    const Verdict expected[] = {Verdict::shown, Verdict::spared,  Verdict::spared, Verdict::spared,
                                Verdict::shown, Verdict::missing, Verdict::missing};
    for (std::size_t i = 0; i < coverage.terms.size(); ++i)
        CHECK(coverage.terms[i].verdict == expected[i]);
    CHECK(coverage.required.terms == 3);
    CHECK(coverage.required.missing == 1);
    CHECK(std::abs(coverage.required.of_one() - 2.0 / 3) < 1e-9);
    REQUIRE(coverage.terms[5].others.size() == 1);
    CHECK(coverage.terms[6].told_with_first);
}

TEST_CASE("matching: a soft skill counts only where it is shown") {
    const auto reading = quoin::fixtures::read_resume(page);
    REQUIRE(reading.resume);
    const quoin::english::WordList list(std::string(QUOIN_DATA_FOLDER) +
                                        "/dictionaries/en_US.words");
    Posting posting;
    for (const char* words : {"gait belt", "calm"}) {
        Term term;
        term.words = words;
        term.weight = 1;
        posting.terms.push_back(term);
    }
    posting.terms[1].kind = quoin::postings::Kind::soft_skill;
    const Coverage coverage = cover(*reading.resume, posting, list);
    CHECK(coverage.terms[1].verdict == Verdict::missing);
    CHECK(coverage.required.terms == 1);
    CHECK(coverage.required.of_one() == 1);
}

TEST_CASE("matching: what is not there is missing") {
    for (const char* term :
         {"Java", "C++", "signs of life in water", "universe", "G", "patience"}) {
        CAPTURE(term);
        CHECK(covered(term).verdict == Verdict::missing);
    }
}

TEST_CASE("matching: a language in a list is where it belongs") {
    CHECK(covered("Spanish", "", quoin::postings::Kind::language).verdict == Verdict::shown);
    CHECK(covered("Spanish").verdict == Verdict::list_only);
}

// Robertson and Zaragoza's formula; the value is a worked one: idf .248, twice in a document of
// eight words where the mean is 8.6.
TEST_CASE("matching: BM25's value") {
    CHECK(std::abs(Bm25{}.score(0.248, 2, 8, 8.6) - 0.362) < 0.0005);
    CHECK(inverse_frequency(1, 10) > inverse_frequency(5, 10));
}

TEST_CASE("matching: bullets that serve the posting come first, else they stay as they stand") {
    const auto reading = quoin::fixtures::read_resume(page);
    REQUIRE(reading.resume);
    const quoin::model::Resume& resume = *reading.resume;
    const quoin::english::WordList list(std::string(QUOIN_DATA_FOLDER) +
                                        "/dictionaries/en_US.words");
    struct Row {
        std::vector<std::string> asked;
        std::vector<std::size_t> order;
        bool reordered;
    };
    const Row rows[] = {
        {{"gait belt", "residents"}, {2, 0, 1, 3, 4}, true}, // both in one: the rest far behind
        {{"residents"}, {1, 2, 4, 0, 3}, true}, // patients are residents, in other words
        {{"hulls", "water samples"}, {3, 4, 0, 1, 2}, true}, // near alike: as the writer has them
        {{"grafting"}, {0, 1, 2, 3, 4}, false},
        {{}, {0, 1, 2, 3, 4}, false},
    };
    for (const Row& row : rows) {
        Posting posting;
        for (const std::string& words : row.asked) {
            Term term;
            term.words = words;
            term.weight = 1;
            posting.terms.push_back(term);
        }
        const Coverage coverage = cover(resume, posting, list);
        const auto ranked = rank(resume, coverage);
        REQUIRE(ranked.size() == 1);
        std::vector<std::size_t> order;
        for (const RankedBullet& bullet : ranked[0].bullets)
            order.push_back(bullet.bullet);
        CAPTURE(row.asked.size());
        CHECK(order == row.order);
        CHECK(ranked[0].reordered == row.reordered);
    }
}

TEST_CASE("matching: what is relevant, and what additional") {
    const auto reading =
        quoin::fixtures::read_resume("name: Ana Reyes\n"
                                     "email: ana@example.org\n\n"
                                     "section: Experience\n"
                                     "role: Aide\n"
                                     "employer: Harbor Clinic\n"
                                     "dates: Jan 2025 - May 2025\n"
                                     "- Transferred 14 residents with a gait belt\n"
                                     "\nrole: Deckhand\n"
                                     "employer: Gannet Ferries\n"
                                     "dates: Jun 2024 - Aug 2024\n"
                                     "- Scrubbed decks of two ferries\n"
                                     "\nrole: Volunteer\n"
                                     "employer: Spindrift House\n"
                                     "dates: Jan 2023 - May 2024\n"
                                     "- Read to 12 residents each week\n");
    REQUIRE(reading.resume);
    const quoin::english::WordList list(std::string(QUOIN_DATA_FOLDER) +
                                        "/dictionaries/en_US.words");
    Posting posting;
    for (const char* words : {"gait belt", "residents"}) {
        Term term;
        term.words = words;
        term.weight = 1;
        posting.terms.push_back(term);
    }
    const quoin::model::Resume& resume = *reading.resume;
    const auto groups = group(resume, rank(resume, cover(resume, posting, list)));
    REQUIRE(groups.size() == 1);
    REQUIRE(groups[0].entries.size() == 3);
    CHECK(groups[0].entries[0].relevant);
    CHECK(!groups[0].entries[1].relevant);
    CHECK(groups[0].entries[1].score == 0);
    CHECK(group(resume, rank(resume, cover(resume, Posting{}, list))).empty());
}
