// Every check, made to speak and kept silent: tests/advice/clean.resume with one piece replaced.
// Which of the two an adviser would want is common practice where the reference page names no
// published source.
#include "compiler/advice/walk.hpp"
#include "tests/advice/adviser_lines.hpp"
#include "tests/advice/contradiction_cases.hpp"
#include "tests/advice/judged_lines.hpp"
#include "tests/advice/list_cases.hpp"
#include "tests/advice/proofread.hpp"
#include "tests/advice/sentence_cases.hpp"

#include <algorithm>
#include <set>
#include <utility>

namespace quoin::advice::proof_checks_test {

namespace {

using fixtures::clean_with;
using fixtures::proof_of;
using fixtures::ProofOf;

using Case = fixtures::CheckCase;

// clang-format off
const Case cases[] = {
    // contact
    {"missing-contact", "phone: (360) 555-0142\n", "", "no phone"},
    {"missing-contact", "email: ottoline.brandt@ellerystate.example\n", "", "no email"},
    {"missing-contact", "link: ottolinebrandt.example\n", "", ""},
    {"full-address", "address: Port Ellery, WA", "address: 1420 Spindrift Lane, Port Ellery, WA 98000", "a street and a ZIP code"},
    {"full-address", "address: Port Ellery, WA", "address: St. Agnes Bay, WA", ""},
    {"email-form", "ottoline.brandt@", "ottoline..brandt@", "no address that mail can reach"},
    {"email-form", "ottoline.brandt@", "o'brandt+jobs@", ""},
    {"email-tone", "ottoline.brandt@ellerystate.example", "beachbum42@mail.example", "'beachbum'"},
    {"email-tone", "ottoline.brandt@ellerystate.example", "s4410277@ellerystate.example", ""},
    {"school-email", "ottoline.brandt@ellerystate.example", "ottoline.brandt@mail.example", "not your school's"},
    {"school-email", "ottoline.brandt@ellerystate.example", "obrandt@ellery.example", ""},
    {"phone-form", "(360) 555-0142", "555-0142", "area code is missing"},
    {"phone-form", "(360) 555-0142", "+44 20 7946 0958", ""},
    {"phone-notation", "- Run rescue", "- Answer 40 calls a term at 360-555-0187\n- Run rescue", "another way than '(360) 555-0142'"},
    {"phone-notation", "- Run rescue", "- Answer 40 calls a term at (360) 555-0187\n- Run rescue", ""},
    {"voicemail", "phone: (360) 555-0142", "phone: (360) 555-0143", "has room"},
    {"voicemail", "phone: (360) 555-0142\n", "", ""},
    {"link-form", "link: ottolinebrandt.example", "link: https://www.ottolinebrandt.example", "'https://www.'"},
    {"link-form", "link: ottolinebrandt.example", "link: Portfolio <https://www.ottolinebrandt.example/?utm_source=card>", ""},
    // whose it is
    {"name-forms", "name: Ottoline Brandt", "name: ottoline Brandt", "'ottoline' begins with a small letter"},
    {"name-forms", "name: Ottoline Brandt", "name: Ottoline van der Brandt", ""},
    {"name-forms", "link: ottolinebrandt.example", "link: Portfolio of Otoline Brandt <https://ottolinebrandt.example>", "'Otoline' stands here"},
    {"name-forms", "link: ottolinebrandt.example", "link: Portfolio of O. Brandt <https://ottolinebrandt.example>", ""},
    {"name-forms", "ottoline.brandt@", "otoline.brandt@", "the address has 'otoline'"},
    {"name-forms", "ottoline.brandt@", "obrandt@", ""},
    {"borrowed-contact", "phone: (360) 555-0142", "phone: (360) 555-0142 (mother's cell)", "'mother' says"},
    {"borrowed-contact", "phone: (360) 555-0142", "phone: (360) 555-0142 (cell)", ""},
    {"another-person", "- Run rescue", "- Worked under supervisor Ada Holm, (360) 555-0177\n- Run rescue", "'(360) 555-0177' is not yours"},
    {"another-person", "- Run rescue", "- Answered 40 calls a day at (360) 555-0177\n- Run rescue", ""},
    // claims
    {"years-claimed", "field survey and data skills", "with 6 years of field work", "'6 years' are claimed"},
    {"years-claimed", "field survey and data skills", "with 2 years of field work", ""},
    {"done-ahead", "- Won second prize among 31 posters at spring symposium", "- Won second prize in May 2027", "tells as done"},
    {"done-ahead", "- Won second prize among 31 posters at spring symposium", "- Won a grant for field work in May 2027", ""},
    {"objective-wants", "section: Education", "section: Objective\n\ntext: Seeking a position where I can grow.\n\nsection: Education", "'grow'"},
    {"objective-wants", "section: Education", "section: Objective\n\ntext: Seeking a season of field work, bringing 2 years of survey diving.\n\nsection: Education", ""},
    {"award-year", "section: Projects", "section: Honors\n\naward: Guild Award\n\nsection: Projects", "'Guild Award' has no year"},
    {"award-year", "section: Projects", "section: Honors\n\naward: Guild Award of 2026\n\nsection: Projects", ""},
    {"credential-lapsed", "section: Projects", "section: Certifications\n\ncredential: First Aid\ndates: May 2023\nexpires: May 2025\n\nsection: Projects", "expired in May 2025"},
    {"credential-lapsed", "section: Projects", "section: Certifications\n\ncredential: First Aid\ndates: May 2025\nexpires: May 2027\n\nsection: Projects", ""},
    {"credential-order", "section: Projects", "section: Certifications\n\ncredential: First Aid\ndates: May 2022\n\ncredential: Diver\ndates: May 2026\n\nsection: Projects", "'First Aid' stands above 'Diver'"},
    {"credential-order", "section: Projects", "section: Certifications\n\ncredential: First Aid\ndates: May 2025\n\ncredential: Diver\ndates: May 2026\n\nsection: Projects", ""},
    {"long-ago", "Jun 2025 - Aug 2025", "Jun 2005 - Aug 2007", "ended 19 years ago"},
    {"long-ago", "Jun 2025 - Aug 2025", "Jun 2015 - Aug 2017", ""},
    {"done-ahead", "section: Projects", "section: Honors\n\naward: Guild Award\ndates: May 2027\n\nsection: Projects", "'Guild Award' tells as done"},
    {"done-ahead", "section: Projects", "section: Publications\n\npublication: Eelgrass at Night (accepted)\ndates: May 2027\n\nsection: Projects", ""},
    {"done-ahead", "- Won second prize among 31 posters at spring symposium", "- Presented a poster, Apr 2027", "tells as done"},
    {"years-claimed", "field survey and data skills", "with twelve years of field work", "'twelve years' are claimed"},
    // sections
    {"section-missing", "section: Relevant Experience", "section: Field Experience", ""},
    {"empty-section", "section: Projects", "section: Honors\n\nsection: Projects", "'Honors' holds nothing"},
    {"empty-section", "section: Projects", "section: Honors\n\naward: Guild Award\ndates: Mar 2026\n\nsection: Projects", ""},
    {"section-twice", "section: Projects", "section: relevant experience\nholds: projects", "a second section"},
    {"section-twice", "section: Projects", "section: Field Projects", ""},
    {"section-title", "section: Relevant Experience", "section: Where I Have Been\nholds: experience", "'Experience'"},
    {"section-title", "section: Relevant Experience", "section: Clinical Rotations\nholds: experience", ""},
    {"section-title", "section: Relevant Experience", "section: References\n\nAl Bay: Salish Tidal Trust\n\nsection: Relevant Experience", ""},
    {"section-title", "section: Relevant Experience", "section: Giving Back\nholds: experience", ""},
    {"education-first", "section: Education", "section: Skills\n\nTools: nets\n\nsection: Education", "comes first"},
    {"education-first", "section: Education", "section: Summary\n\ntext: Diver and counter of plants.\n\nsection: Education", ""},
    // education
    {"degree-order", "section: Relevant", "school: Skerry College\ndegree: Master of Science in Biology\ngraduation: May 2029 (expected)\n\nsection: Relevant", "most recent degree first"},
    {"degree-order", "section: Relevant", "school: Skerry College\ndegree: Associate of Science\ngraduation: May 2024\n\nsection: Relevant", ""},
    {"degree-name", "Bachelor of Science", "Bachelor's of Science", "the usual form is 'Bachelor of Science in Marine Biology'"},
    {"degree-name", "Bachelor of Science in Marine Biology", "Semester abroad, Comparative Law", ""},
    {"degree-type", "degree: Bachelor of Science in Marine Biology", "degree: Marine Biology", "which degree"},
    {"degree-type", "degree: Bachelor of Science in Marine Biology", "degree: BS in Biology", ""},
    {"graduation-missing", "graduation: May 2027 (expected)\n", "", "no date of graduation"},
    {"graduation-missing", "graduation: May 2027 (expected)", "dates: Sep 2023 - May 2027", ""},
    {"gpa-form", "gpa: 3.62 / 4.00", "gpa: 3.62", "out of what"},
    {"gpa-form", "gpa: 3.62 / 4.00", "gpa: 36.2 / 4.00", "over its scale"},
    {"gpa-form", "gpa: 3.62 / 4.00", "gpa: 8.7 / 10", ""},
    {"gpa-low", "gpa: 3.62 / 4.00", "gpa: 2.99 / 4.00", "under 3.0"},
    {"gpa-low", "gpa: 3.62 / 4.00", "gpa: 2.4 / 3.0", ""},
    {"gpa-unsaid", "gpa: 3.62 / 4.00\n", "", "3.5 or over"},
    {"gpa-unsaid", "gpa: 3.62 / 4.00\n", "gpa: 3.1 / 4.00\n", ""},
    {"high-school", "section: Relevant", "school: North Jetty High School\ngraduation: Jun 2023\n\nsection: Relevant", "beside a college"},
    {"high-school", "section: Relevant", "school: Skerry Community College\ngraduation: Jun 2023\n\nsection: Relevant", ""},
    {"honors-order", "President's List (2 terms); Dean's List (4 terms)", "Dean's List; President's List", "highest honor"},
    {"honors-order", "President's List (2 terms); Dean's List (4 terms)", "Dean's List; Skerry Prize", ""},
    {"course-count", "courses: Benthic", "courses: A; B; C; D; E; Benthic", "nine courses"},
    {"course-count", "courses: Benthic", "courses: A; B; C; D; Benthic", ""},
    // dates
    {"dates-missing", "dates: Jan 2026 - May 2026\n", "", "has no dates"},
    {"dates-missing", "activity: Ellery State Dive Club\nrole: Safety Officer\nplace: Port Ellery, WA\ndates: Jan 2026 - present", "activity: Ellery State Dive Club", ""},
    {"end-before-start", "Jun 2026 - Aug 2026", "Aug 2026 - Jun 2026", "ends in Jun 2026"},
    {"end-before-start", "Jun 2026 - Aug 2026", "Jun 2026 - 2026", ""},
    {"day-given", "Jun 2026 - Aug 2026", "Jun 14, 2026 - Aug 21, 2026", "gives the day"},
    {"day-given", "Jun 2026 - Aug 2026", "Summer 2026", ""},
    {"date-order", "Jun 2025 - Aug 2025", "Jul 2026 - Sep 2026", "'Hatchery Technician' stands below 'Field Survey Intern'"},
    {"date-order", "Jun 2025 - Aug 2025", "Jun 2025 - Sep 2026", ""}, // began sooner
    {"date-order", "Jun 2025 - Aug 2025", "2026", ""},
    {"date-forms", "Jun 2025 - Aug 2025", "06/2025 - 08/2025", "differs from 'Sep 2025'"},
    {"date-forms", "Jun 2025 - Aug 2025", "Summer 2025", ""},
    {"expected-past", "May 2027 (expected)", "Oct 2026 (expected)", "called expected and is past"},
    {"expected-past", "May 2027 (expected)", "2026 (expected)", ""},
    {"begins-ahead", "Sep 2025 - present", "Sep 2027 - present", "'Sep 2027 - present' begins in the future"},
    {"begins-ahead", "Sep 2025 - present", "Sep 2026 - present", ""},
    {"stale-present", "updated: 2026-11-03", "updated: 2025-09-01", "14 months ago"},
    {"stale-present", "updated: 2026-11-03", "updated: 2026-02-01", ""},
    {"not-updated", "updated: 2026-11-03", "updated: 2026-03-01", "eight months"},
    {"not-updated", "updated: 2026-11-03", "updated: 2026-06-01", ""},
    // entries
    {"bullet-count", "- Mapped 34", "- Drew 2 charts\n- Read 3 logs\n- Set 4 nets\n- Mapped 34", "six bullets"},
    {"bullet-count", "- Mapped 34", "-- Drew 2 charts\n-- Read 3 logs\n-- Set 4 nets\n- Mapped 34", ""},
    {"one-bullet", "- Model oyster settlement on 1,140 tiles in R, cutting tile season from 9 weeks to 6\n- Maintain 12 tanks and log salinity, pH, and oxygen twice a day, with no reading missed\n", "", "stands first and has one bullet"},
    {"one-bullet", "- Rebuilt algae culture schedule, reducing failed batches from 5 a month to 1\n", "", ""},
    {"role-missing", "role: Hatchery Technician\n", "", "under 'Cape Morrow Shellfish' there is no role"},
    {"role-missing", "role: Hatchery Technician\n", "role: Hatchery Aide\n", ""},
    {"employer-missing", "employer: Salish Tidal Trust\n", "", "names no employer"},
    {"employer-missing", "- Mapped 34", "role: Field Aide\ndates: Jun 2024 - Aug 2024\n- Mapped 34", ""},
    {"place-missing", "place: Anacortes, WA\n", "", "names no place"},
    {"place-missing", "place: Anacortes, WA", "place: Remote", ""},
    {"place-missing", "- Mapped 34", "role: Full-Time Family Caregiver\ndates: Jun 2020 - Aug 2024\n- Mapped 34", ""},
    {"relevance-order", "role: Field Survey Intern", "role: Barista\nemployer: Lantern Coffee\nplace: Astoria, OR\ndates: Jul 2026 - present\n- Served 90 guests an hour\n- Sold 40 cakes a day\n\nrole: Field Methods Marine Ecology Intern", "'Additional Experience'"},
    {"relevance-order", "role: Field Survey Intern", "role: Marine Field Intern", ""},
    {"single-day", "dates: Jan 2026 - present", "dates: Apr 18, 2026", "a single day"},
    {"single-day", "dates: Jan 2026 - present", "dates: Apr 2026", ""},
    {"member-only", "section: Skills", "activity: Kayak Club\nrole: Member\ndates: Jan 2025 - Dec 2025\n\nsection: Skills", "'Member' is all that is said"},
    {"member-only", "section: Skills", "activity: Kayak Club\nrole: Member\ndates: Jan 2025 - Dec 2025\n- Built 2 boats\n\nsection: Skills", "'Member' hides what"},
    {"member-only", "section: Skills", "activity: Kayak Club\nrole: Boat Builder\ndates: Jan 2025 - Dec 2025\n- Built 2 boats\n\nsection: Skills", ""},
    // wording: these have tests of their own, tests/advice/wording_checks_test.cpp
    {"tense", "- Counted 212", "- Count 212", "present"},
    {"tense", "- Counted 212", "- Tallied 212", ""},
    {"action-verb", "- Counted 212 eelgrass plots", "- GIS maps of 212 eelgrass plots", "'GIS'"},
    {"action-verb", "- Counted 212 eelgrass plots", "- Charted 212 eelgrass plots", ""},
    {"weak-opening", "- Counted 212 eelgrass plots", "- Responsible for 212 eelgrass plots", "Responsible for"},
    {"weak-opening", "- Counted 212", "- Surveyed 212", ""},
    {"repeated-opening", "- Trained 4 volunteers", "- Mapped 3 bays; trained 4 volunteers\n- Mapped 2 coves", "Mapped"},
    {"repeated-opening", "- Trained 4 volunteers", "- Mapped 3 bays; trained 4 volunteers", ""},
    {"first-person", "- Counted 212", "- I counted 212", "I"},
    {"first-person", "- Counted 212", "- Counted off I-5 some 212", ""},
    {"little-words", "planners cited maps in 2 permit reviews", "the planners cited the maps in the 2 permit reviews at the end of the season", "the"},
    {"little-words", "planners cited maps", "planners used maps", ""},
    {"full-sentence", "- Mapped 34 acres of eelgrass edge", "- The team mapped 34 acres of eelgrass edge", "subject"},
    {"full-sentence", "- Mapped 34", "- Charted 34", ""},
    {"passive", "- Counted 212 eelgrass plots at 9 sites", "- Was supervised by 2 scientists at 9 sites", "passive"},
    {"passive", "- Counted 212", "- Selected from 90 applicants; counted 212", ""},
    {"no-figure", "- Raised 1.8 million oyster larvae to eyed stage at 71% survival, 9 points above prior season\n- Rebuilt algae culture schedule, reducing failed batches from 5 a month to 1", "- Raised oyster larvae to eyed stage\n- Rebuilt algae culture schedule", "figure"},
    {"no-figure", "- Raised 1.8 million", "- Raised many", ""},
    {"impossible-figure", "cutting entry time 18% with", "cutting entry time 118% with", "nothing falls by over 100 percent"},
    {"impossible-figure", "cutting entry time 18% with", "with 120% fewer slips and", "'120%' is more than there was"},
    {"impossible-figure", "cutting entry time 18% with", "raising counts 118% with", ""},
    {"impossible-figure", "cutting entry time 18% with", "in 400 hours of bench time in two weeks with", "more than the whole"},
    {"impossible-figure", "cutting entry time 18% with", "in 300 hours of bench time in two weeks with", ""},
    {"impossible-figure", "cutting entry time 18% with", "raising shares in the fall check from 58% to 71% with", ""},
    {"impossible-figure", "cutting entry time 18% with", "cutting fees 30% from 2021 to 2024 with", ""},
    {"impossible-figure", "cutting entry time 18% with", "cutting fees from 2021 to 2024 dollars with", ""},
    {"impossible-figure", "cutting entry time 18% with", "cutting close from 10 days to 8, a 40% saving, with", "the change that is told"},
    {"impossible-figure", "cutting entry time 18% with", "cutting close from 10 days to 8, a 20% saving, with", ""},
    {"impossible-figure", "cutting entry time 18% with", "raising turnout 300%, from 410 to 820 ballots, with", "the change that is told"},
    {"impossible-figure", "cutting entry time 18% with", "raising turnout 100%, from 410 to 820 ballots, with", ""},
    {"impossible-figure", "cutting entry time 18% with", "with 64 helpers, 71 of whom came back, and", "'64 helpers, 71'"},
    {"impossible-figure", "cutting entry time 18% with", "with 71 helpers, 64 of whom came back, and", ""},
    {"impossible-figure", "cutting entry time 18% with", "in 200 hours a week with", "'200 hours a week'"},
    {"impossible-figure", "cutting entry time 18% with", "in 9,000 hours in 2025 with", "'9,000 hours in 2025'"},
    {"impossible-figure", "cutting entry time 18% with", "in 900 hours in 2025 with", ""},
    {"impossible-figure", "cutting entry time 18% with", "cutting overruns to 118% of plan with", ""},
    {"impossible-figure", "cutting entry time 18% with", "cutting 9 crews' 118% quota with", ""},
    {"impossible-figure", "cutting entry time 18% with", "cutting entry time 12-8% with", "'12-8%' runs from the greater figure down to the smaller"},
    {"impossible-figure", "cutting entry time 18% with", "cutting entry time 8-12% and winning 12-8 with", ""},
    {"impossible-figure", "cutting tile season from 9 weeks to 6", "cutting tile season from 6 weeks to 9", "runs the other way"},
    {"impossible-figure", "from 81% to 94%", "from 94% to 81%", "runs the other way"},
    {"impossible-figure", "cutting tile season from 9 weeks to 6", "cutting tile season from 3 weeks to 6 days", ""},
    {"impossible-figure", "with *96%* agreement", "with 106% agreement", "more than the whole"},
    {"impossible-figure", "with *96%* agreement", "at 106% of quota", ""},
    {"impossible-figure", "at 9 sites", "at 14 out of 9 sites", "'14 out of 9' is more than the whole"},
    {"impossible-figure", "at 9 sites", "at 9 out of 14 sites", ""},
    {"task-without-result", "- Won second prize among 31 posters at spring symposium", "- Cleaned nets", "a task"},
    {"task-without-result", "- Won second prize", "- Won third prize", ""},
    {"empty-phrases", "- Won second prize among 31 posters", "- Hard worker who won second prize among 31 posters", "ard worker"},
    {"empty-phrases", "- Won second prize", "- Took second prize", ""},
    {"empty-phrases", "- Won second prize", "- Set light on an ETC Ion and various-length nets; won second prize", ""},
    {"empty-phrases", "- Won second prize", "- Set lights, nets, etc. and won second prize", "'etc'"},
    {"agreement", "Counted 212 eelgrass plots", "Counted 212 plots that was mapped", "'plots' and 'was'"},
    {"agreement", "Counted 212 eelgrass plots", "Counted a list of plots that was mapped", ""},
    {"agreement", "Counted 212 eelgrass plots", "Trained 15 divers; 13 is still here,", "'13' and 'is'"},
    {"agreement", "Counted 212 eelgrass plots", "Trained 15 divers; 13 are still here,", ""},
    {"agreement", "Counted 212 eelgrass plots", "Painted the shed; 13 is its number,", ""},
    {"agreement", "- Run rescue drills that", "- Run rescue drills and writes reports that", "'Run' and 'writes'"},
    {"agreement", "Counted 212 eelgrass plots", "Updated 212 patients charts", "'patients' owns"},
    {"agreement", "Counted 212 eelgrass plots", "Taught 212 patients exercises", ""},
    {"small-opening", "- Mapped 34 acres", "- mapped 34 acres", "'mapped' opens with a small letter"},
    {"small-opening", "- Mapped 34 acres", "- pH logged", ""},
    {"species-italics", "212 eelgrass plots", "212 plots of Zostera marina", "'Zostera marina' looks like"},
    {"species-italics", "212 eelgrass plots", "212 plots of /Zostera marina/", ""},
    {"leaving-reason", "- Rebuilt algae", "- Left because of a new manager\n- Rebuilt algae", "why you left"},
    {"leaving-reason", "- Rebuilt algae", "- Left 9 tanks cleaner than before\n- Rebuilt algae", ""},
    {"confidences", "- Rebuilt algae", "- Tested unreleased feed\n- Rebuilt algae", "'unreleased'"},
    {"confidences", "- Rebuilt algae", "- Tutored pupil Ilse Varga in fractions\n- Rebuilt algae", "in your care"},
    {"confidences", "- Rebuilt algae", "- Kept confidential records\n- Rebuilt algae", ""},
    // skills
    {"skills-missing", "section: Skills\n\nField: GPS, mapping, rescue drills\nData: R, regression\nLanguages: Portuguese (professional), Hindi (conversational)\n", "", "no section of skills"},
    {"skills-missing", "section: Skills\n\nField: GPS, mapping, rescue drills\nData: R, regression\n", "section: Languages\n\n", ""},
    {"language-level", "Portuguese (professional)", "Portuguese", "has no level"},
    {"language-level", "Portuguese (professional)", "Portuguese (so so)", "no level that readers know"},
    {"language-level", "Portuguese (professional)", "Portuguese (B2)", ""},
    {"stuffing", "Data: R, regression",
     "Data: tide charts (2022), tide charts (2023), tide charts (2024), tide charts (2025), tide "
     "charts (2026)",
     "'tide charts' is said 5 times"},
    {"stuffing", "Data: R, regression", "Data: tide charts, tide tables, wind charts", ""},
    {"skill-twice", "Data: R, regression", "Data: R, regression, GPS", "'GPS' stands in line"},
    {"skill-twice", "Data: R, regression", "Data: R, regression {lab}", ""},
    {"slang", "2 permit reviews", "2 reviews thru May", "'thru'"},
    {"slang", "2 permit reviews", "2 reviews through May", ""},
    {"word-slip", "2 permit reviews", "2 statues for a memo on law", "'statutes'"},
    {"word-slip", "2 permit reviews", "2 bronze statues in a park", ""},
    {"word-slip", "2 permit reviews", "the county's report on it's first survey", "'its'"},
    {"skill-unused", "Field: GPS, mapping, rescue drills\nData: R, regression", "Data: Tableau, Stata, SAS", "no entry shows 'Tableau', 'Stata' and 'SAS'"},
    {"skill-unused", "Data: R, regression", "Data: R, Tableau, Stata, SAS", ""},
    {"skill-unused", "Data: R, regression", "Data: R, oysters", ""},
    {"skill-unused", "Data: R, regression", "Data: R, regression\nInterests: Tableau, Moth Night", ""},
    {"broad-skill", "Data: R, regression", "Data: R, internet", "'internet' is so broad"},
    {"broad-skill", "Data: R, regression", "Data: R, internet protocols of tide gauges", ""},
    // consistency
    {"bullet-ends", "2 permit reviews", "2 permit reviews.", "the bullet in line 40 ends with a full stop, and eleven others do not; take it out"},
    {"bullet-ends", "2 permit reviews", "2 permit reviews at Pellworth Inc.", ""},
    {"capitals", "section: Projects", "section: Marine projects", "other titles"},
    {"capitals", "role: Safety Officer", "role: Safety officer", "other roles"},
    {"capitals", "section: Projects", "section: Projects of the Year", ""},
    {"capitals", "section: Relevant Experience", "section: RELEVANT EXPERIENCE", "ALL CAPITALS"},
    {"capitals", "role: Safety Officer", "role: K-12 tutor", ""},
    {"capitals", "role: Safety Officer", "role: /The Tide/ editor", ""},
    {"capitals", "role: Safety Officer", "role: Co-chair and delegate", ""},
    {"capitals", "role: Safety Officer", "role: Treasurer", ""},
    {"place-forms", "place: Astoria, OR", "place: Astoria", "another form"},
    {"place-forms", "place: Astoria, OR", "place: Galway, Ireland", ""},
    {"place-forms", "place: Astoria, OR", "place: Astoria, Ore.", "another form"},
    {"place-forms", "place: Astoria, OR", "place: Singapore", ""},
    {"place-forms", "place: Astoria, OR", "place: USS Harrow", ""},
    {"place-forms", "place: Astoria, OR", "place: At sea", ""},
    {"place-forms", "place: Astoria, OR", "place: Deployed overseas", ""},
    {"place-forms", "address: Port Ellery, WA", "address: Open to relocation", ""},
    {"number-forms", "- Counted 212", "- Counted 2120", "write '2,120'"},
    {"number-forms", "at 9 sites, cutting", "at nine sites, cutting", "'nine sites'"},
    {"number-forms", "- Counted 212", "- Filed Form 1040 in 2025 and counted 212", ""},
    {"number-forms", "- Counted 212", "- Filed returns (Form 1040, Schedule C) and 1,212", ""},
    {"number-forms", "- Counted 212", "- Filed Forms 1040 and 1099 and 1,212", ""},
    {"number-forms", "- Counted 212", "- Met in room 2140 of the 1040 Lab with 1,212", ""},
    {"number-forms", "- Counted 212", "- Fed 4140 fry and counted 1,212", "'4140' has no comma"},
    {"serial-comma", "at 9 sites, cutting", "of seagrass, kelp, oysters and clams, cutting", "no comma before the last"},
    {"serial-comma", "in GPS and mapping", "in GPS, mapping, and mooring", ""},
    {"serial-comma", "in GPS and mapping", "in GPS, mapping, and mooring of kelp, oysters and clams", "before the last"},
    {"serial-comma", "in GPS and mapping", "in GPS, mapping, and mooring; at dawn, raked and sorted kelp", ""},
    {"spelling-region", "- Rebuilt algae", "- Organised and analyzed algae", "'Organised' is spelled as in Britain"},
    {"spelling-region", "- Rebuilt algae", "- Organized algae of Harbour House", ""},
    {"spelling-region", "- Rebuilt algae", "- Organised algae", "'Organised' is spelled as in Britain"},
    {"spelling-region", "- Rebuilt algae", "- Anaesthetised fish of algae", "'Anesthetized'"},
    {"spelling-region", "- Rebuilt algae", "- Catalogued and analyzed algae", ""},
    {"spelling-region", "- Rebuilt algae", "- Labelled and modeled algae", "'Labelled' is spelled as in Britain"},
    {"term-forms", "- Rebuilt algae", "- Sent 40 e-mails and rebuilt algae culture after 3 emails on", "'emails' is written 'e-mails'"},
    {"term-forms", "- Rebuilt algae", "- Set up and rebuilt algae", ""},
    {"dash", "edge; planners", "edge - planners", "where a dash belongs"},
    {"dash", "edge; planners", "edge -- planners", ""},
    {"spacing", "- Counted 212", "- Counted  212", "a doubled space"},
    {"spacing", "- Counted 212", "- Counted \t212", "a gap with a tab in it"},
    {"spacing", "- Counted 212", "- Counted  212  times", "doubled spaces; one space"},
    {"spacing", "acres of eelgrass edge;", "acres of eelgrass edge ;", "a space before a sign that closes"},
    {"spacing", "Salish Tidal Trust", "Salish Tidal Trust {lab} .", ""},
    {"spacing", "- Counted 212", "- Wrote 3 .NET tools and counted 212", ""},
    {"doubled-word", "acres of eelgrass", "acres of of eelgrass", "'of of'"},
    {"doubled-word", "acres of eelgrass", "acres of Walla Walla eelgrass", ""},
    {"doubled-word", "- Trained 4 volunteers in", "- Trained 4 volunteers to log in in", ""},
    {"doubled-word", "- Trained 4 volunteers in", "- Trained 4 volunteers in in", "'in in'"},
    {"doubled-word", "- Trained 4 volunteers in", "- Bought in in 4 weeks and had had that that", ""},
    {"doubled-word", "- Trained 4 volunteers in", "- Signed up up to 4 volunteers who clocked on on", ""},
    {"doubled-word", "acres of eelgrass", "acres of /Of of Tides/ and \"The The Tide\" eelgrass", ""},
    {"doubled-word", "acres of eelgrass", "acres of \"Tide\" of of eelgrass", "'of of'"},
    // spelling: tests/advice/spelling_checks_test.cpp
    {"word-slip", "- Run rescue", "- Train shift mangers\n- Run rescue", "for 'managers'"},
    {"word-slip", "- Run rescue", "- Build a manger for horses\n- Run rescue", ""},
    {"spelling", "- Counted 212", "- Conuted 212", "Counted"},
    {"spelling", "- Counted 212", "- Surveyed 212", ""},
    // privacy
    {"identity-number", "section: Skills\n", "section: Skills\n\nSSN: 123-45-6789\n", "Social Security number"},
    {"identity-number", "section: Skills\n", "section: Skills\n\nLots: 900-45-6789\n", ""},
    {"identity-number", "section: Skills\n", "section: Skills\n\nOther: SSN ends in 4471\n", "Social Security number"},
    {"personal-details", "section: Skills\n", "section: Skills\n\nDate of birth: March 2005\n", "your date of birth"},
    {"personal-details", "field survey and data skills", "22 years old", "your age"},
    {"personal-details", "- Counted 212", "- Read blood pressure of 60 patients aged 20 and counted 212", ""},
    {"references-line", "section: Skills\n", "section: Summary\n\ntext: References available upon request\n\nsection: Skills\n", "taken for granted"},
    {"references-line", "- Counted 212", "- Checked references of 60 tenants and counted 212", ""},
    {"salary", "section: Skills\n", "section: Summary\n\ntext: Desired salary: $60,000\n\nsection: Skills\n", "no place on a résumé"},
    {"salary", "- Counted 212", "- Modeled salary data of 90 clerks and counted 212", ""},
    {"licence-number", "section: Skills\n", "section: Licenses\n\ncredential: Diver License #483920\n\nsection: Skills\n", "'483920'"},
    {"licence-number", "section: Skills\n", "section: Licenses\n\ncredential: Diver License\n\nsection: Skills\n", ""},
    // settings
    {"accept-unknown", "stage: undergraduate", "stage: undergraduate\naccept: voice-mail (it is checked)", "did you mean 'voicemail'?"},
    {"accept-unknown", "stage: undergraduate", "stage: undergraduate\naccept: voicemail (it is checked)", ""},
    {"accept-idle", "stage: undergraduate", "stage: undergraduate\naccept: gpa-low (a hard year)", "nothing of it"},
    {"accept-idle", "stage: undergraduate", "stage: undergraduate\naccept: voicemail (it is checked)", ""},
    {"accept-idle", "stage: undergraduate", "accept: voicemail (checked)\naccept: voicemail (again)", "set aside twice, first in line 9"},
};
// clang-format on

bool says(const std::vector<Finding>& findings, const std::string& told) {
    return std::ranges::any_of(findings, [&](const Finding& finding) {
        return (finding.text + "; " + finding.suggestion).find(told) != std::string::npos;
    });
}

// --- the page: the layout, or the look, is changed after it is made

struct PageCase {
    std::string_view check;
    std::string find, replace;
    std::function<void(stages::Typeset&)> change;
    std::string told;
};

fit::Fit& fit_of(stages::Typeset& typeset) {
    return std::get<fit::Fit>(typeset.fit);
}

const auto unchanged = [](stages::Typeset&) {};

std::string long_bullet(std::size_t times) {
    std::string text = "- Counted";
    for (std::size_t i = 0; i < times; ++i)
        text += " 14 plots of eelgrass at each of 9 sites,";
    return text + " daily";
}

const PageCase page_cases[] = {
    {"text-size", "", "", [](stages::Typeset& page) { fit_of(page).setting.size = 9; }, "9.0 pt"},
    {"text-size", "", "", [](stages::Typeset& page) { fit_of(page).setting.size = 10; }, ""},
    {"text-size", "", "",
     [](stages::Typeset& page) {
         for (composition::Paragraph& paragraph : page.composition.paragraphs)
             if (paragraph.style == theme::StyleName::bullet)
                 paragraph.size = 14 / fit_of(page).setting.size;
     },
     "14.0 pt"},
    {"margins", "", "", [](stages::Typeset& page) { fit_of(page).setting.side_margin = 30; },
     "0.42 in"},
    {"margins", "", "", [](stages::Typeset& page) { fit_of(page).setting.side_margin = 72; }, ""},
    {"length", "", "", [](stages::Typeset& page) { page.fit = fit::Overflow{3}; },
     "three lines too long"},
    {"length", "stage: undergraduate", "stage: graduate applicant\npages: 2", unchanged, ""},
    {"page-fill", "", "", unchanged, ""},
    {"first-look", "", "", unchanged, ""},
    {"one-word-over", "", "", unchanged, ""},
    {"two-lines", "- Counted 212", long_bullet(8) + "\n- Counted 212", unchanged, "lines"},
    {"two-lines", "- Counted 212", long_bullet(2) + "\n- Counted 212", unchanged, ""},
    {"emphasis",
     "- Raised 1.8 million oyster larvae to eyed stage at 71% survival, 9 points above "
     "prior season\n- Rebuilt algae culture schedule, reducing failed batches from 5 a "
     "month to 1",
     "- *Raised 1.8 million oyster larvae to eyed stage at 71% survival, 9 points above prior "
     "season*\n- *Rebuilt algae culture schedule, reducing failed batches from 5 a month to 1, and "
     "did the same for 3 more pools of larvae*",
     unchanged, "words are bold"},
    {"emphasis", "- Counted 212", "- *Counted* 212", unchanged, ""},
    {"two-columns", "", "",
     [](stages::Typeset& page) {
         page.theme.two_columns = true;
         page.composition.paragraphs.back().region = composition::Region::side;
     },
     "read straight across"},
    {"two-columns", "", "", [](stages::Typeset& page) { page.theme.two_columns = false; }, ""},
    // Web Content Accessibility Guidelines 2.1, section 1.4.3: #777777 has 4.48 to 1 and fails,
    // #767676 has 4.54 to 1
    {"contrast", "", "",
     [](stages::Typeset& page) {
         page.composition.paragraphs.back().runs.back().colour = {119, 119, 119};
     },
     "4.48 to 1"},
    {"contrast", "", "",
     [](stages::Typeset& page) {
         page.composition.paragraphs.back().runs.back().colour = {118, 118, 118};
     },
     ""},
};

}

TEST_CASE("proof: the clean résumé has nothing but the reminder of the voicemail") {
    const auto one = proof_of(fixtures::clean_resume(), {.with_page = true});
    CHECK(one->proof.findings.empty());
    for (const Finding& reminder : one->proof.reminders)
        CHECK(std::string(reminder.check) + ": " + reminder.text ==
              "voicemail: who calls this number may reach its voicemail");
    CHECK(one->proof.reminders.size() == 1);
}

TEST_CASE("proof: each check speaks and keeps silent") {
    fixtures::check_each(cases);
}

TEST_CASE("proof: each check of the page speaks and keeps silent") {
    for (const PageCase& c : page_cases) {
        CAPTURE(c.check);
        CAPTURE(c.told);
        const auto one =
            proof_of(clean_with(c.find, c.replace), {.with_page = true, .change = c.change});
        const auto found = one->of(c.check);
        CHECK(c.told.empty() == found.empty());
        CHECK((c.told.empty() || says(found, c.told)));
    }
}

TEST_CASE("proof: a résumé without a section of experience") {
    std::string text = fixtures::clean_resume();
    const std::size_t begin = text.find("section: Relevant");
    text.erase(begin, text.find("section: Projects") - begin);
    const auto found = proof_of(text)->of("section-missing");
    REQUIRE(found.size() == 1);
    CHECK(found.front().text == "there is no section of experience");
}

TEST_CASE("proof: a page for a student is one, whatever 'pages' allows") {
    std::string text = clean_with("stage: undergraduate", "stage: undergraduate\npages: 2");
    std::string project = "\nproject: Kelp\ncourse: Ecology\ndates: Jan 2026 - May 2026\n"
                          "- Scored 480 blades from 8 sites\n- Won 2 prizes at symposium\n";
    std::string many;
    for (int i = 0; i < 14; ++i)
        many += project;
    text.insert(text.find("section: Activities"), many + '\n');
    const auto found = proof_of(text, {.with_page = true})->of("length");
    REQUIRE(found.size() == 1);
    CHECK(found.front().text == "this takes two pages");
    CHECK(found.front().place.line == 10);
}

TEST_CASE("proof: what a list of words alone tells apart") {
    fixtures::check_each(fixtures::list_cases);
}

TEST_CASE("proof: sentences, names and pastimes, case by case") {
    fixtures::check_each(fixtures::sentence_cases);
}

TEST_CASE("proof: what is told in two places, each time otherwise") {
    fixtures::check_each(fixtures::contradiction_cases);
}

// This is what keeps a new check from going untested.
TEST_CASE("proof: every check has a case that makes it speak and one that keeps it silent") {
    std::set<std::string_view> speak{"section-missing", "page-fill", "first-look", "one-word-over",
                                     "public-repository"};
    std::set<std::string_view> silent{"public-repository"};
    for (const Case& c : cases)
        (c.told.empty() ? silent : speak).insert(c.check);
    for (const PageCase& c : page_cases)
        (c.told.empty() ? silent : speak).insert(c.check);
    for (const Case& c : fixtures::sentence_cases)
        (c.told.empty() ? silent : speak).insert(c.check);
    for (const Case& c : fixtures::contradiction_cases)
        (c.told.empty() ? silent : speak).insert(c.check);
    for (const auto* lines :
         {&fixtures::value_lines, &fixtures::unit_lines, &fixtures::role_lines,
          &fixtures::sentence_lines, &fixtures::confidence_lines, &fixtures::measured_lines})
        for (const fixtures::JudgedLine& c : *lines)
            (c.told.empty() ? silent : speak).insert(c.check);
    for (const Check* check : all_checks()) {
        if (check->group == "office") continue; // office_checks_test.cpp has theirs
        CAPTURE(check->name);
        CHECK(speak.contains(check->name));
        CHECK(silent.contains(check->name));
        CHECK(speak.erase(check->name) == 1);
    }
    CHECK(speak.empty()); // no case for a check that is gone
}

TEST_CASE("proof: the table of checks is whole") {
    std::set<std::string_view> names;
    for (const Check* check : all_checks()) {
        CAPTURE(check->name);
        CHECK(names.insert(check->name).second);
        CHECK(check->name.find_first_not_of("abcdefghijklmnopqrstuvwxyz-") ==
              std::string_view::npos);
        for (const std::string_view text :
             {check->group, check->looks_at, check->why, check->source, check->bad, check->good})
            CHECK_FALSE(text.empty());
        CHECK(check->looks_at.ends_with('.'));
        CHECK(check->why.ends_with('.'));
    }
}

TEST_CASE("proof: findings stand in the order of the file, each at a place in it") {
    std::string text = clean_with("- Counted 212", "- Counted  212");
    text.replace(text.find("(360) 555-0142"), 14, "555-0142");
    text += "Tools: internet, internet\n";
    const auto one = proof_of(text, {.with_page = true});
    Place before{};
    for (const Finding& finding : one->proof.findings) {
        CAPTURE(finding.check);
        CHECK(finding.place.line > 0);
        CHECK(std::tuple(before.line, before.column) <=
              std::tuple(finding.place.line, finding.place.column));
        before = finding.place;
        const std::string_view line = one->sources.file(0).line(finding.place.line);
        CHECK(finding.place.column - 1 + finding.place.length <= line.size());
    }
}

TEST_CASE("proof: what is accepted is set aside with its reason") {
    const auto one = proof_of(clean_with(
        "stage: undergraduate", "stage: undergraduate\naccept: voicemail (checked today)"));
    CHECK(one->proof.findings.empty());
    CHECK(one->proof.reminders.empty());
    REQUIRE(one->proof.set_aside.size() == 1);
    CHECK(one->proof.set_aside.front().finding.check == "voicemail");
    CHECK(one->proof.set_aside.front().acceptance->reason == "checked today");
}

TEST_CASE("proof: of many lines the first are named") {
    for (const auto& [count, listed] : {std::pair<std::uint32_t, std::string>{1, "1"},
                                        {2, "1 and 2"},
                                        {7, "1, 2, 3, 4, 5, 6 and 7"},
                                        {8, "1, 2, 3, 4, 5, 6 and 2 more"},
                                        {80, "1, 2, 3, 4, 5, 6 and 74 more"}}) {
        std::vector<Place> places;
        for (std::uint32_t line = 1; line <= count; ++line)
            places.push_back({0, line, 1, 1});
        CHECK(lines_listed(places) == listed);
    }
}

TEST_CASE("proof: a build for a tag is not told of what it leaves out") {
    const std::string text =
        clean_with("stage: undergraduate", "stage: undergraduate\naccept: gpa-low (a hard year)");
    CHECK(proof_of(text, {.tags = {"lab"}})->of("accept-idle").empty());
    // the page could not be looked at, and so its checks found nothing
    const std::string page = clean_with(
        "stage: undergraduate", "stage: undergraduate\naccept: one-word-over (it reads well)");
    CHECK(proof_of(page)->of("accept-idle").empty());
    CHECK(proof_of(page, {.with_page = true})->of("accept-idle").size() == 1);
}

// What an adviser would not stand by would be a fault of the check or of the sample.
TEST_CASE("proof: the samples have nothing that must or should be mended") {
    std::size_t samples = 0;
    for (const auto& file : std::filesystem::directory_iterator(
             std::filesystem::path(QUOIN_SOURCE_FOLDER) / "samples")) {
        if (file.path().extension() != ".resume") continue;
        ++samples;
        CAPTURE(file.path().string());
        const auto one = proof_of("", {.with_page = true, .path = file.path()});
        for (const Finding& finding : one->proof.findings) {
            const Check& check = *find_check(finding.check);
            if (check.weight == Weight::consider) continue;
            CHECK(std::string(check.name) + ": " + finding.text == "nothing");
        }
    }
    CHECK(samples > 0);
}

TEST_CASE("proof: high school, its activities go with it") {
    std::string text =
        clean_with("section: Relevant", "school: North Jetty High School\ngraduation: Jun 2023\n\n"
                                        "section: Relevant");
    text.insert(text.find("section: Skills"), "activity: Concert Band\nrole: First Clarinet\n"
                                              "dates: Sep 2019 - Jun 2023\n- Led 7 players\n\n");
    const auto found = proof_of(text)->of("high-school");
    REQUIRE(found.size() == 2);
    CHECK(found[1].text == "'First Clarinet' ended by the end of high school");
}

}
