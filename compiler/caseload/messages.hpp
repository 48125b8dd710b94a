// What is said of an adviser's folders: what cannot be read, and what to be careful with.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::caseload::messages {

// Finding the résumés
inline constexpr Message no_such_place = "{}: no such file or folder";
inline constexpr Message no_regular_file =
    "{}: neither a file with text in it nor a folder; name the résumés themselves";
inline constexpr Message folder_unreadable =
    "{}: this folder cannot be read and is left out ({}); ask its owner, or leave it out yourself";
inline constexpr Message submodule_left_out =
    "{}: a repository within the repository is not gone into; name it to have it too";
inline constexpr Message no_resume_there =
    "no résumé is there: among {} no name ends in '.resume'; name the folder that they are in";
inline constexpr Message no_resume_left =
    "all {} résumés are left out by what was asked for; ask for less";

// A row that is none
inline constexpr Message cannot_be_read = "cannot be read: {}";

// The cache
inline constexpr Message cache_set_aside =
    "the cache was damaged; it is set aside as {} and made anew";
inline constexpr Message cache_unkept =
    "the cache at {} cannot be written, and what is found is not kept";
inline constexpr Message numbers_unkept =
    "numbers in place of names are not kept without the cache, and will be others next time";

// Care
inline constexpr Message sent_elsewhere =
    "{} is sent to {}; if that place is public, so is every name, address and number in it";
inline constexpr Message stopped =
    "stopped; {} of {} are done and kept, and the next run goes on from there";
inline constexpr Message stopped_unkept = "stopped; {} of {} were done";

}
