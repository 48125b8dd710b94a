// The walk through a log, newest commit first, each once. Our own, for a shallow clone's commits
// name parents that are not there, at which libgit2's stops. Of the module alone.
#pragma once

#include "compiler/history/git_handles.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <queue>
#include <set>
#include <vector>

namespace quoin::history { namespace git {

Commits parents_of(git_commit* commit); // those that are there

class Walk {
public:
    explicit Walk(Commit from);
    Commit next(); // null at the end

private:
    void add(Commit commit);

    using Id = std::array<unsigned char, GIT_OID_RAWSZ>;
    struct Waiting {
        std::int64_t time = 0;
        std::size_t number = 0; // in the order they were come to
        std::size_t commit = 0;
        bool operator<(const Waiting& other) const { // the largest comes first
            return time != other.time ? time < other.time : number > other.number;
        }
    };

    std::priority_queue<Waiting> waiting_;
    std::set<Id> seen_;
    std::size_t count_ = 0;
    std::vector<Commit> commits_;
    std::vector<std::size_t> unused_; // places in `commits_`
};

}}
