// Cases of checks, as in proof_checks_test.cpp: of what is told in two places of a page, each time
// otherwise. Which of the two an adviser would ask about is common practice.
#pragma once

#include "tests/advice/proofread.hpp"

namespace quoin::fixtures {

// clang-format off
inline const CheckCase contradiction_cases[] = {
    // a figure of the summary and of a bullet
    {"figures-differ", "section: Education", "section: Summary\n\ntext: Biologist with 24 volunteers trained in field mapping.\n\nsection: Education", "'24' stands here, and '4' in line"},
    {"figures-differ", "section: Education", "section: Summary\n\ntext: Biologist with 4 volunteers trained in field mapping.\n\nsection: Education", ""},
    {"figures-differ", "section: Education", "section: Summary\n\ntext: Has trained 24 volunteers across two jobs.\n\nsection: Education", ""},
    {"figures-differ", "section: Education", "section: Summary\n\ntext: Has counted 300 plots and trained 24 volunteers.\n\nsection: Education", "'24' stands here, and '4' in line"},
    {"figures-differ", "section: Education", "section: Summary\n\ntext: Careful with 300 plots.\n\nsection: Education", ""},
    {"figures-differ", "- Trained 4 volunteers in GPS and mapping, raising", "- Logged 2,600 of 6,000 training hours, raising", ""},
    // the degree
    {"figures-differ", "Marine biology student", "Chemistry student", "'Chemistry' stands here, and 'Bachelor of Science in Marine Biology' in line"},
    {"figures-differ", "Marine biology student", "Zoology student", ""},
    {"figures-differ", "Marine biology student", "Statistics student", ""}, // the minor
    {"figures-differ", "degree: Bachelor of Science in Marine Biology", "degree: Bachelor of Science in Natural Resources", ""},
    {"figures-differ", "Marine biology student", "Former chemistry student", ""},
    {"figures-differ", "Marine biology student", "Diver and chemistry student teacher", ""},
    {"figures-differ", "Marine biology student, field survey", "Marine biology student graduating June 2027, field survey", "'June 2027' stands here, and 'May 2027 (expected)' in line"},
    {"figures-differ", "Marine biology student, field survey", "Marine biology student, class of 2028, field survey", "'2028' stands here"},
    {"figures-differ", "Marine biology student, field survey", "Marine biology student graduating in May 2027, field survey", ""},
    {"figures-differ", "Marine biology student, field survey", "Marine biology student, class of 2027, field survey", ""},
    {"figures-differ", "Marine biology student", "Marine biology sophomore", "'sophomore' stands here"},
    {"figures-differ", "Marine biology student", "Marine biology senior", ""},
    {"figures-differ", "Marine biology student", "Companion of senior divers", ""},
    // the span of an entry
    {"dates-contradicted", "dates: Jun 2026 - Aug 2026\n- Counted", "dates: Jun 2025 - Aug 2026\n- Counted 2 bays in a 10-week summer internship\n- Counted", "these dates hold 15 months, and '10-week summer internship'"},
    {"dates-contradicted", "dates: Jun 2026 - Aug 2026\n- Counted", "dates: Jun 2026 - Aug 2026\n- Counted 2 bays in a 10-week summer internship\n- Counted", ""},
    {"dates-contradicted", "dates: Jan 2026 - May 2026\n- Scored", "dates: Jan 2015 - May 2026\n- Scored", "'course: Marine Ecology Capstone' in line"},
    {"dates-contradicted", "dates: Jan 2026 - May 2026\n- Scored", "dates: Aug 2025 - May 2026\n- Scored", ""},
    {"dates-contradicted", "dates: Jun 2026 - Aug 2026\n- Counted", "dates: Jun 2025 - Aug 2026\n- Counted", "'Field Survey Intern' is a summer's work"},
    {"dates-contradicted", "dates: Jun 2026 - Aug 2026\n- Counted", "dates: Sep 2025 - Aug 2026\n- Counted", ""},
    {"dates-contradicted", "role: Hatchery Technician\nemployer: Cape Morrow Shellfish\nplace: Astoria, OR\ndates: Jun 2025 - Aug 2025", "role: Summer Hatchery Technician\nemployer: Cape Morrow Shellfish\nplace: Astoria, OR\ndates: Jun 2025 - present", "'Summer Hatchery Technician' is a summer's work"},
    {"dates-contradicted", "role: Hatchery Technician\nemployer: Cape Morrow Shellfish\nplace: Astoria, OR\ndates: Jun 2025 - Aug 2025", "role: Summer Hatchery Technician\nemployer: Cape Morrow Shellfish\nplace: Astoria, OR\ndates: Summer 2024, Summer 2025", ""},
    // the months of an entry
    {"dates-contradicted", "with no reading missed", "with no reading missed since January 2025", "'since January 2025' is before this work began, in Sep 2025"},
    {"dates-contradicted", "with no reading missed", "with no reading missed since October 2025", ""},
    {"dates-contradicted", "with no reading missed", "with the fewest readings missed since January 2025", ""},
    {"dates-contradicted", "with no reading missed", "of a series kept since January 1998", ""},
    {"dates-contradicted", "in 2 permit reviews", "in 2 permit reviews in March 2025", "is before this work began, in Jun 2026"},
    {"dates-contradicted", "failed batches from 5 a month to 1", "failed batches from 5 a month to 1 in May 2026", "is after this work ended, in Aug 2025"},
    {"dates-contradicted", "failed batches from 5 a month to 1", "failed batches from 5 a month to 1 in September 2025", ""},
    {"end-before-start", "section: Skills", "section: Certifications\n\ncredential: Wilderness First Aid\nissuer: Port Ellery Fire Training Center\ndates: May 2026\nexpires: May 2024\n\nsection: Skills", "before it starts in May 2026"},
    {"end-before-start", "section: Skills", "section: Certifications\n\ncredential: Wilderness First Aid\nissuer: Port Ellery Fire Training Center\ndates: May 2026\nexpires: May 2028\n\nsection: Skills", ""},
    // figures of one bullet
    {"impossible-figure", "- Won second prize", "- Counted 360 plates, 20 from each of 16 sites\n- Won second prize", "'360 plates, 20 from each of 16' does not add up"},
    {"impossible-figure", "- Won second prize", "- Counted 320 plates, 20 from each of 16 sites\n- Won second prize", ""},
    {"impossible-figure", "- Won second prize", "- Ran 30 assays a week for 20 weeks, 500 in all\n- Won second prize", "does not add up"},
    {"impossible-figure", "- Won second prize", "- Ran 30 assays a week for 20 weeks, 600 in all\n- Won second prize", ""},
    {"impossible-figure", "- Won second prize", "- Cut waste by half, from 10 pounds to 8 a day\n- Won second prize", "does not come to the change"},
    {"impossible-figure", "- Won second prize", "- Cut waste by half, from 16 pounds to 8 a day\n- Won second prize", ""},
    {"impossible-figure", "- Won second prize", "- Tutored 6 students a week, all 8 of whom passed\n- Won second prize", "is more than the whole"},
    {"impossible-figure", "- Won second prize", "- Tutored 8 students a week, all 8 of whom passed\n- Won second prize", ""},
    {"impossible-figure", "- Won second prize", "- Visit clients in 4 counties: Skerry, Tolmie, and Marrow\n- Won second prize", "'4 counties: Skerry, Tolmie, and Marrow' names another number"},
    {"impossible-figure", "- Won second prize", "- Visit clients in 3 counties: Skerry, Tolmie, and Marrow\n- Won second prize", ""},
    {"impossible-figure", "- Won second prize", "- Visit clients in 4 counties: Skerry and Pell, Tolmie, and Marrow\n- Won second prize", ""},
    {"impossible-figure", "- Won second prize", "- Managed 12 performances across 3 weekends, with 5 shows each weekend\n- Won second prize", "does not add up"},
    {"impossible-figure", "- Won second prize", "- Managed 15 performances across 3 weekends, with 5 shows each weekend\n- Won second prize", ""},
    {"impossible-figure", "- Won second prize", "- Packed 240 boxes across 3 weekends, with 5 friends each weekend\n- Won second prize", ""},
    // a step up, and an award
    {"dates-contradicted", "place: Astoria, OR\ndates: Jun 2025 - Aug 2025", "place: Astoria, OR\ndates: Jun 2025 - Aug 2025\n- Sorted 40 bags of seed\nrole: Technician\ndates: Jun 2024 - Aug 2024", ""},
    {"dates-contradicted", "role: Hatchery Technician\nemployer: Cape Morrow Shellfish\nplace: Astoria, OR\ndates: Jun 2025 - Aug 2025", "role: Senior Hatchery Technician\nemployer: Cape Morrow Shellfish\nplace: Astoria, OR\ndates: Jan 2025 - Aug 2025\n- Sorted 40 bags of seed\nrole: Hatchery Technician\ndates: Jun 2024 - May 2025", "this position ends after 'Senior Hatchery Technician' began, in Jan 2025"},
    {"dates-contradicted", "section: Skills", "section: Honors\n\naward: Employee of the Month\nby: Cape Morrow Shellfish\ndates: Jan 2025\n\nsection: Skills", "'Employee of the Month' is before this work began, in Jun 2025"},
    {"dates-contradicted", "section: Skills", "section: Honors\n\naward: Employee of the Month\nby: Cape Morrow Shellfish\ndates: Jul 2025\n\nsection: Skills", ""},
    // names
    {"proper-names", "planners cited maps in 2 permit reviews", "Ellery State Benthic Ecology Laboratories cited maps in 2 reviews", ""},
    {"proper-names", "employer: Salish Tidal Trust", "employer: Hollis Bay Seafoods\n- Brought 40 tons of ice to Hollis Bay Seafood", "'Hollis Bay Seafood' stands here"},
    {"proper-names", "employer: Salish Tidal Trust", "employer: Hollis Bay Seafoods\n- Brought 40 tons of ice to Hollis Bay Seafoods", ""},
    {"years-claimed", "Marine biology student", "Student with 5 years of GPS work and 7 years of Army logistics", "'5 years' are claimed"},
    // others of one kind
    {"email-tone", "ottoline.brandt@ellerystate.example", "bigottoline99@mail.example", "'big'"},
    {"leaving-reason", "- Won second prize", "- Left position when lab was sold to larger group\n- Won second prize", "'Left position when"},
    {"word-slip", "- Won second prize", "- Sequenced principle and secondary diagnoses on 90 charts\n- Won second prize", "'principle' is a slip"},
    {"action-verb", "- Won second prize", "- Licensed font to maritime museum for 9 panels\n- Won second prize", ""},
    {"passive", "- Won second prize", "- Expired chemicals were sorted into 9 waste streams\n- Won second prize", "'were sorted'"},
    {"spelling-region", "- Won second prize", "- Kept a colour-coded call sheet of 40 labeled rows\n- Won second prize", "'colour-coded'"},
    {"agreement", "- Won second prize", "- Organize winter walk among 14 shops that draws 2,300 visitors\n- Won second prize", ""},
    {"empty-phrases", "- Won second prize", "- Cut turnover from 110% to 45% a year\n- Won second prize", ""},
    {"word-slip", "- Won second prize", "- Wrote 150 personal and 140 commercial policies\n- Won second prize", ""},
    {"tense", "- Won second prize", "- Covered county council, ferry cuts, and wildfire smoke in 27 stories\n- Won second prize", ""},
    {"tense", "- Won second prize", "- Loaded 9 trailers a shift with sit-down and reach trucks\n- Won second prize", ""},
    {"spelling", "employer: Cape Morrow Shellfish", "employer: Cape Morrow Symphany", "'Symphany' is a slip that is often made; write 'Symphony'"},
    {"spelling", "- Won second prize", "- Won Saftey Star among 31 posters\n- Won second prize", "write 'Safety'"},
    {"spelling", "employer: Cape Morrow Shellfish", "employer: Cape Morrow Sargent Boats", ""},
    {"word-slip", "- Won second prize", "- Showed that scars effected worm density at 3 stations\n- Won second prize", "'effected' is a slip"},
    {"word-slip", "- Won second prize", "- Effected repairs on 12 pumps\n- Won second prize", ""},
    {"word-slip", "- Won second prize", "- Posted principle and interest payments on 400 loans\n- Won second prize", "'principle' is a slip"},
    {"word-slip", "- Won second prize", "- Pressure-tested copper pipe for leeks\n- Won second prize", "'leeks' is a slip"},
    {"word-slip", "- Won second prize", "- Trained 4 hires so that the site looses fewer racks\n- Won second prize", "'looses' is a slip"},
    {"figures-differ", "course: Marine Ecology Capstone", "course: Marine Ecology Capstone\nwith: team of 4\n- Led team of 6 through 40 dives", "'6' stands here, and '4' in line"},
    {"figures-differ", "course: Marine Ecology Capstone", "course: Marine Ecology Capstone\nwith: team of 4\n- Led team of 4 through 40 dives", ""},
    {"figures-differ", "section: Education", "section: Summary\n\ntext: Cut tile season from 9 weeks to 4 and trained divers.\n\nsection: Education", "'4' stands here, and '6' in line"},
    {"figures-differ", "section: Education", "section: Summary\n\ntext: Cut tile season from 9 weeks to 6 and trained divers.\n\nsection: Education", ""},
    {"figures-differ", "section: Education", "section: Summary\n\ntext: Counted eelgrass from 2021 to 2024.\n\nsection: Education", ""},
    {"figures-differ", "section: Education", "section: Summary\n\ntext: Cut eelgrass orders from 9 to 4.\n\nsection: Education", ""},
    {"figures-differ", "degree: Bachelor of Science in Marine Biology\nminor: Statistics", "degree: Bachelor of Science in Marketing", "'Marine biology' stands here"},
    {"impossible-figure", "in 2 permit reviews", "in 2 permit reviews\n- Phoned 2,100 households over 6 months", "is longer than the dates of the entry"},
    {"salary", "- Won second prize", "- Rang up 130 sales a day at $17.25 an hour\n- Won second prize", "'$17.25 an hour'"},
    {"salary", "- Won second prize", "- Hired 4 aides at $18 an hour\n- Won second prize", ""},
    {"salary", "- Won second prize", "- Sold boats at $400 an hour\n- Won second prize", ""},
    {"word-slip", "- Won second prize", "- Weighted results to county totals for 9 surveys\n- Won second prize", ""},
    {"word-slip", "- Won second prize", "- Returned 60 calls a day from patience and prescribers\n- Won second prize", "'patience' is a slip"},
    {"word-slip", "- Won second prize", "- Changed 5 stamping dyes a shift on a press\n- Won second prize", "'dyes' is a slip"},
    {"word-slip", "- Won second prize", "- Reviewed 20 files for initials before principle broker signed\n- Won second prize", "'principle' is a slip"},
    {"spelling", "- Won second prize", "- Made 6 stocks, sauces, and vinegrettes\n- Won second prize", "'vinaigrettes'"},
    {"spelling", "role: Hatchery Technician", "role: Hatchery Technican", "'Technican' is not in the dictionary"},
    {"spelling", "role: Hatchery Technician", "role: Technican", "'Technican' is not in the dictionary"},
    {"tense", "- Maintain 12 tanks", "- Run 30-minute reading group twice a day; 8 of 10 readers gained level last year\n- Maintain 12 tanks", ""},
    {"tense", "- Maintain 12 tanks", "- Care for 5 clients a week, aged 68 to 97, by van\n- Maintain 12 tanks", ""},
};
// clang-format on

}
