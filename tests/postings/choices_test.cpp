// What a posting lets a reader choose, what it denies, and its conditions.
#include "compiler/postings/posting.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

using namespace quoin::postings;

namespace {

Posting asking(const std::string& items) {
    static const quoin::english::WordList words(std::string(QUOIN_DATA_FOLDER) +
                                                "/dictionaries/en_US.words");
    return read_posting(text_lines("Requirements:\n" + items), 0, words);
}

const Term* term_named(const Posting& posting, const std::string& words) {
    const auto at = std::ranges::find(posting.terms, words, &Term::words);
    return at == posting.terms.end() ? nullptr : &*at;
}

Choice choice_of(const Posting& posting, const std::string& words) {
    const Term* term = term_named(posting, words);
    REQUIRE_MESSAGE(term != nullptr, words);
    return term->choice;
}

}

TEST_CASE("postings: of what `or` joins any will do") {
    struct Row {
        const char* item;
        const char* one;
        const char* other;
        bool any;
    };
    const Row rows[] = {
        {"- Rigging, welding or splicing", "Rigging", "splicing", true},
        {"- A diploma or a GED", "diploma", "GED", true},
        {"- Experience with rigging or with sails", "rigging", "sails", true},
        {"- Rigging, sails, or a closely related field", "Rigging", "sails", true},
        {"- Fluent in Spanish, Russian or Tagalog", "Spanish", "Tagalog", true},
        {"- Monitoring tools such as Grafana", "Monitoring tools", "Grafana", true},
        {"- A second language (Spanish, Tagalog)", "second language", "Tagalog", true},
        {"- Rigging, welding and splicing", "Rigging", "splicing", false},
        {"- Rigging. Welding", "Rigging", "Welding", false},
        {"- Rigging and sails", "Rigging", "sails", false},
    };
    for (const Row& row : rows) {
        INFO(std::string(row.item));
        const Posting posting = asking(std::string(row.item) + "\n");
        const Choice one = choice_of(posting, row.one), other = choice_of(posting, row.other);
        CHECK((one.list > 0 && one == other) == row.any);
        CHECK((one.list > 0 || other.list > 0) == row.any);
    }
}

TEST_CASE("postings: a sentence, or items that `or` ends, have sides") {
    const Posting one =
        asking("- A year of rigging on a ketch, or completion of a clinical rotation\n");
    CHECK(choice_of(one, "rigging").side != choice_of(one, "clinical rotation").side);
    CHECK(choice_of(one, "rigging").sentence == choice_of(one, "clinical rotation").sentence);
    const Posting items = asking("- rigging; or\n- scuba diving\n- welding\n");
    CHECK(choice_of(items, "rigging").sentence == choice_of(items, "scuba diving").sentence);
    CHECK(choice_of(items, "rigging").side != choice_of(items, "scuba diving").side);
    CHECK(choice_of(items, "rigging").sentence != choice_of(items, "welding").sentence);
}

TEST_CASE("postings: a sentence that says what is just as good is another side") {
    const Posting posting =
        asking("- A course of rigging is great; scuba diving is just as good\n- Splicing\n");
    const Choice one = choice_of(posting, "rigging"), other = choice_of(posting, "scuba diving");
    CHECK(one.sentence == other.sentence);
    CHECK(one.side != other.side);
    CHECK(choice_of(posting, "Splicing").sentence != one.sentence);
}

TEST_CASE("postings: what is denied is no term, and what is asked beside it is") {
    struct Row {
        const char* item;
        const char* denied;
    };
    const Row rows[] = {
        {"Welding card NOT needed", "Welding card"},
        {"CDL not required", "CDL"},
        {"Welding is on its way out here", "Welding"},
        {"We don't do welding tests", "welding tests"},
        {"An existing CDL is not necessary", "CDL"},
        {"CDL not required, though a rigging card must be obtained", "CDL"},
    };
    for (const Row& row : rows) {
        INFO(std::string(row.item));
        CHECK(term_named(asking("- Knots\n- " + std::string(row.item) + "\n"), row.denied) ==
              nullptr);
    }
    const Posting turned = asking("- CDL not required, though a rigging card must be obtained\n");
    CHECK(term_named(turned, "rigging card") != nullptr);
    for (const char* item :
         {"Welding is a plus, not required", "Welding is a plus but is not required"}) {
        INFO(std::string(item));
        const Posting plus = asking("- Knots\n- " + std::string(item) + "\n");
        REQUIRE(term_named(plus, "Welding") != nullptr);
        CHECK(term_named(plus, "Welding")->standing == Standing::preferred);
    }
}

TEST_CASE("postings: conditions are told apart, wherever they stand") {
    struct Row {
        const char* sentence;
        const char* about; // none: it is no condition
    };
    const Row rows[] = {
        {"Must be able to lift up to 50 pounds", "the body"},
        {"At least 18 years of age", "age"},
        {"A background check and a drug screen are required", "checks"},
        {"Must be available for all shifts, including Saturdays", "hours"},
        {"Proof of immunization", "health"},
        {"Authorized to work in the United States", "the right to work"},
        {"Occasional travel to other islands", "travel"},
        {"Steel-toed boots required", "gear"},
        {"Able to work 12-hr shifts, 7 days a week in season", "hours"},
        {"Knowledge of body mechanics and safe lifting", ""},
        {"Exposure to two kinds of sails", ""},
        {"No nights or weekends", ""},
        {"Flu shot offered free, not mandatory", ""},
        {"Rigging", ""},
    };
    for (const Row& row : rows) {
        INFO(std::string(row.sentence));
        const Posting posting = asking("- Knots\n- " + std::string(row.sentence) + "\n");
        CHECK(posting.conditions.size() == (*row.about == '\0' ? 0 : 1));
        for (const Condition& condition : posting.conditions) {
            CHECK(condition.about == row.about);
            CHECK(condition.sentence == row.sentence);
            CHECK(condition.line == 3);
        }
    }
    const Posting below =
        asking("- Knots\n\nConditions of employment:\nA credit check is required.\n"
               "\nBenefits:\nPaid holidays, and no drug test of ours is free.\n");
    REQUIRE(!below.conditions.empty());
    CHECK(below.conditions.front().about == "checks");
}

TEST_CASE("postings: what a condition is of is no term, and what is asked beside it is") {
    struct Row {
        const char* item;
        const char* term;
        bool asked;
    };
    const Row rows[] = {
        {"Can lift 50 lb anchors with a deckhand", "deckhand", false},
        {"18+ for the rental dock", "rental dock", false},
        {"Able to stand on wet concrete floors, climb ladders, lift 50 lbs", "ladders", false},
        {"Must be able to lift 50 lbs and to splice rope", "rope", true},
        {"At least 18 and a rigging certificate", "rigging certificate", true},
        {"Reliable transportation; Excel", "Excel", true},
        {"Carry luggage up to 50 lb", "luggage", false},
        {"Weekends are a must, and you know the VHF radio", "VHF radio", true},
        {"Must speak Spanish on the night shift", "Spanish", true},
    };
    for (const Row& row : rows) {
        INFO(std::string(row.item));
        const Posting posting = asking("- Knots\n- " + std::string(row.item) + "\n");
        CHECK((term_named(posting, row.term) != nullptr) == row.asked);
        CHECK(posting.conditions.size() == 1);
    }
    const Posting prose = asking("Completion of a history check under the Harbor Act.\n");
    CHECK(term_named(prose, "Harbor Act") != nullptr);
    const Posting checked = asking("A criminal history check under the Harbor Act.\n");
    CHECK(term_named(checked, "Harbor Act") == nullptr);
    const Posting told = asking("- Knots\n\nDuties:\n- Gives hull care on the evening shift\n");
    CHECK(term_named(told, "hull care") != nullptr);
}

TEST_CASE("postings: who others are, and what the job is called, is not asked") {
    struct Row {
        const char* sentence;
        const char* term;
        bool asked;
    };
    const Row rows[] = {
        {"Works under the supervision of a rigging foreman.", "rigging foreman", false},
        {"The marine electrician keeps wiring safe.", "marine electrician", false},
        {"Harbor School seeks a marine electrician for its wiring.", "marine electrician", false},
        {"Pair with Ingeborg (CTO) in the mornings.", "CTO", false},
        {"Explain wiring to a harbormaster.", "harbormaster", false},
        {"Supports the Facilities Director with drawings.", "Facilities Director", false},
        {"Refers hard questions to a librarian.", "librarian", false},
        {"Explain wiring in plain English.", "English", false},
        {"Explain wiring in English.", "English", true},
    };
    static const quoin::english::WordList words(std::string(QUOIN_DATA_FOLDER) +
                                                "/dictionaries/en_US.words");
    for (const Row& row : rows) {
        INFO(std::string(row.sentence));
        const std::string text = "Marine Electrician\n\nDuties:\n" + std::string(row.sentence);
        const Posting posting = read_posting(text_lines(text + "\n"), 0, words);
        CHECK((term_named(posting, row.term) != nullptr) == row.asked);
    }
    const Posting known = read_posting(
        text_lines("Marine Electrician\n\nRequirements:\n- A year as a marine electrician\n"), 0,
        words);
    CHECK(term_named(known, "marine electrician") != nullptr);
}

TEST_CASE("postings: the long form of an acronym is one term with it") {
    for (const char* item :
         {"Use of personal protective equipment (PPE)",
          "Augmentative and alternative communication (AAC)", "Basic Life Support (BLS)"}) {
        CAPTURE(item);
        const Posting posting = asking("- " + std::string(item) + "\n");
        REQUIRE(posting.terms.size() == 1);
        CHECK(!posting.terms[0].other_form.empty());
    }
}
