// What stands in the way of reading an old document, and what is said of what no résumé has a place
// for.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::transcription::messages {

// What is given cannot be read
inline constexpr Message old_binary =
    "it is a word processor's file of the old binary kind (.doc); open it there and save it as "
    ".docx or .odt";
inline constexpr Message locked_package =
    "it opens only with a password; open it in the program that made it and save it without one";
inline constexpr Message is_rtf =
    "it is rich text (.rtf); open it in a word processor and save it as .docx or .odt";
inline constexpr Message is_html =
    "it is a web page; print it to a PDF in the browser, or save its text as .txt";
inline constexpr Message is_image =
    "it is a picture; type the résumé anew, or have the picture's text read by a program for that "
    "and save it as .txt";
inline constexpr Message is_pages =
    "it is a package of another word processor (.pages); export it from there as .docx or PDF";
inline constexpr Message other_package =
    "it is a ZIP archive and holds no text of a word processor; take the document out of it first";
inline constexpr Message other_document =
    "it is a spreadsheet or a presentation; save the résumé's text as .docx, .odt or .txt";
inline constexpr Message damaged_package =
    "it is damaged and cannot be unpacked; open it in the program that made it and save it anew";
inline constexpr Message too_large_package =
    "it unpacks to more than any résumé holds, as files made to do harm do; save it anew from the "
    "program that made it, without its pictures";
inline constexpr Message no_text_part =
    "the part that holds its text is missing; open it in the program that made it and save it anew";
inline constexpr Message damaged_part =
    "its text is damaged; open it in the program that made it and save it anew";
inline constexpr Message no_text_but_pictures =
    "there is no text in it, only {}; export it from the program it was written in, or have its "
    "text read by a program for that and save it as .txt";
inline constexpr Message no_text = "there is no text in it";
inline constexpr Message no_text_of_bytes = "it is no PDF, .docx or .odt by its bytes, and no "
                                            "text; if its name says so it is damaged: open "
                                            "it in the program that made it and save it anew";
inline constexpr Message is_markup =
    "it is a résumé's source already; 'quoin set' makes the page of it";

// Remarks, each a comment
inline constexpr Message pictures = "The old page has {}, which is left out.";
inline constexpr Message text_boxes =
    "The old page has text in boxes; see that it stands where it belongs.";
inline constexpr Message macros = "The old file holds programs (macros), which were left alone.";
inline constexpr Message pages_left = "Only the first {} pages were read.";
inline constexpr Message lines_left = "Only the first {} lines were read.";
inline constexpr Message guessed_from = "guessed: {}; the old page says: {}";
inline constexpr Message guessed = "guessed: {}";
inline constexpr Message also_says = "the old page also says: {}";
inline constexpr Message page_says = "a head or foot of the old page: {}";
inline constexpr Message other_dates = "the dates as the old page has them: {}";
inline constexpr Message guessed_section =
    "guessed: what this section holds, for its title does not tell";
inline constexpr Message no_name_found = "guessed: name, which is the first line of the old page";
inline constexpr Message no_titles =
    "no title of a section was recognised on the old page: part this into sections";
inline constexpr Message words_left = "words of the old page that found no place: {}";
inline constexpr Message cannot_be_said = "cannot be read as it stands: {}";

}
