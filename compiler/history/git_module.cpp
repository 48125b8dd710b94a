// The module `history`: earlier drafts, by libgit2. It reads alone, so a repository of another
// user's is read like one's own: nothing that its settings name is run.
#include "compiler/history/git_repository.hpp"

#include <utility>

namespace quoin::history { namespace {

class GitOpener : public Opener {
public:
    GitOpener() {
        git_libgit2_init();
        git_libgit2_opts(GIT_OPT_SET_OWNER_VALIDATION, 0);
        // of a folder with thousands of files it would take most of the time
        git_libgit2_opts(GIT_OPT_ENABLE_STRICT_HASH_VERIFICATION, 0);
        // one walk comes to nothing twice but a commit's parents; its memory is to stay flat
        constexpr std::size_t megabyte = 1 << 20;
        git_libgit2_opts(GIT_OPT_SET_CACHE_MAX_SIZE, static_cast<ssize_t>(4 * megabyte));
        git_libgit2_opts(GIT_OPT_SET_MWINDOW_SIZE, megabyte);
        git_libgit2_opts(GIT_OPT_SET_MWINDOW_MAPPED_LIMIT, 8 * megabyte);
    }
    ~GitOpener() override { git_libgit2_shutdown(); }
    GitOpener(const GitOpener&) = delete;
    GitOpener& operator=(const GitOpener&) = delete;

    OpenedRepository open(const std::string& path) override {
        git::Repository opened;
        const int code = git_repository_open_ext(git::out(opened), path.c_str(), 0, nullptr);
        if (code == GIT_ENOTFOUND) return Fault{Problem::no_repository, path};
        if (code != 0) return Fault{Problem::unreadable, path, why_not()};
        if (git_repository_is_bare(opened.get()) == 1) return Fault{Problem::bare, path};
        return new GitRepository(std::move(opened));
    }
};

}}

extern "C" __attribute__((visibility("default"))) quoin::history::Opener* quoin_history();

quoin::history::Opener* quoin_history() {
    return new quoin::history::GitOpener;
}
