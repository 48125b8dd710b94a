// What can be wrong with files: with those read, with the bytes in them, with those written, with
// the program's own parts.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::messages {

// Reading
inline constexpr Message no_file = "no such file";
inline constexpr Message no_file_in_file = "no such file: a part of its path is not a folder";
inline constexpr Message may_not_be_read = "may not be read: permission is missing";
inline constexpr Message unreadable = "cannot be read: {}";
inline constexpr Message folder = "is a folder; a text file was expected";
inline constexpr Message no_regular_file =
    "is not a regular file; a pipe or a device is read only where the command line names it";
inline constexpr Message too_large =
    "is larger than 1 MiB; a résumé is a few kilobytes of text, so this looks like another file";
inline constexpr Message too_large_from_elsewhere =
    "is larger than 1 MiB, and what is read here is a few kilobytes of text: copy the text alone "
    "into a file";
inline constexpr Message is_pdf =
    "is a PDF, and the text that one is made from was expected, such as 'draft.resume'; 'quoin "
    "scan' reads a PDF";
inline constexpr Message is_pdf_from_elsewhere =
    "is a PDF, which is read by the name of its file and not through a pipe";
inline constexpr Message is_word_processing =
    "is a word processor's file: save it from there as plain text, with the encoding UTF-8";
inline constexpr Message is_archive = "is a ZIP archive; a text file was expected";
inline constexpr Message is_web_page =
    "is a web page; a text file was expected, in the markup that 'quoin help markup' tells of";
inline constexpr Message is_image = "is an image; a text file was expected";

// Bytes
inline constexpr Message utf16 = "looks like UTF-16, and UTF-8 was expected: in the editor that "
                                 "wrote it, save it as plain text with the encoding UTF-8";
inline constexpr Message windows_1252 =
    "byte 0x{:02X} is not UTF-8; the file looks like Windows-1252, where it is '{}': save it with "
    "the encoding UTF-8";
inline constexpr Message never_utf8 =
    "byte 0x{:02X} is not UTF-8: it stands in no UTF-8 text; type the character anew and save the "
    "file with the encoding UTF-8";
inline constexpr Message broken_off =
    "byte 0x{:02X} is not UTF-8: it begins a character that does not go on as it must; type the "
    "character anew and save the file with the encoding UTF-8";
inline constexpr Message beginning_missing =
    "byte 0x{:02X} is not UTF-8: it is part of a character that was begun before it or is missing "
    "its beginning; type the character anew and save the file with the encoding UTF-8";
inline constexpr Message nul_byte = "a NUL byte, which no text holds: take it out";
inline constexpr Message control =
    "U+{:04X} is a control character, which cannot be set: take it out";
inline constexpr Message many_marks = "more than {} combining marks in a row (Unicode Standard "
                                      "Annex #15, section 13): take some out";
inline constexpr Message bytes_left_out = "{} {} in all, of which the first {} are shown";

// Writing, and why it could not be done
inline constexpr Message cannot_write = "cannot write '{}': {}";
inline constexpr Message cannot_print = "cannot write to standard output: {}";
inline constexpr Message pdf_on_terminal =
    "a PDF is not for a terminal to show: name a file in its place, or send it down a pipe";
inline constexpr Message name_empty = "cannot write: the file's name is empty";
inline constexpr Message name_with_null =
    "cannot write: the file's name has a null character in it";
inline constexpr Message nothing_there = "there is no such file";
inline constexpr Message no_folder = "there is no folder '{}'";
inline constexpr Message not_a_folder = "'{}' is not a folder";
inline constexpr Message target_is_folder = "it is a folder";
inline constexpr Message folder_closed = "there is no permission to write in the folder '{}'";
inline constexpr Message file_closed = "there is no permission to write over it";
inline constexpr Message disk_full = "the disk is full";
inline constexpr Message quota_used_up = "the disk quota is used up";
inline constexpr Message too_long = "the file would be larger than is allowed";
inline constexpr Message read_only = "the disk can only be read";
inline constexpr Message name_too_long = "its name is too long";
inline constexpr Message links_in_circle = "its symbolic links lead in a circle";
inline constexpr Message link_of_another =
    "it is a link that somebody else has put there, which the system does not follow";
inline constexpr Message changed_meanwhile =
    "it was changed while this ran, and is left as it is; run it again";
inline constexpr Message pipe_closed = "nobody reads from the pipe any more";

// Signs that nobody sees
inline constexpr Message invisible_sign =
    "U+{:04X}, an invisible sign, before {}: it is left out; 'quoin mend' takes it out of the file";
inline constexpr Message invisible_signs = "U+{:04X} and {} more, invisible signs, before {}: they "
                                           "are left out; 'quoin mend' takes them out of the file";
inline constexpr Message separating_sign =
    "U+{:04X}, an invisible line end, before {}: it is read as "
    "a space; 'quoin mend' makes it one";
inline constexpr Message more_invisible = "{} invisible signs more";

// A file that is named is not what is wanted
inline constexpr Message given_no_file = "there is no such file";
inline constexpr Message given_folder = "it is a folder; name {}";
inline constexpr Message given_device = "it is not a regular file; name {}";
inline constexpr Message given_unreadable = "it cannot be read: {}";
inline constexpr Message given_closed = "it cannot be read; see its permissions";
inline constexpr Message given_empty = "it is empty";
inline constexpr Message given_too_large = "it has {} MiB; at most {} MiB are read";

// Parts of the program
inline constexpr Message module_missing =
    "quoin's module '{}', which this needs, cannot be opened; install quoin anew and whole: {}";

}
