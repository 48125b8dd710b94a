// Who is named in a posting is no term of it, wherever the name stands.
#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/postings/posting.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <string_view>

using namespace quoin::postings;

namespace {

Posting posting_with(std::string_view text) {
    static const quoin::english::WordList words(std::string(QUOIN_DATA_FOLDER) +
                                                "/dictionaries/en_US.words");
    return read_posting(text_lines(text), 0, words);
}

bool holds_name(const std::string& term, std::string_view word) {
    const auto pieces = quoin::pieces_of(term, " ");
    return std::ranges::any_of(pieces, [&](std::string_view piece) {
        return piece.starts_with(word) &&
               (piece.size() == word.size() || piece.substr(word.size()) == "'s");
    });
}

struct Fragment {
    std::string_view text;
    std::string_view term;  // that is found in it all the same
    std::string_view names; // words of which none is in a term
};

void check_names(const Fragment& fragment) {
    INFO(std::string(fragment.text));
    const Posting posting = posting_with(fragment.text);
    CHECK(std::ranges::any_of(posting.terms, [&](const Term& term) {
        return quoin::lower_case(term.words).find(fragment.term) != std::string::npos;
    }));
    for (const Term& term : posting.terms)
        for (const std::string_view name : quoin::pieces_of(fragment.names, " ")) {
            INFO(term.words);
            CHECK(!holds_name(term.words, name));
        }
}

}

TEST_CASE("postings: people are no terms, wherever they are named") {
    constexpr Fragment fragments[] = {
        {"Duties\n- Prep vegetables with Marit in the kitchen\n- Knife skills, every day\n"
         "\nQuestions? Call Marit.\n",
         "knife", "Marit"},
        {"Boatyard hand\n\nWhat you'll do\n\nYou'll sand and varnish spars on Tolliver's crew. Ask "
         "for Dana Tolliver.\n",
         "varnish", "Tolliver's Tolliver Dana"},
        {"Requirements\n- Forklift certification\n- A good word from somebody Marge would believe\n"
         "\nHow to apply\n\nQuestions? Call Marge.\n",
         "forklift", "Marge"},
        {"The job\n\nGreta Lindahl, our head baker, starts at 2 a.m. You shape loaves beside "
         "Lindahl "
         "and run the deck oven.\n",
         "deck oven", "Greta Lindahl"},
        {"Responsibilities\n- Reconcile the till with Odalys, who has kept our books since 1998\n"
         "- Accounts payable\n",
         "accounts payable", "Odalys"},
        {"You will report to Ms. Farrow. Farrow's department handles payroll for nine schools, and "
         "you would process timesheets.\n",
         "timesheets", "Farrow Farrow's"},
        {"Qualifications\n- Welding\n- You passed Mr. Gunderson's class, or one like it\n",
         "welding", "Gunderson Gunderson's"},
        {"Dr. Ifeoma Brandvold and Dr. Pell see patients; you clean and sterilize instruments and "
         "take radiographs. Brandvold teaches as she goes.\n",
         "radiographs", "Ifeoma Brandvold Pell"},
        {"Supervisor: Benedicta Farrow, Director of Transportation\n\nDuties\n- Drive the 6 a.m. "
         "route\n- Secure wheelchairs\n- Tell Benedicta about anything that rattles\n",
         "wheelchairs", "Benedicta Farrow"},
        {"WHAT YOU DO\n* Bait longlines\n* Repair nets with Captain Eskil Ravndal\n* Keep the log "
         "Ravndal started\n",
         "nets", "Eskil Ravndal"},
        {"Our director, Solveig Marchetti-Boone, leads circle time herself. You plan art and "
         "supervise nap time, and Solveig looks over your lesson plans.\n",
         "lesson plans", "Solveig Marchetti-Boone"},
        {"About the work\n\nWendell draws, his daughter Isolde runs the finishing room, and you "
         "cut "
         "dovetails and hand them to Isolde.\n",
         "dovetails", "Wendell Isolde"},
        {"Duties:\n- Splice fiber\n- Climb poles\n- Learn from Bartholomew\n\nText Bartholomew at "
         "360-555-0144.\n",
         "fiber", "Bartholomew"},
        {"Day to day\n- First notice of loss, which you hand over to Claudette, our claims person\n"
         "- Renewals\n",
         "renewals", "Claudette"},
        {"Dietary aide\n\nDuties\n\nOur cook is named Pearl and she is everyone's favorite. You "
         "portion meals and wash dishes; "
         "ask Pearl.\n",
         "meals", "Pearl"},
        {"Engineer\n\nThe position\n\nReports to Ansgar Wick. Maintains chillers, boilers and "
         "Ansgar's beloved "
         "pneumatic controls.\n",
         "chillers", "Ansgar Ansgar's"},
        {"Apply to Thessaly Brandreth (thessaly@merrow.example).\n\nRequirements:\n- Proofreading\n"
         "- Surviving one of Thessaly's edits\n",
         "proofreading", "Thessaly Thessaly's Brandreth"},
        {"You'll need:\n- Driver's license\n- Crane signals; Torvald will show you the rest\n",
         "crane signals", "Torvald"},
        {"Hal Sorrel manages the draw stations. You perform venipuncture. Interviews are with Hal "
         "and "
         "Priyanka.\n",
         "venipuncture", "Hal Sorrel Priyanka"},
        {"Contact: Ingunn Ravndal, office manager\n\nDuties: quote auto policies, follow up with "
         "leads, "
         "and keep Ingunn's calendar honest.\n",
         "auto policies", "Ingunn Ingunn's Ravndal"},
        {"Duties\n- Open the shop with Farah at 6\n- Shadow Old Pete on the press\n- Espresso\n",
         "espresso", "Farah Pete"},
        {"Requirements\n- Driver's license (Hedda rides a bicycle)\n- You have met Gus\n",
         "driver's license", "Hedda Gus"},
        {"Duties\n- Answer phones for Drs. Pettibone and Aziz\n- Verify insurance\n", "phones",
         "Pettibone Aziz"},
    };
    for (const Fragment& fragment : fragments)
        check_names(fragment);
}

TEST_CASE("postings: places, streets, boats, buildings and the employer are no terms") {
    constexpr Fragment fragments[] = {
        {"Most of our work is on Tern Island, on Brennan Slough and along the Skerry River. You "
         "set "
         "monuments and run a total station.\n",
         "monuments", "Tern Brennan Slough Skerry"},
        {"Deckhand | Whelk Harbor, WA | seasonal\n\nDuties\n- Splice line\n- Stand watch aboard "
         "the "
         "Merganser\n",
         "line", "Whelk Merganser"},
        {"ABOUT HALYARD\n\nHalyard moves cold freight.\n\nREQUIREMENTS\n- Load planning\n- A clean "
         "record, "
         "at Halyard or elsewhere\n",
         "load planning", "Halyard"},
        {"Duties\n- Mop the gym and Merrow Hall\n- Floor stripping and waxing\n- Unlock the gate "
         "on Kestrel "
         "Street\n",
         "waxing", "Merrow Kestrel"},
        {"You would guide kayaks from Port Ellery to Cold Harbor, teach paddling, and drive the "
         "van to "
         "Pilot Hill.\n",
         "paddling", "Port Ellery Cold Harbor Pilot"},
        {"In the Otter Room you set up art and sensory tables; in the Heron Room you change "
         "diapers.\n",
         "sensory tables", "Otter Heron"},
        {"Duties:\n- Crew the R/V Petrel\n- Water sampling off Cape Sorrow\n- Deploy moorings\n",
         "water sampling", "Petrel Sorrow"},
        {"Come to the Net Loft on Bight Street, Monday through Friday, and ask about bench work. "
         "You'd do "
         "line boring and edge banding.\n",
         "edge banding", "Bight Monday Friday"},
        {"Candle Cove Regional is hiring. Candle Cove runs 412,000 tests a year; you would spin "
         "and aliquot "
         "specimens, and send them from Marrow Bay.\n",
         "specimens", "Candle Marrow"},
        {"Requirements\n- Bookkeeping\n- Experience at a place like Ravndal Agency or Larkmoor "
         "Inn\n"
         "- Apply at ravndal.example by Friday\n",
         "bookkeeping", "Ravndal Larkmoor ravndal.example Friday"},
        {"You order mulch from Brackwater Nursery and deliver it to the Saltgrass Apartments and "
         "to Pilot "
         "Hill.\n",
         "mulch", "Brackwater Saltgrass Pilot"},
    };
    for (const Fragment& fragment : fragments)
        check_names(fragment);
}

TEST_CASE("postings: what is named as people are, and is none, is a term") {
    constexpr Fragment fragments[] = {
        {"Requirements\n- Experience with Salesforce\n- Housing First\n- Arduino or Linux\n",
         "salesforce", ""},
        {"Requirements\n- Alzheimer's disease\n- Rigging\n", "alzheimer's disease", ""},
        {"Harbor Housing teaches its aides. You know Housing First and case notes.\n",
         "housing first", ""},
        {"Duties\n- Program Arduino boards\n- Chart in Dentrix, on Windows 11\n", "dentrix", ""},
    };
    for (const Fragment& fragment : fragments)
        check_names(fragment);
}
