// What is a term of a posting, and of which kind.
#include "compiler/postings/posting.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

using namespace quoin::postings;

namespace {

const Term* term_of(const Posting& posting, const std::string& words) {
    const auto at = std::ranges::find(posting.terms, words, &Term::words);
    return at == posting.terms.end() ? nullptr : &*at;
}

Posting posting_of(const std::string& text) {
    static const quoin::english::WordList words(std::string(QUOIN_DATA_FOLDER) +
                                                "/dictionaries/en_US.words");
    return read_posting(text_lines(text), 0, words);
}

}

TEST_CASE("postings: names of people, places and employers are no terms") {
    struct Row {
        const char* sentence;
        const char* term;
        const char* name;
    };
    const Row rows[] = {
        {"Tolliver & Daughter of Brill is looking for help with upholstery.", "upholstery",
         "Tolliver"},
        {"Knowledge of knots, for work in Harlan Bay.", "knots", "Harlan Bay"},
        {"You know rigging and would pair with Ilse.", "rigging", "Ilse"},
        {"You know Excel and would sell for The Lamp & Loaf.", "Excel", "Lamp & Loaf"},
        {"You know rigging and are licensed in Washington.", "rigging", "Washington"},
        {"You know rigging, as does our captain Odalys.", "rigging", "Odalys"},
        {"You know rigging from Sable Point to Cold Harbor.", "rigging", "Sable"},
    };
    for (const Row& row : rows) {
        INFO(std::string(row.sentence));
        const Posting posting = posting_of(std::string("Requirements:\n\n") + row.sentence + "\n");
        CHECK(term_of(posting, row.term) != nullptr);
        CHECK(term_of(posting, row.name) == nullptr);
    }
}

TEST_CASE("postings: what does something in what is told is a name") {
    const Posting posting =
        posting_of("Sailmaker\n\nMeridian Lofts (owner: Ari Meridian) mends sails.\n\n"
                   "Requirements:\n\nYou know rigging, and Meridian's ways of splicing.\n");
    CHECK(term_of(posting, "rigging") != nullptr);
    CHECK(std::ranges::none_of(posting.terms, [](const Term& term) {
        return term.words.find("Meridian Lofts") != std::string::npos;
    }));
}

TEST_CASE("postings: checks, oaths and disclosures are no terms") {
    for (const char* condition :
         {"Confidential financial disclosure", "A criminal history check", "Two-step TB skin test",
          "Fingerprint clearance", "A signed non-disclosure agreement"}) {
        const Posting posting =
            posting_of("Requirements:\n- Rigging\n- " + std::string(condition) + "\n");
        INFO(std::string(condition));
        CHECK(posting.terms.size() == 1);
    }
}

TEST_CASE("postings: the kind of a term is told by what stands around it") {
    struct Row {
        const char* item;
        const char* term;
        const char* kind;
    };
    const Row rows[] = {
        {"A degree, finished or nearly so, in horticulture or agronomy", "agronomy",
         "field of study"},
        {"Courses in biology with two years in a laboratory", "biology", "field of study"},
        {"A bachelor's degree in English or communication", "English", "field of study"},
        {"Fluent English", "English", "language"},
        {"XYZ designation", "XYZ", "credential"},
        {"Avalanche Level 1", "Avalanche Level 1", "credential"},
        {"MD-102", "MD-102", "credential"},
        {"A county flagging card", "county flagging card", "credential"},
        {"A term of a surveying or geomatics program", "surveying", "field of study"},
        {"Fundamentals of Surveying exam", "Fundamentals of Surveying exam", "credential"},
        {"Resourcefulness", "Resourcefulness", "soft skill"},
        {"Air readiness", "Air readiness", "hard skill"},
    };
    for (const Row& row : rows) {
        INFO(std::string(row.item));
        const Posting posting =
            posting_of("Requirements:\n- Rigging\n- " + std::string(row.item) + "\n");
        const Term* term = term_of(posting, row.term);
        REQUIRE(term != nullptr);
        CHECK(name_of(term->kind) == row.kind);
    }
}

TEST_CASE("postings: the line that names the job is its title, which asks for no such person") {
    const Posting posting =
        posting_of("Harbor School\n\nJob title: Marine Electrician, Diesel Systems\n"
                   "Requirements:\n- Knots\n");
    CHECK(term_of(posting, "Marine Electrician") == nullptr);
    const Term* term = term_of(posting, "Diesel Systems");
    if (term == nullptr) term = term_of(posting, "Diesel");
    REQUIRE(term != nullptr);
    CHECK(term->standing == Standing::elsewhere);
}

TEST_CASE("postings: what stands around a phrase is looked for no farther than it can be") {
    std::string names;
    for (int i = 0; i < 60000; ++i)
        names += "Aa/";
    CHECK(posting_of("Requirements: " + names + ".\n").terms.size() < 10);
}

TEST_CASE("postings: of a sentence without an end each term quotes what stands around it") {
    std::string text = "Requirements:\n\n- Experience with ";
    for (int i = 0; i < 400; ++i)
        text += "gel" + std::string(1, static_cast<char>('a' + i % 26)) +
                std::string(1, static_cast<char>('a' + i / 26)) + " crème, ";
    const Posting posting = posting_of(text + "titration\n");
    REQUIRE(posting.terms.size() > 100);
    constexpr std::size_t longest = 600;
    for (const Term& term : posting.terms) {
        CHECK(term.sentence.size() <= longest);
        CHECK(term.sentence.find(term.words) != std::string::npos);
    }
}
