// Lines of résumés, one fault or none in each, and what the checks of values, units, roles, studies
// and sentences say of them. What advisers ask for is common practice; where a bound is of nature
// (pH, absolute zero, the days of a month), it is of any handbook.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace quoin::fixtures {

// Where the line stands: a bullet of a job that has ended, one of a job that goes on, a summary, a
// group of skills, or what is added behind the jobs (a `|` for each line's end).
enum class Stands { ended, current, summary, skills, behind, headline };

inline std::string judged_page(Stands where, std::string line) {
    for (char& c : line)
        if (c == '|') c = '\n';
    const auto put = [&](Stands place, const std::string& usual) {
        const bool bullet = place == Stands::ended || place == Stands::current;
        return place == where ? (bullet ? "- " : "") + line + '\n' : usual;
    };
    return "name: Ottoline Brandt\nheadline: " + put(Stands::headline, "Biology student\n") +
           "address: Port Ellery, WA\n"
           "phone: (360) 555-0142\nemail: ottoline.brandt@ellery.example\nupdated: 2026-11-20\n\n"
           "section: Summary\n\ntext: " +
           put(Stands::summary, where == Stands::headline
                                    ? "Seeking a doctorate in ecology.\n"
                                    : "Biology student with 3 summers on boats.\n") +
           "\nsection: Education\n\nschool: Port Ellery College\nplace: Port Ellery, WA\n"
           "degree: Bachelor of Science in Biology\ngraduation: May 2027 (expected)\n\n"
           "section: Experience\n\nrole: Dock Aide\nemployer: Salish Tidal Trust\n"
           "place: Port Ellery, WA\ndates: Jun 2025 - present\n- Run 3 boats a day for 40 "
           "guests\n" +
           put(Stands::current, "") +
           "\nrole: Hand\nemployer: Lantern Street Works\nplace: Port Ellery, WA\n"
           "dates: Jun 2023 - May 2025\n- Packed 90 crates a shift with two others\n" +
           put(Stands::ended, "") + put(Stands::behind, "") +
           "\nsection: Skills\n\nTools: sextant, lathe\n" + put(Stands::skills, "");
}

struct JudgedLine {
    std::string_view check;
    Stands where{};
    std::string line, told; // a piece of what is said; empty: nothing is
};

using enum Stands;

inline const std::vector<JudgedLine> value_lines{
    {"impossible-figure", ended, "Baked sourdough at 4,750°F on stone", "nothing is so hot"},
    {"impossible-figure", ended, "Baked sourdough at 475°F on stone", ""},
    {"impossible-figure", ended, "Held walk-in cooler at 380°F through an outage", "so hot"},
    {"impossible-figure", ended, "Stored samples at -80°C in 3 freezers", ""},
    {"impossible-figure", ended, "Cooled magnet to -300°C", "-273.15"},
    {"impossible-figure", ended, "Fired stoneware at 2,200°F", ""},
    {"impossible-figure", ended, "Fired stoneware at 22,000°F", "so hot"},
    {"impossible-figure", ended, "Melted bronze at 1,100°C", ""},
    {"impossible-figure", ended, "Rotated camera 360 degrees over 12 plots", ""},
    {"impossible-figure", ended, "Adjusted pH to 17.2 before titration", "0 to 14"},
    {"impossible-figure", ended, "Adjusted pH to 7.2 before titration", ""},
    {"impossible-figure", ended, "Measured pH at 15 sites", ""},
    {"impossible-figure", ended, "Kept dissolved oxygen at 850 mg/L", "does not hold"},
    {"impossible-figure", ended, "Kept dissolved oxygen at 8.5 mg/L", ""},
    {"impossible-figure", ended, "Kept salinity at 350 ppt", "does not hold"},
    {"impossible-figure", ended, "Held humidity at 140% in 2 houses", "more than the whole"},
    {"impossible-figure", ended, "Scored 105% on the state exam", "more than the whole"},
    {"impossible-figure", ended, "Raised sales 130% in a year", ""},
    {"impossible-figure", ended, "Finished in the 103rd percentile", "percentiles"},
    {"impossible-figure", ended, "Read a resting pulse of 7,200 bpm", "no heart"},
    {"impossible-figure", ended, "Read blood pressure of 1,200/80", "pressure"},
    {"impossible-figure", ended, "Drove the van at 650 mph", "so fast"},
    {"impossible-figure", ended, "Worked 25-hour days", "24 hours"},
    {"impossible-figure", ended, "Ran camps 13 months of the year", "more than the whole"},
    {"impossible-figure", ended, "Opened the shop at 9:75", "no clock"},
    {"impossible-figure", ended, "Opened the shop at 7:30 am", ""},
    {"impossible-figure", ended, "Opened the branch on June 31, 2024", "June has 30 days"},
    {"impossible-figure", ended, "Opened the branch on June 30, 2024", ""},
    {"place-forms", behind,
     "|role: Cook|employer: Gull Diner|place: Salem, Orgeon|dates: Jun 2020 - Mar 2021|- "
     "Cooked 90 plates a night",
     "'Orgeon' is no state"},
};

inline const std::vector<JudgedLine> unit_lines{
    {"unit-forms", ended, "Held butter at 13°C|- Baked loaves at 475°F", "13°C"},
    {"unit-forms", ended, "Baked loaves at 475°F (246°C)|- Chilled dough to 38°F", ""},
    {"unit-forms", ended, "Carried 40 lb bags|- Hauled 90 kg of feed", "'90 kg'"},
    {"unit-forms", ended, "Cut 24 in. pipe|- Set 12-inch tile", "inch"},
    {"unit-forms", ended, "Cut waste 9%|- Raised sales 12 percent", "12 percent"},
    {"unit-forms", ended, "Opened at 5 a.m.|- Closed the till at 21:00", "21:00"},
    {"unit-forms", ended, "Won $14,000 in grants|- Saved $2K a year", "2K"},
    {"unit-forms", ended, "Moved 40 lb bags|- Dosed 5 mg of iron", ""},
    {"unit-forms", ended, "Cooled copper stage to 4 with a pulse tube", "no unit"},
    {"unit-forms", ended, "Cooled copper stage to 4 K with a pulse tube", ""},
    {"term-forms", ended, "Washed and dried|- Sorted mail & filed forms|- Ran and sold", "'&'"},
    {"term-forms", ended, "Sold for Hale & Sons|- Ran and sold", ""},
    {"number-forms", ended, "Sold 40 of 60 in 90 days|- Tested twelve cells", "'twelve'"},
    {"dates-told", ended, "Caught a ring on 4/9/18", "4/9/18"},
    {"dates-told", behind,
     "|role: Cook|employer: Gull Diner|place: Port Ellery, WA|dates: 2021 - 2022|- Cooked 90 "
     "plates a night",
     "gives years alone"},
};

inline const std::string full_time_cook =
                             "|role: Cook (full-time)|employer: Gull Diner|place: Port Ellery, WA|"
                             "dates: Jan 2022 - Aug 2022|- Cooked 90 plates a night|",
                         full_time_clerk =
                             "|role: Clerk (full-time)|employer: Kelp Books|place: Port Ellery, "
                             "WA|dates: ";

inline const std::vector<JudgedLine> role_lines{
    {"two-full-time", behind,
     full_time_cook + full_time_clerk + "Jan 2022 - Jul 2022|- Sold 90 books", "six months"},
    {"two-full-time", behind,
     full_time_cook + full_time_clerk + "Jan 2021 - Feb 2022|- Sold 90 books", ""},
    {"beyond-licence", current, "Prescribed medication to 9 guests", "takes a licence"},
    {"beyond-licence", ended, "Prescribed medication to 9 guests", ""}, // a hand may be a nurse
    {"title-size", behind,
     "|role: Chief Executive Officer|employer: Brandt's Cookies|place: Port Ellery, WA|dates: "
     "Jan 2022 - Aug 2022|- Baked 90 cookies",
     "large title"},
    {"title-size", behind,
     "|role: Owner|employer: Brandt's Cookies|place: Port Ellery, WA|dates: Jan 2022 - Aug "
     "2022|- Baked 90 cookies",
     ""},
    {"title-size", behind,
     "|role: Happiness Guru|employer: Gull Diner|place: Port Ellery, WA|dates: Jan 2022 - Aug "
     "2022|- Took 90 calls",
     "no reader looks for"},
    {"ill-words", ended, "Kept the line going despite a lazy crew", "lazy crew"},
    {"ill-words", ended, "Iced orders under a boss who ran the farm badly", "boss"},
    {"ill-words", ended, "Ran the desk, for management never hired a clerk", "management"},
    {"ill-words", ended, "Replaced a badly worn clutch on 4 trucks", ""},
    {"ill-words", ended, "Calmed rude guests and closed 40 complaints", ""},
    {"ill-words", ended, "Mapped 9 bogs after poor management of water", ""},
    {"leaving-reason", ended, "Left for a job with better pay", "tells why you left"},
    {"confidences", ended, "Placed the sons of Loretta Vance, then in detox", "Loretta Vance"},
    {"confidences", ended, "Wrote a plan for Ilse Varga, who has autism, with a teacher", "Ilse Varga"},
    {"confidences", ended, "Sat with Otis Marlow, 84, in Room 6 through weeks of dementia", "Otis Marlow"},
    {"confidences", ended, "Wrote a plan for dementia care with Dr. Ilse Varga", ""},
    {"confidences", ended, "Studied depression with Ida Lohrbeer", ""},
    {"personal-details", summary, "Cellist aged 24 with 3 summers on boats.", "your age"},
    {"personal-details", summary, "Recently divorced, with 3 boats.", "marital status"},
    {"personal-details", skills, "Other: nonsmoker, 6 ft 1 in, 195 lb", "your height"},
    {"skill-graded", skills, "Design: Illustration 90%, Typography 85%", "Illustration 90%"},
    {"not-expected", behind,
     "|section: Further Education||school: Gull College|degree: Bachelor of Arts in "
     "Music|graduation: May 2029",
     "still to come"},
    {"childhood", behind, "|section: Honors||award: Spelling Bee Champion, Grade 6|dates: 2014",
     "Spelling Bee"},
    {"goals-differ", summary, "Seeking a doctorate in neuroscience.", ""},
    {"goals-differ", headline, "Applicant for a master's in counseling", "doctorate"},
    {"idle-pastimes", behind, "|section: Favorites||text: Favorite bread is a dark rye.",
     "tells nothing of your work"},
};

inline const std::vector<JudgedLine> sentence_lines{
    {"unfinished", ended, "Settled 9 claims, recovering $1.9 million from the", "'the'"},
    {"unfinished", ended, "Trained 3 clerks in the use of", "'of'"},
    {"unfinished", ended, "Built the dock that 40 boats come from", ""},
    {"unfinished", ended, "Wrote 9 guides that clerks log in with", ""},
    {"parallel", current, "Answer 40 calls a day and scheduling 9 trucks", "scheduling"},
    {"parallel", ended, "Sorted mail while answering phones and greeting the guests", ""},
    {"parallel", ended, "Raised funds for meals and feeding 90 guests", ""},
    {"parallel", current, "Visit 12 families a week, and each visit is documented", "each"},
    {"run-on", ended, "Read knees with a gauge, therapist checked the angles", "therapist"},
    {"run-on", ended, "Sold 40 pies a day, customers loved them", "customers"},
    {"run-on", ended, "Hired clerks, drivers trained the month before", ""},
    {"punctuation", ended, "Wrote a crosswalk, that a museum adopted", "before 'that'"},
    {"stray-capital", ended, "Served Customers at the counter", "'Customers'"},
    {"stray-capital", skills, "Boats: skiff, tractor and Trailer backing", "'Trailer'"},
    {"stray-capital", ended, "Named Employee of the Month twice", ""},
    {"stray-capital", ended, "Sold Douglas fir to 90 yards", ""},
    {"stray-capital", ended, "Set up 60 Windows 11 machines", ""},
    {"empty-phrases", ended, "Successfully sold 40 boats", "'Successfully'"},
    {"left-blank", ended, "Ran campaign for [client name] on 4 channels", "[client name]"},
    {"left-blank", ended, "Wrote array[index] code for 4 sensors", ""},
    {"left-blank", ended, "Trained X employees on the till", "'X'"},
    {"left-blank", ended, "Cut costs by X% in a year", "'X%'"},
    {"left-blank", ended, "Took X rays of 40 dogs", ""},
    {"agreement", ended, "Restored cars of the 1960's", "'1960'"},
    {"agreement", ended, "Kept logs that shows every dose", "'logs' and 'shows'"},
    {"agreement", ended, "Planted several tree along the road", "'tree'"},
    {"tense", current, "Cleaned 24 tanks every other day", "'Cleaned'"},
    {"tense", current, "Lowered scrap to 1% with probing, wear offsets, and a sheet", ""},
    {"empty-phrases", ended, "Give 110% to every batch", "110%"},
    {"empty-phrases", ended, "Cut vat time to 110% of the batch", ""},
    {"slang", ended, "Hung out with the kids after class", "Hung out"},
};

}
