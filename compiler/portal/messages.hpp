// The faults of a scan: what each is called, how much it weighs, what is said of it, why it matters
// and how to mend it. And what can stand in the way of a scan.
#pragma once

#include "compiler/base/message.hpp"
#include "compiler/trade/weights.hpp"

namespace quoin::portal::messages {

struct FaultRow {
    std::string_view check; // its name, the same in every release
    trade::Weight weight{};
    std::string_view text;      // what is wrong here
    std::string_view why, mend; // sentences
};

inline constexpr auto must = trade::Weight::must;
inline constexpr auto should = trade::Weight::should;
inline constexpr auto consider = trade::Weight::consider;

// The file as a whole
inline constexpr FaultRow only_pictures{
    "no-text", must, "there is no text, only {}",
    "A portal reads text; from a picture of it, it gets nothing.",
    "Export the PDF from the program the résumé was written in; do not scan or photograph a "
    "printed page."};
inline constexpr FaultRow no_text{
    "no-text", must, "there is no text to read",
    "The letters may be drawn as shapes, or the page is empty; a portal gets nothing.",
    "Export the PDF again as text, without turning text into outlines."};
inline constexpr FaultRow font_without_unicode{
    "font-without-unicode", must, "{} {} does not say which letters its shapes are",
    "Text in it looks right and is copied as nonsense or not at all.",
    "Export the PDF with another program or another font; check by copying a line out of a "
    "viewer."};
inline constexpr FaultRow copying_forbidden{
    "copying-forbidden", must, "the PDF forbids copying its text",
    "A portal that keeps to that gets nothing from it.",
    "Save it without restrictions or a permissions password."};
inline constexpr FaultRow encrypted{
    "encrypted", should, "the PDF is encrypted",
    "Some portals turn away every encrypted file, even one that opens without a password.",
    "Save it without security settings."};
inline constexpr FaultRow no_title{
    "no-title", should, "the document has no title",
    "Viewers and screen readers announce the file's name in its place.",
    "Give it one in the document's properties, such as your name and 'résumé'."};
inline constexpr FaultRow no_language{
    "no-language", should, "the document names no language",
    "A screen reader may read it aloud by the rules of another language.",
    "Set the document's language, and export again."};
inline constexpr FaultRow not_tagged{
    "not-tagged", should, "the PDF is not tagged: nothing says what is a heading or a list",
    "Screen readers and some portals must guess the order and the sections.",
    "Export as a tagged PDF (often called accessible, or PDF/UA)."};
inline constexpr FaultRow many_pages{"pages", consider, "it has {} pages{}",
                                     "A résumé usually has one page, or two for long experience.",
                                     "See whether the employer asks for this length."};
inline constexpr FaultRow attachments{"attachments", consider,
                                      "there are files attached inside the PDF",
                                      "Portals drop them, and mail filters may hold the file back.",
                                      "Take them out, unless the posting asks for them."};
inline constexpr FaultRow script{"script", consider, "the PDF holds a script",
                                 "Mail filters and portals may turn it away.",
                                 "Export it again without scripts."};
inline constexpr FaultRow form{
    "form", consider, "the PDF holds a form", "What is typed into form fields is often not read.",
    "Print the filled form to a new PDF, so that its text is part of the page."};

// Characters and words
inline constexpr FaultRow unreadable_characters{
    "unreadable-characters", must, "{} cannot be read, in {}",
    "A search for the word will not find it.",
    "Set these words in another font, or export with another program."};
inline constexpr FaultRow private_characters{
    "private-characters", must, "{} in words come out as codes of the font's own",
    "Only this font knows what they mean; a portal shows boxes or nothing.",
    "Set the text in a font that has these characters at their usual places."};
inline constexpr FaultRow private_signs{
    "private-signs", consider, "{} (bullets or icons) come out as codes of the font's own",
    "A portal shows boxes in their place, and may not see a list.",
    "Use the bullet of the text font, and words in place of icons."};
inline constexpr FaultRow ligatures{
    "ligatures", should, "letters come out joined into one character in {}",
    "A search for the word as it is typed may not find it.",
    "Switch ligatures off in the program that made the PDF, or type the letters apart."};
inline constexpr FaultRow split_words{
    "split-words", must, "letters are set so far apart that {} {} out in pieces",
    "A portal reads single letters and misses the word; a heading read so opens no section.",
    "Take away the letter spacing, or the spaces typed between letters."};
inline constexpr FaultRow glued_words{
    "glued-words", must, "words run together: {}", "A search for any one of them does not find it.",
    "Export with another program or font; check by copying a line out of a viewer."};

// The page
inline constexpr FaultRow interleaved_columns{
    "interleaved-columns", must,
    "two columns are read across, a line of one and a line of the other",
    "The lines of two entries are mixed, and neither makes sense.",
    "Set the résumé in one column, or with text columns in place of a table or tab stops."};
inline constexpr FaultRow two_columns{"two-columns", consider, "the text stands in two columns",
                                      "Here each is read by itself; some portals read across.",
                                      "For a portal, keep a version in one column."};
inline constexpr FaultRow dates_apart{
    "dates-apart", consider, "{} dates stand at the right edge, apart from what they date: {}",
    "A program that parts a page by its white space reads them as a column of their own.",
    "For a portal, keep a version with each date right after what it dates."};
inline constexpr FaultRow tiny_text{
    "tiny-text", must, "{} letters are smaller than {} pt",
    "Nobody can read them, and a portal that finds hidden words may turn the résumé away.",
    "Set them larger, or take them out."};
inline constexpr FaultRow small_text{"small-text", should, "{} letters are smaller than {} pt",
                                     "It is hard to read on paper and on a telephone.",
                                     "Set the text in 10 to 12 pt, and cut words."};
inline constexpr FaultRow hidden_text{
    "hidden-text", must, "{} words cannot be seen on the page: {}",
    "A portal reads them, a person does not; employers take that for a trick.",
    "Take them out, or let them be seen."};
inline constexpr FaultRow machine_read_scan{
    "machine-read-scan", should, "the page is a picture with text that a machine read from it",
    "Such text often has wrong letters, and a portal gets those.",
    "Export the PDF from the program the résumé was written in."};

// What a portal looks for
inline constexpr FaultRow no_name{"no-name", should,
                                  "no name is recognised at the top of the first page",
                                  "A portal may file the résumé under something else.",
                                  "Put your name first, alone on its line, larger than the text."};
inline constexpr std::string_view fills_its_form =
    "A portal fills its form from what is written on the page.";
inline constexpr FaultRow no_email{"no-email", should, "no email address is {}", fills_its_form,
                                   "Write the address out, in one piece."};
inline constexpr FaultRow no_phone{"no-phone", should, "no telephone number is {}", fills_its_form,
                                   "Write the number with its area code, such as (360) 555-0142."};
inline constexpr FaultRow no_sections{
    "no-sections", should, "no section heading is recognised",
    "A portal sorts what it reads by headings such as Education and Experience.",
    "Give each section a usual title, alone on its line."};
inline constexpr FaultRow unusual_titles{
    "unusual-titles", consider, "portals may not know {} as {}",
    "What stands below is then taken for a part of the section before.",
    "Where a usual title says the same, use it."};
inline constexpr FaultRow contact_in_page_header{
    "contact-in-page-header", must, "{} {} in a page header or footer",
    "Many readers leave headers and footers out, and with them the way to reach you.",
    "Put it into the page's own text, at the top of the first page."};

// Ends of the sentence "no … is"
inline constexpr Message found_nowhere = "found";
inline constexpr Message only_a_link = "written out; there is only a link to one";

// What is given is no PDF that can be read
inline constexpr Message no_pdf = "it is not a PDF: it does not begin with '%PDF-'";
inline constexpr Message other_format =
    "it is not a PDF but perhaps a word processor's file; export it as PDF first";
inline constexpr Message needs_password =
    "it opens only with a password, so a portal gets nothing from it; save it without one";

// A reader that failed
inline constexpr Message no_reader = "it needs the program '{}'; install the package poppler-utils";
inline constexpr Message not_limited =
    "the system lets '{}' not be run with a limit to its time and memory, so it was not run";
inline constexpr Message too_slow = "reading it took too long; '{}' was stopped";
inline constexpr Message too_much = "more came out of it than a résumé can hold; '{}' was stopped";
inline constexpr Message no_memory =
    "reading it took more memory than a résumé can need; '{}' was stopped";
inline constexpr Message broke_off = "'{}' broke off while it read it (signal {}); export it again";
inline constexpr Message damaged = "it is damaged: '{}' could not read it; export it again";

// Our own PDF, read back
inline constexpr Message not_verified = "the PDF cannot be verified: {}";
inline constexpr Message pages_unread =
    "not all of it was found on the first 20 pages, and no more are read; nothing was written";
inline constexpr Message word_lost =
    "{} cannot be read whole from the PDF, in the order of {}; nothing was written";
inline constexpr Message read_loose =
    "{} of the pieces that the theme sends to the right edge would be read apart from what they "
    "belong to, in the order of the page: {}; for a portal, take a theme that keeps them in line";
inline constexpr Message read_across =
    "{} side by side: programs that read a page line by line take both for one line; for a portal, "
    "take a theme that sets all in one column, under its headings";
inline constexpr Message side_by_side =
    "{} side by side: programs that read a page line by line take both for one line, and some that "
    "part it by its white space take one before the other; for a portal, take a theme that sets "
    "all in one column, under its headings";
inline constexpr Message word_moved =
    "{} would be read out of place, in the order of {}; nothing was written";

}
