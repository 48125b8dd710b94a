// A repository as libgit2 has opened it. Of the module alone.
#pragma once

#include "compiler/history/git_handles.hpp"
#include "compiler/history/repository.hpp"

#include <optional>
#include <string>
#include <utility>

namespace quoin::history {

std::string why_not(); // libgit2's last call failed

class GitRepository : public Repository {
public:
    explicit GitRepository(git::Repository opened) : git_(std::move(opened)) {}

    std::string root() const override { return git_repository_workdir(git_.get()); }
    std::string identity() const override;
    std::vector<std::string> remotes() const override;
    Outcome<Drafts> drafts(const std::string& path) override;
    Outcome<Text> text_at(const std::string& path, const std::string& revision) override;
    Outcome<Counts> counts() override;

private:
    Drafts all_drafts(const std::string& path) const;
    Counts all_counts() const;
    std::optional<Fault> no_head(const std::string& path) const;
    bool shallow() const { return git_repository_is_shallow(git_.get()) == 1; }
    git::Commit commit_of(const std::string& revision) const;
    std::string name_before(const git::Commits& parents, git_commit* commit,
                            const std::string& path) const;
    void step(git_commit* commit, std::string& path, Drafts* drafts) const;
    std::string name_at(const git::Commit& revision, const std::string& path) const;
    Outcome<Text> blob_text(const git::Commit& commit, const std::string& path,
                            const std::string& revision) const;

    git::Repository git_;
};

}
