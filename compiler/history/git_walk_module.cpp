#include "compiler/history/git_walk.hpp"

#include <algorithm>
#include <utility>

namespace quoin::history { namespace git {

Commits parents_of(git_commit* commit) {
    Commits parents;
    for (unsigned int i = 0; i < git_commit_parentcount(commit); ++i) {
        Commit parent;
        if (git_commit_parent(out(parent), commit, i) == 0) parents.push_back(std::move(parent));
    }
    return parents;
}

Walk::Walk(Commit from) {
    if (from) add(std::move(from));
}

void Walk::add(Commit commit) {
    Id id{};
    std::copy_n(git_commit_id(commit.get())->id, id.size(), id.begin());
    if (!seen_.insert(id).second) return;
    std::size_t at = commits_.size();
    if (unused_.empty()) {
        commits_.emplace_back();
    } else {
        at = unused_.back();
        unused_.pop_back();
    }
    waiting_.push({git_commit_time(commit.get()), count_++, at});
    commits_[at] = std::move(commit);
}

Commit Walk::next() {
    if (waiting_.empty()) return nullptr;
    const std::size_t at = waiting_.top().commit;
    waiting_.pop();
    Commit commit = std::move(commits_[at]);
    unused_.push_back(at);
    for (Commit& parent : parents_of(commit.get()))
        add(std::move(parent));
    return commit;
}

}}
