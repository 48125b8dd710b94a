// What can be wrong with earlier drafts.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::history::messages {

inline constexpr Message no_repository =
    "is in no git repository, so there is no earlier draft of it: 'git init' in its folder begins "
    "one; to compare two files, name both";
inline constexpr Message bare =
    "is in a bare git repository, which has no work tree: clone it, and name the file in the clone";
inline constexpr Message no_commits =
    "nothing was committed yet, so there is no earlier draft: 'git add' and 'git commit' keep one";
inline constexpr Message unreadable_history = "its git repository cannot be read: {}";
inline constexpr Message unknown_revision =
    "there is no revision {} in its git repository; 'git log --oneline' lists those there are";
inline constexpr Message not_in_revision =
    "was not there at revision {}, by this name or by one that it was renamed from; 'git log "
    "--follow' lists the drafts of it there are";
inline constexpr Message is_submodule =
    "is a submodule in its git repository: name a file within it, whose drafts are its own";
inline constexpr Message not_text =
    "is no file at revision {}, but a folder or a symbolic link: name the file itself";
inline constexpr Message too_much =
    "a commit in its git repository names more files than are gone through, millions, or folders "
    "within each other without end: keep résumés in a repository of their own";
inline constexpr Message cut_off_before =
    "this is a shallow clone, and revision {} is older than it reaches: 'git fetch --unshallow' "
    "brings the rest";
inline constexpr Message cut_off =
    "this is a shallow clone: older drafts are not here; 'git fetch --unshallow' brings them";

}
