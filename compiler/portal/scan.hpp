// What an applicant portal gets out of a PDF, and what is wrong with it. Poppler's tools read the
// file, each in a process of its own (limited_process.hpp); here only their output is read.
#pragma once

#include "compiler/portal/document_facts.hpp"
#include "compiler/portal/found.hpp"
#include "compiler/portal/looks.hpp"
#include "compiler/portal/reading.hpp"
#include "compiler/portal/styles.hpp"
#include "compiler/trade/weights.hpp"

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace quoin::portal {

struct ScanFault {
    std::string check; // its name, the same in every release
    trade::Weight weight{};
    std::size_t page = 0;  // from 1; 0 for the document
    std::string text;      // what is wrong here
    std::string why, mend; // sentences
};

// A small picture of a page, in greys, for seeing whether a word can be seen.
struct PagePicture {
    std::size_t width = 0, height = 0;
    std::string greys; // a byte a dot, rows from the top
};
std::vector<PagePicture> read_pictures(std::string_view pgm); // `pdftoppm -gray`, all pages

// All that is known of a document before it is judged.
struct Evidence {
    DocumentFacts facts;
    std::vector<FontFact> fonts;
    RawNames names;
    Looks looks;
    std::vector<StyledText> styles;
    Reading by_place;                  // as poppler orders it by where it stands
    Reading by_file;                   // in the order of the file
    std::string tagged_text;           // of the structure tree, if there is one
    std::vector<PagePicture> pictures; // only where a word may be invisible
    int images = 0;                    // only where there is next to no text, or none to see
};

struct Scan {
    Evidence evidence;
    Found found;
    std::vector<ScanFault> faults; // the heaviest first
};

// Or why the file cannot be read: a message as quoin's messages are. The configuration names the
// fonts that stand in for those the PDF does not carry (fontconfig's fonts.conf(5)), so that what
// is found does not hang on the fonts and the caches of the machine. Dates are read in English and
// in the languages given.
std::variant<Scan, std::string> scan_pdf(const std::filesystem::path& file,
                                         const std::filesystem::path& font_configuration,
                                         const PageLanguages& languages = {});

// The readings alone, for a PDF in memory that carries its fonts.
struct Readings {
    Reading by_place, by_file;
};
std::variant<Readings, std::string> read_pdf(std::string_view pdf);

// The words with how they look, for who wants more of a page than its text.
struct StyledReading {
    Reading by_place;
    std::vector<StyledText> styles;
    int images = 0;
    int pages = 0;
};
std::variant<StyledReading, std::string>
read_styled_pdf(std::string_view pdf, const std::filesystem::path& font_configuration);

std::variant<StyledReading, std::string>
read_styled_file(const std::filesystem::path& file,
                 const std::filesystem::path& font_configuration);

constexpr std::size_t most_pdf_bytes = std::size_t{64} << 20;
constexpr int most_pages_read = 20;
constexpr std::size_t few_letters = 20; // fewer on a page are no text

}
