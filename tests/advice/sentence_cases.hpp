// Cases of checks, as in proof_checks_test.cpp: of sentences and their signs, names, pastimes, and
// what contradicts itself.
#pragma once

#include "tests/advice/proofread.hpp"

namespace quoin::fixtures {

// clang-format off
inline const CheckCase sentence_cases[] = {
    // sentences
    {"run-on", "- Won second prize", "- Wrote 12 notes, they go to the officer\n- Won second prize", "'notes, they go' begins a second sentence"},
    {"run-on", "- Won second prize", "- Cleaned 9 tanks this kept fish well\n- Won second prize", "'tanks this kept'"},
    {"run-on", "- Won second prize", "- Raised 40 goats, which were sold in May\n- Won second prize", ""},
    {"run-on", "- Won second prize", "- When a pump failed, they called for repair\n- Won second prize", ""},
    {"run-on", "- Won second prize", "- Cleaned 9 tanks this fall, logged 40 readings, all of it by hand\n- Won second prize", ""},
    {"run-on", "- Won second prize", "- Sold 40 boats, that was a record\n- Won second prize", "'boats, that was'"},
    {"punctuation", "- Won second prize", "- Drew a diagram, and, labeled it\n- Won second prize", "closes nothing"},
    {"punctuation", "- Won second prize", "- Drew a diagram and, with 2 others, labeled it\n- Won second prize", ""},
    {"punctuation", "- Won second prize", "- Sorted eels,crabs and clams\n- Won second prize", "no space"},
    {"punctuation", "- Won second prize", "- Sorted eels (adults and clams\n- Won second prize", "its other half"},
    {"punctuation", "- Won second prize", "- Sorted a) eels and b) 1,000 clams (adults)\n- Won second prize", ""},
    {"punctuation", "- Won second prize", "- Sorted eels.. and clams\n- Won second prize", "stands twice"},
    {"loud", "- Won second prize", "- Sold 40 tickets!\n- Won second prize", "exclamation mark"},
    {"loud", "- Won second prize", "- Sold 40 tickets :)\n- Won second prize", "smiley"},
    {"loud", "- Won second prize", "- SOLD TICKETS TO GUESTS\n- Won second prize", "all in capitals"},
    {"loud", "- Won second prize", "- Lit /Ahoy!/ for 9 nights with ETC and DMX\n- Won second prize", ""},
    {"slang", "- Won second prize", "- Sold tons of seeds\n- Won second prize", "'tons of'"},
    {"slang", "- Won second prize", "- Hauled 40 tons of steel\n- Stuff 400 envelopes\n- Won second prize", ""},
    {"proper-names", "place: Port Ellery, WA", "place: port Ellery, WA", "'port' is a name"},
    {"proper-names", "place: Port Ellery, WA", "place: remote", ""},
    {"proper-names", "- Won second prize", "- Taught english to 14 newcomers\n- Won second prize", "'english' is a name"},
    {"proper-names", "- Won second prize", "- Marched and polished in turkey red\n- Won second prize", ""},
    {"idle-pastimes", "section: Projects", "section: Interests\n\ntext: Watching movies, kayaking\n\nsection: Projects", "'Watching movies' is rest"},
    {"idle-pastimes", "section: Projects", "section: Interests\n\ntext: Bird watching, bread baking\n\nsection: Projects", ""},
    {"abbreviations", "- Won second prize", "- Performed PMCS on TMDE IAW local rules\n- Won second prize", "'PMCS', 'TMDE' and 'IAW'"},
    {"abbreviations", "- Won second prize", "- Programmed PLC panels to NFPA and OSHA rules in HMI\n- Won second prize", ""},
    // skills, courses, figures, persons
    {"skill-graded", "Data: R, regression", "Data: R (85%), regression", "grades a skill"},
    {"skill-graded", "Data: R, regression", "Data: R (3 years), regression", ""},
    {"course-twice", "courses: Benthic Ecology;", "courses: Benthic Ecology; Benthic Ecology;", "listed twice"},
    {"course-twice", "courses: Benthic Ecology;", "courses: Benthic Ecology; Benthic Ecology Lab;", ""},
    {"language-level", "Portuguese (professional)", "Portuguese (fluent; basic level)", "exclude each other"},
    {"language-level", "Portuguese (professional)", "Portuguese (fluent speaking, basic writing)", ""},
    {"degree-name", "Bachelor of Science in Marine Biology", "BS Marine Biology", "the usual form is 'BS in Marine Biology'"},
    {"degree-name", "Bachelor of Science in Marine Biology", "B.S., Marine Biology", ""},
    {"impossible-figure", "at 9 sites", "of 45 children, including 19 from Ellery and 31 from Port Ellery", "more than the whole"},
    {"impossible-figure", "at 9 sites", "of 45 children, including 19 toddlers, for 60 guests", ""},
    {"impossible-figure", "cutting entry time 18% with", "cutting entry from 4 hours to 12 minutes, a drop of 30%, with", "does not come to the change"},
    {"impossible-figure", "cutting entry time 18% with", "cutting entry from 4 hours to 12 minutes, a drop of 95%, with", ""},
    {"impossible-figure", "cutting entry time 18% with", "doubling members from 40 to 60 with", "does not come to the change"},
    {"impossible-figure", "at 9 sites", "for 20 weeks", "longer than the dates"},
    {"impossible-figure", "at 9 sites", "for 12 weeks", ""},
    {"confidences", "- Rebuilt algae", "- Watched Tommy and Lila Pruett, ages 4 and 6\n- Rebuilt algae", "'Pruett' names a person"},
    {"confidences", "- Rebuilt algae", "- Cared for Mrs. Edith Lowell\n- Rebuilt algae", "in your care"},
    {"confidences", "- Rebuilt algae", "- Tutored Jaylen, a fourth grader\n- Rebuilt algae", "in your care"},
    {"confidences", "- Rebuilt algae", "- Coached Ellery Gulls, a team of 14, ages 8 to 12\n- Rebuilt algae", ""},
    {"agreement", "section: Projects", "section: Honors\n\naward: Deans List\ndates: Fall 2025\n\nsection: Projects", "write 'Dean's List'"},
    {"tense", "- Run rescue drills", "- Lead 3 exam reviews last spring\n- Run rescue drills", "'last spring' is past"},
    {"tense", "- Run rescue drills", "- Compare figures with last spring\n- Run rescue drills", ""},
    {"personal-details", "section: Education", "section: Summary\n\ntext: Single mother and student of eelgrass.\n\nsection: Education", "your family"},
    {"personal-details", "section: Education", "section: Summary\n\ntext: Legally blind diver with 2 years of survey work.\n\nsection: Education", "your health"},
    {"personal-details", "section: Education", "section: Summary\n\ntext: Nationality: Canadian.\n\nsection: Education", "your nationality"},
    {"personal-details", "section: Education", "section: Summary\n\ntext: Working diver with 2 years of survey work.\n\nsection: Education", ""},
};
// clang-format on

}
