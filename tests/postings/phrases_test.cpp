// Candidate terms of a sentence, RAKE's scores, and acronyms.
#include "compiler/postings/acronyms.hpp"
#include "compiler/postings/phrases.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <vector>

using namespace quoin::postings;

namespace {

std::string phrases(const std::string& sentence, Opens opens = Opens::with_deed) {
    std::string text;
    for (const Phrase& phrase : phrases_in(sentence, opens))
        text += (text.empty() ? "" : " | ") + phrase.words;
    return text;
}

}

TEST_CASE("postings: noun groups") {
    struct Row {
        const char* sentence;
        const char* found;
    };
    const Row rows[] = {
        {"Operate forklifts and pallet jacks", "forklifts | pallet jacks"},
        {"Strong written communication", "written communication"},
        {"Experience with C++, C# or Python", "C++ | C# | Python"},
        {"Write unit tests and integration tests as you go", "unit tests | integration tests"},
        {"R or Python", "R | Python"},
        {"Care for adult patients recovering from surgery",
         "Care for adult patients | adult patients | surgery"},
        {"Keep donor records clean", "donor records"},
        {"The coordinator recruits, welcomes and schedules volunteers", "coordinator | volunteers"},
        {"Assists with vault balancing", "vault balancing"},
        {"Two years of professional experience in rigging", "rigging"},
        {"The position reports to the director", "director"},
        {"Work with accuracy in spite of interruptions", "accuracy | interruptions"},
        {"Knows insurance billing", "insurance billing"},
        {"The port will train the right candidate", "port"},
        {"Review permit applications", "Review | permit applications"},
        {"Mental Health First Aid", "Mental Health First Aid"},
        {"First Aid and CPR/BLS", "First Aid | CPR | BLS"},
        {"Leave No Trace training", "Leave No Trace"},
        {"Attention to detail", "Attention to detail"},
        {"A valid driver's license", "driver's license"},
        {"Two years of college", "college"},
        {"OSHA 10 card", "OSHA 10"},
        {"Transfer residents with a gait belt", "transfer residents | gait belt"},
        {"You hold Avalanche Level 1 and a Part 107 card", "Avalanche Level 1 | Part 107"},
        {"An Airframe & Powerplant rating", "Airframe | Airframe & Powerplant | Powerplant rating"},
        {"Follow lockout/tagout every time", "lockout | lockout/tagout | tagout"},
        {"sled handling down anything", "sled | sled handling"},
        {"three-quarter time, three-phase motors", "three-phase motors"},
        {"Two years mixing live sound", "mixing live sound"},
        {"You'll report on Mondays at 8 a.m.", ""},
        {"Write to jobs@employer.example", ""},
        {"Build features in our TypeScript and React dispatch board",
         "features | TypeScript | React dispatch board | React"},
        {"Laying out and milling solid stock, breaking down sheet goods",
         "milling | stock | sheet goods"},
        {"Handling claims and retiring Windows 11 laptops",
         "claims | Windows 11 laptops | Windows 11"},
        {"Writes conduct reports", "conduct reports"},
        {"Chase orders, and instruct patients", "chase orders | instruct | instruct patients"},
        {"You can sharpen them, and troubleshoot", "sharpen | troubleshoot"},
        {"You participate in talks", "talks"},
        {"Outlook, Word, Access and Teams", "Outlook | Word | Access | Teams"},
        {"CST Level I and ITIL 4 Foundation", "CST Level I | ITIL 4 Foundation"},
        {"Interpreters receive consideration", "Interpreters | consideration"},
        {"Swears witnesses, records minutes", "witnesses | records minutes"},
        {"Knowledge of Housing First, harm reduction", "Housing First | harm reduction"},
        {"The shop opened in Summer 2026", "shop | Summer"},
        {"Experience with students with disabilities", "students with disabilities | disabilities"},
        {"Be kind to visitors with questions", "kind | visitors"},
        {"Two years working with children", "working with children"},
        {"Supervise children indoors and out", "Supervise | supervise children"},
        {"Chain-of-custody urine drug screens",
         "Chain-of-custody urine drug screens | drug screens | Chain-of-custody"},
    };
    for (const Row& row : rows)
        CHECK(phrases(row.sentence) == row.found);
}

TEST_CASE("postings: cards and trades alone are asked for, and done they are not") {
    struct Row {
        const char* sentence;
        const char* asked;
        const char* done;
    };
    const Row rows[] = {
        {"A county flagging card", "county flagging card", "county flagging"},
        {"A diploma or GED", "diploma | GED", "diploma | GED"},
        {"A year of sales", "sales", ""},
        {"Some records", "", ""},
    };
    for (const Row& row : rows) {
        CHECK(phrases(row.sentence, Opens::with_thing) == row.asked);
        CHECK(phrases(row.sentence) == row.done);
    }
}

TEST_CASE("postings: where things are asked for a word that may be a verb is the noun") {
    for (const Phrase& phrase : phrases_in("Fall prevention and patience", Opens::with_thing))
        CHECK((phrase.words == "Fall prevention" || phrase.words == "patience"));
}

TEST_CASE("postings: what a noun of is joined with") {
    CHECK(phrases("keeping chain of custody").find("chain of custody") != std::string::npos);
    CHECK(phrases("a variety of tasks").find("variety") == std::string::npos);
}

TEST_CASE("postings: a field of study stands after its degree") {
    for (const Phrase& phrase : phrases_in("Bachelor's degree in marine biology or chemistry"))
        CHECK(phrase.after_field == (phrase.lower.front() != "bachelor's"));
    for (const Phrase& phrase : phrases_in("Skill in marine biology"))
        CHECK(!phrase.after_field);
}

// Rose, Engel, Cramer and Cowley 2010, chapter 1: the abstract, the stop words and the scores that
// their figures give.
TEST_CASE("postings: RAKE's published scores") {
    const std::string abstract =
        "Compatibility of systems of linear constraints over the set of natural numbers. Criteria "
        "of "
        "compatibility of a system of linear Diophantine equations, strict inequations, and "
        "nonstrict "
        "inequations are considered. Upper bounds for components of a minimal set of solutions and "
        "algorithms of construction of minimal generating sets of solutions for all types of "
        "systems "
        "are given. These criteria and the corresponding algorithms for constructing a minimal "
        "supporting set of solutions can be used in solving all the considered types of systems "
        "and "
        "systems of mixed types.";
    const std::set<std::string> stops{"a",          "all",   "and",  "are",   "be",   "can",
                                      "for",        "in",    "of",   "over",  "the",  "these",
                                      "considered", "given", "used", "types", "mixed"};
    std::vector<std::vector<std::string>> cut(1);
    std::string word;
    for (const char c : abstract + " ") {
        if (std::isalpha(static_cast<unsigned char>(c))) {
            word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
            continue;
        }
        if (!word.empty() && !stops.contains(word)) cut.back().push_back(word);
        if (!word.empty() && stops.contains(word) && !cut.back().empty()) cut.emplace_back();
        word.clear();
        if ((c == '.' || c == ',') && !cut.back().empty()) cut.emplace_back();
    }
    if (cut.back().empty()) cut.pop_back();
    const std::vector<double> scores = rake_scores(cut);
    std::map<std::string, double> by_phrase;
    for (std::size_t i = 0; i < cut.size(); ++i) {
        std::string text;
        for (const std::string& one : cut[i])
            text += (text.empty() ? "" : " ") + one;
        by_phrase[text] = scores[i];
    }
    const std::map<std::string, double> published{{"minimal generating sets", 8.67},
                                                  {"linear diophantine equations", 8.5},
                                                  {"minimal supporting set", 7.67},
                                                  {"minimal set", 4.67},
                                                  {"linear constraints", 4.5},
                                                  {"natural numbers", 4},
                                                  {"strict inequations", 4},
                                                  {"nonstrict inequations", 4},
                                                  {"upper bounds", 4},
                                                  {"corresponding algorithms", 3.5},
                                                  {"set", 2},
                                                  {"algorithms", 1.5}};
    for (const auto& row : published) {
        CAPTURE(row.first);
        CHECK(std::abs(by_phrase[row.first] - row.second) < 0.005);
    }
}

// The first two are examples of Schwartz and Hearst 2003 (from memory); the rest are ours.
TEST_CASE("postings: acronyms and their long forms") {
    struct Row {
        const char* sentence;
        const char* short_form;
        const char* long_form;
    };
    const Row rows[] = {
        {"the Gcn5-related N-acetyltransferase (GNAT) family", "GNAT",
         "Gcn5-related N-acetyltransferase"},
        {"of heat shock transcription factor (HSF)", "HSF", "heat shock transcription factor"},
        {"Current Certified Nursing Assistant (CNA) certificate", "CNA",
         "Certified Nursing Assistant"},
        {"work in GIS (geographic information systems) daily", "GIS",
         "geographic information systems"},
        {"quality assurance and quality control (QA/QC)", "QA/QC",
         "quality assurance and quality control"},
        {"search engine optimization (SEO; paid too)", "SEO", "search engine optimization"},
    };
    for (const Row& row : rows) {
        const auto found = acronyms_in(row.sentence);
        CAPTURE(row.sentence);
        REQUIRE(found.size() == 1);
        CHECK(found[0].short_form == row.short_form);
        CHECK(found[0].long_form == row.long_form);
    }
    for (const char* none :
         {"a crew (of four)", "hours (40)", "Spanish (a plus)", "open (", "(CNA)"})
        CHECK(acronyms_in(none).empty());
}
