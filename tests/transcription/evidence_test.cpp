// What words tell: common practice, a word or a phrase a line.
#include "compiler/transcription/evidence.hpp"

#include "compiler/transcription/list_marks.hpp"

#include <doctest/doctest.h>

#include <string>

namespace quoin::transcription {

TEST_CASE("what somebody does, and for whom") {
    for (const char* role :
         {"Field Survey Intern", "Assistant to the Director", "Director of Admissions",
          "Laboratory Teaching Assistant, BIO 211", "Library Assistant", "Volunteer Beach Surveyor",
          "Student Nurse, Medical-Surgical", "Head Cashier", "Deckhand / Able Seaman", "Co-Captain",
          "Tutor (part-time)", "Resident Adviser - Heron Hall", "Drafter II"}) {
        CAPTURE(role);
        CHECK(leans_to_role(role) > 1.5);
    }
    for (const char* org :
         {"Salish Tidal Trust", "Harborside Reading Partners", "Cape Morrow Women's Clinic",
          "Ellery State College Writing Center", "Lantern Street Coffee", "Skerry Summer Players",
          "Office of Student Life", "Port Ellery Free Clinic", "Kelder Mill Hardware",
          "Robotics Club", "Bright Cove Family Dentistry", "Tolliver & Sund Architects"}) {
        CAPTURE(org);
        CHECK(leans_to_role(org) < -1.5);
    }
    CHECK(leans_to_role("") == 0);
    CHECK(leans_to_role("Tidepool") == 0);
    // written as in a sentence, a business is what somebody did
    CHECK(leans_to_role("Lawn mowing business") > leans_to_role("Lawn Mowing Business"));
}

TEST_CASE("schools, degrees, credentials") {
    CHECK(names_school("Ellery State College"));
    CHECK(names_school("Saltmarsh Point H.S."));
    CHECK_FALSE(names_school("Salish Tidal Trust"));
    for (const char* degree : {"B.S. Marine Biology", "AAS-T, Software Development", "GED",
                               "Bachelor of Arts", "Associate in Science", "High School Diploma"}) {
        CAPTURE(degree);
        CHECK(names_degree(degree));
    }
    CHECK_FALSE(names_degree("Ellery State College"));
    CHECK(names_credential("Food Handler's Card"));
    CHECK_FALSE(names_credential("Tide Prize"));
}

TEST_CASE("places at the end of a line") {
    KnownTowns towns;
    towns.learn("1210 Drift Road, Port Ansel, WA 98399");
    towns.learn("Gullhaven WA");
    struct Case {
        const char *text, *place;
    };
    for (const Case& one : {Case{"Marrow Bay College, Port Ansel, WA", "Port Ansel, WA"},
                            {"Ferry Lines, Gullhaven", "Gullhaven"},
                            {"Port Ansel WA 98399", "Port Ansel WA 98399"},
                            {"Akademia Wawelska, Kraków, Poland", "Kraków, Poland"},
                            {"Tide Notes, Remote", "Remote"},
                            {"Inlet Press, Port Ansel, WA (remote)", "Port Ansel, WA (remote)"},
                            {"Tide Notes (remote)", ""},
                            {"Brannock", ""},
                            {"Dory & Finch, Accountants", ""},
                            {"Ellery State College, WA", ""}}) {
        const std::string text = one.text;
        CAPTURE(text);
        CHECK(text.substr(text.size() - towns.place_at_end(text)) == one.place);
    }
}

TEST_CASE("signs that items begin with") {
    for (const char* sign :
         {"•", "-", "–", "*", "➤", "▪", "\uF0B7", "o", "1.", "(a)", "»", "✓", "->"}) {
        CAPTURE(sign);
        CHECK(is_list_mark(sign));
    }
    for (const char* word : {"a", "2026", "R", "Ø", "C++", "1998.", "I"}) {
        CAPTURE(word);
        CHECK_FALSE(is_list_mark(word));
    }
}

}
