// Cases of checks, as in proof_checks_test.cpp, one at least for each list of words that no labelled
// page needs: without the list, its case fails.
#pragma once

#include "tests/advice/proofread.hpp"

namespace quoin::fixtures {

// clang-format off
inline const CheckCase list_cases[] = {
    // once_gained
    {"tense", "- Maintain 12 tanks", "- Saved 12 hours a week with a shared log\n- Maintain 12 tanks", ""},
    {"tense", "- Maintain 12 tanks", "- Cleaned 14 rooms a day\n- Maintain 12 tanks", "'Cleaned'"},
    // attending
    {"member-only", "section: Skills", "activity: Kayak Club\nrole: Member\ndates: Jan 2025 - Dec 2025\n- Attended weekly meetings\n\nsection: Skills", "'Member' is all that is said"},
    // common_words
    {"relevance-order", "role: Field Survey Intern", "role: Working Student\nemployer: Lantern Coffee\nplace: Astoria, OR\ndates: Jul 2026 - present\n- Served 90 guests an hour\n- Sold 40 cakes a day\n\nrole: Field Methods Marine Ecology Intern", "'Additional Experience'"},
    // gives, own_gifts, of_the_employer
    {"objective-wants", "section: Education", "section: Objective\n\ntext: Seeking a position where I can grow, bringing care in diving.\n\nsection: Education", ""},
    {"objective-wants", "section: Education", "section: Objective\n\ntext: Seeking field work in line with my skills.\n\nsection: Education", ""},
    {"objective-wants", "section: Education", "section: Objective\n\ntext: Seeking field work in line with my classes.\n\nsection: Education", "'my classes'"},
    {"objective-wants", "section: Education", "section: Objective\n\ntext: Seeking a position that allows me to dive.\n\nsection: Education", "'allows me'"},
    // of_scores, kinds_of_things
    {"impossible-figure", "- Won second prize", "- Led 2 crews to 21-14 wins\n- Won second prize", ""},
    {"impossible-figure", "- Won second prize", "- Seated 40-30 guests\n- Won second prize", "'40-30'"},
    {"impossible-figure", "- Won second prize", "- Sorted 40 of 12 kinds of shells\n- Won second prize", ""},
    {"impossible-figure", "- Won second prize", "- Brought 17 of 15 children to the benchmark\n- Won second prize", "'17 of 15"},
    {"impossible-figure", "- Won second prize", "- Brought 12 of 15 children to the benchmark\n- Won second prize", ""},
    {"impossible-figure", "- Won second prize", "- Worked 44 of 41 nights\n- Won second prize", "'44 of 41"},
    // words_of_any_school, tracking
    {"school-email", "ottoline.brandt@ellerystate.example", "ottoline.brandt@college.example", "not your school's"},
    {"link-form", "link: ottolinebrandt.example", "link: ottolinebrandt.example/a?fbclid=4", "only track who sent it"},
    {"link-form", "link: ottolinebrandt.example", "link: ottolinebrandt.example/a?page=4", ""},
    // asked_about_one, in_care
    {"another-person", "- Run rescue", "- Contact (360) 555-0177 with questions\n- Run rescue", "'(360) 555-0177' is not yours"},
    {"confidences", "- Rebuilt algae", "- Wrote to client Ilse Varga about feed\n- Rebuilt algae", "in your care"},
};
// clang-format on

}
