// What libgit2 gives out, each freed by its own function. Of the module alone.
#pragma once

#include <git2.h>

#include <memory>
#include <vector>

namespace quoin::history { namespace git {

template<auto free>
struct Freed {
    template<typename T>
    void operator()(T* handle) const {
        free(handle);
    }
};

using Repository = std::unique_ptr<git_repository, Freed<git_repository_free>>;
using Object = std::unique_ptr<git_object, Freed<git_object_free>>;
using Commit = std::unique_ptr<git_commit, Freed<git_commit_free>>;
using Tree = std::unique_ptr<git_tree, Freed<git_tree_free>>;
using TreeEntry = std::unique_ptr<git_tree_entry, Freed<git_tree_entry_free>>;
using Blob = std::unique_ptr<git_blob, Freed<git_blob_free>>;
using Diff = std::unique_ptr<git_diff, Freed<git_diff_free>>;
using Remote = std::unique_ptr<git_remote, Freed<git_remote_free>>;
using Commits = std::vector<Commit>;

// Lets a function of libgit2 put what it makes into a handle.
template<typename Handle>
class Out {
public:
    explicit Out(Handle& handle) : handle_(handle) {}
    ~Out() { handle_.reset(made_); }
    Out(const Out&) = delete;
    Out& operator=(const Out&) = delete;
    operator typename Handle::pointer *() { return &made_; }

private:
    Handle& handle_;
    typename Handle::pointer made_ = nullptr;
};

template<typename Handle>
Out<Handle> out(Handle& handle) {
    return Out<Handle>(handle);
}

}}
