// The words that a page says by itself, from a file of `label: value` lines for each language; and
// the words that dates are typed with in it.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"
#include "compiler/trade/kinds.hpp"
#include "compiler/trade/months.hpp"

#include <array>
#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::page_words {

struct DateWords {
    std::array<std::string, trade::months_of_year> months, short_months;
    std::string long_date, short_date;  // `{month} {year}`, with the months and with the short ones
    std::array<std::string, 4> seasons; // from spring on
    std::string present, expected;
    // What is read beside what is printed; none is needed
    std::vector<std::string> reads_present, reads_expected;
    std::vector<std::string> reads_to;    // between the dates of a range
    std::vector<std::string> reads_since; // before its start
    std::vector<std::string> reads_of;    // between day, month and year
};

// Those that a pattern prints, as `{courses-word}`.
inline constexpr std::array<std::string_view, 11> pattern_words{
    "major",  "minor", "gpa",     "honors", "courses", "activities",
    "thesis", "with",  "expires", "page",   "colon"};

struct SectionTitle {
    std::string title;
    trade::Holds holds{};
};

struct Words {
    DateWords dates;
    std::array<std::string, pattern_words.size()> of_patterns;
    std::string email, phone, web_page; // what a link leads to, said to who hears the page
    std::string resume;                 // after the name, in the document's title
    std::string continued;              // after a section's title where it goes on
    std::vector<SectionTitle>
        titles; // usual in it, for who reads a page; English ones are not here
    std::vector<std::filesystem::path> files;

    const std::string& of_pattern(std::string_view name) const; // of pattern_words
};

// Those of every whole language that there is a file of, by its name.
std::vector<Words> read_all_words(Sources& sources, const std::filesystem::path& folder,
                                  Diagnostics& diagnostics);

// Those of a language (BCP 47), well-formed: `fr-CA` has the words of the file `fr` but for those
// of a file `fr-CA`, if there is one. An error at `asked_at` if there is no file.
Words read_words(Sources& sources, const std::filesystem::path& folder, const std::string& language,
                 Place asked_at, Diagnostics& diagnostics);

}
