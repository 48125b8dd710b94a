// Earlier drafts, as a git repository keeps them: what touched a file, and its text then. An
// abstract class: all that knows libgit2 is in the module `history`, and this header is what both
// sides of it share, so it stands on nothing of the program.
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <string>
#include <variant>
#include <vector>

namespace quoin::history {

enum class Problem {
    no_repository,    // the file is in none
    bare,             // a repository without a work tree, so without a draft to compare
    no_commits,       // nothing was committed yet
    unreadable,       // `detail`: why
    unknown_revision, // `detail`: what was asked for
    not_in_revision,  // `detail`: the revision; the file was not there by any of its names
    submodule,        // what stands there is another repository
    not_text,         // a folder, or a symbolic link
    too_much,         // one commit names more files than are gone through
    cut_off,          // a shallow clone: what was asked for is older than it reaches
};

struct Fault {
    Problem problem{};
    std::string path;
    std::string detail = {};
};

template<typename T>
using Outcome = std::variant<T, Fault>;

struct Draft {           // of one file: a commit that changed it
    std::string commit;  // forty hexadecimal digits
    std::string path;    // the file's own then, from the repository's root
    std::int64_t time{}; // of the commit, in seconds since 1970-01-01T00:00Z
    std::string summary; // the first line of what was said of it
};

struct Drafts {
    std::vector<Draft> all; // newest first
    bool cut_off = false;   // a shallow clone: what is older is not here
};

struct Moment { // at which a commit changed a file
    std::string commit;
    std::string path; // the file's own then, from the root
    std::int64_t time{};
};

struct Past {                      // of one file
    std::string blob;              // what git calls its text in HEAD
    std::vector<Moment> moments{}; // newest first
};

struct Counts {
    std::map<std::string, Past> of; // by the path that a file has in HEAD, from the root
    bool cut_off = false;
};

struct Text {
    std::string bytes;
    std::string commit; // that they are of
    std::string path;   // the file's own then, from the root
};

// The repository that a file is in. Whatever revision is asked for, `HEAD` or any that git's own
// `gitrevisions(7)` allows, is a commit's. Not for several threads at once.
class Repository {
public:
    virtual ~Repository() = default;

    virtual std::string
    root() const = 0; // the work tree's folder, no link in it, with `/` at its end
    virtual std::string identity() const = 0; // HEAD's commit, or nothing: a key for caches
    virtual std::vector<std::string> remotes() const = 0; // their addresses, as configured

    // `path` from the root, for all of these. Its commits from HEAD back; a rename is followed to
    // the name before it. A merge counts where its file is like that of none of its parents.
    virtual Outcome<Drafts> drafts(const std::string& path) = 0;
    // The file as it was: by its own name there, or by the one it had before it was renamed.
    virtual Outcome<Text> text_at(const std::string& path, const std::string& revision) = 0;
    // Every file of HEAD, by one walk through the whole log: in commits times what each changed.
    virtual Outcome<Counts> counts() = 0;
};

using OpenedRepository = Outcome<Repository*>; // made by `new`

// What the module exports as `quoin_history`.
class Opener {
public:
    virtual ~Opener() = default;
    // Of `path`, a file or a folder that is there, absolute and without links.
    virtual OpenedRepository open(const std::string& path) = 0;
};

}
