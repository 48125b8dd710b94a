// Dates as people write them, and the form that the markup reads: common practice.
#include "compiler/transcription/old_dates.hpp"

#include <doctest/doctest.h>

#include <sstream>
#include <string>
#include <vector>

namespace quoin::transcription {

namespace {

// Words of a line; `||` stands for white between columns.
std::vector<OldWord> line(const std::string& text) {
    std::vector<OldWord> words;
    std::istringstream in(text);
    bool apart = false;
    for (std::string word; in >> word;) {
        if (word == "||") {
            apart = true;
            continue;
        }
        OldWord one;
        one.text = word;
        one.apart = std::exchange(apart, false);
        words.push_back(one);
    }
    return words;
}

std::string values(const std::string& text) {
    std::string all;
    for (const DatesOnLine& dates : dates_on(line(text), {}))
        if (!dates.aside)
            all += (all.empty() ? "" : "; ") + dates.value + (dates.expires ? " (expires)" : "") +
                   (dates.glued ? " (glued)" : "");
    return all;
}

}

TEST_CASE("dates on a line") {
    struct Case {
        const char *text, *found;
    };
    for (const Case& one :
         {Case{"Gullhaven Dry Dock Co. || Oct. 2020 – Present", "Oct. 2020 – Present"},
          {"2019 to date || Deckhand", "2019 to present"},
          {"Winters 2017–19 || Net Mender", "Winters 2017–2019"},
          {"2018 and 2019 seasons || Deckhand", "2018 and 2019"},
          {"Summer '17", "Summer '17"},
          {"CPR/AED, renewed 3/2022", "3/2022"},
          {"Radar Observer || exp. 2/2025", "exp. 2/2025 (expires)"},
          {"Camp, July 2026 · expires July 2028", "July 2026; July 2028 (expires)"},
          {"Crew boss since 2021", "since 2021 (glued)"},
          {"Kelder Falls || 2016–2018", "2016–2018"},
          {"Marrow Bay College, undeclared (2022 to present)", "2022 to present"},
          {"2021- || Marrow Bay College", "2021- present"},
          {"“Stranded seabirds, 2015–2019.” Report 12. 2020.", "2020 (glued)"},
          {"Night caregiver || 9/22 – present", "9/2022 – present"},
          {"Fitter || 6/97–8/99", "6/1997–8/1999"},
          {"Volunteer hairdresser • Mondays, 2020–", "2020– present"},
          {"Stage manager, Sea Shanty Day (every June since 2019)", "since 2019"},
          {"Bookseller, The Dry Dock, Christmas 2018", "2018"},
          {"Hazardous Waste, 2021, refreshed 2022", "2021, 2022"},
          {"Guard License (through 10/2023)", "10/2023 (expires)"},
          {"CPR, valid to 9/23", "9/2023 (expires)"},
          {"2020 – Diploma – Brannock High School", "2020"},
          {"Clinical (120 hrs, Fall 2023)", "Fall 2023"},
          {"Since 2021 also lead the Tuesday story hour.", ""},
          {"Counted 2026 quadrats at 9 sites", ""},
          {"CS 240, 3.62 / 4.00", ""}}) {
        CAPTURE(one.text);
        CHECK(values(one.text) == one.found);
    }
}

TEST_CASE("a long line is prose, and has no dates") {
    std::string text = "Jun 2026";
    for (int i = 0; i < 50; ++i)
        text += " and so on";
    CHECK(values(text).empty());
}

}
