// Drafts, texts and counts, as the trees of a repository's commits have them.
#include "compiler/history/git_repository.hpp"

#include "compiler/history/git_changes.hpp"
#include "compiler/history/git_walk.hpp"

namespace quoin::history {

namespace {

std::string hexadecimal(const git_oid& id) {
    std::string digits(GIT_OID_HEXSZ, '0');
    git_oid_fmt(digits.data(), &id);
    return digits;
}

// The entry at `path` of a commit; null if there is none.
git::TreeEntry entry_at(git_commit* commit, const std::string& path) {
    git::Tree tree;
    git::TreeEntry entry;
    if (git_commit_tree(git::out(tree), commit) == 0)
        git_tree_entry_bypath(git::out(entry), tree.get(), path.c_str());
    return entry;
}

bool same(const git::TreeEntry& a, const git::TreeEntry& b) {
    return a && b && git_oid_equal(git_tree_entry_id(a.get()), git_tree_entry_id(b.get())) != 0;
}

Draft draft_of(git_commit* commit, const std::string& path) {
    const char* summary = git_commit_summary(commit);
    return {hexadecimal(*git_commit_id(commit)), path, git_commit_time(commit),
            summary == nullptr ? "" : summary};
}

// What goes through whole trees.
template<typename T, typename Work>
Outcome<T> bounded(const std::string& path, const Work& work) {
    try {
        return work();
    } catch (const git::TooMuch&) {
        return Fault{Problem::too_much, path};
    }
}

}

std::string why_not() {
    const git_error* error = git_error_last();
    return error == nullptr || error->message == nullptr ? "for an unknown reason" : error->message;
}

std::string GitRepository::identity() const {
    git_oid head;
    if (git_reference_name_to_id(&head, git_.get(), "HEAD") != 0) return {};
    return hexadecimal(head);
}

std::vector<std::string> GitRepository::remotes() const {
    git_strarray names{};
    std::vector<std::string> addresses;
    if (git_remote_list(&names, git_.get()) != 0) return addresses;
    for (std::size_t i = 0; i < names.count; ++i) {
        git::Remote remote;
        if (git_remote_lookup(git::out(remote), git_.get(), names.strings[i]) != 0) continue;
        if (const char* address = git_remote_url(remote.get())) addresses.emplace_back(address);
    }
    git_strarray_dispose(&names);
    return addresses;
}

std::optional<Fault> GitRepository::no_head(const std::string& path) const {
    git_oid head;
    const int code = git_reference_name_to_id(&head, git_.get(), "HEAD");
    // By its id: of a name that it cannot look up libgit2 1.5 keeps the reference.
    git::Commit commit;
    if (code == 0 && git_commit_lookup(git::out(commit), git_.get(), &head) == 0)
        return std::nullopt;
    if (code == GIT_ENOTFOUND || code == GIT_EUNBORNBRANCH)
        return Fault{Problem::no_commits, root() + path};
    return Fault{Problem::unreadable, root() + path, why_not()};
}

git::Commit GitRepository::commit_of(const std::string& revision) const {
    git::Object named;
    git::Object peeled;
    if (git_revparse_single(git::out(named), git_.get(), revision.c_str()) == 0)
        git_object_peel(git::out(peeled), named.get(), GIT_OBJECT_COMMIT);
    return git::Commit(reinterpret_cast<git_commit*>(peeled.release()));
}

// What the file was called in the first parent where it is not there by its own name.
std::string GitRepository::name_before(const git::Commits& parents, git_commit* commit,
                                       const std::string& path) const {
    if (parents.empty()) return {};
    const auto renamed = git::renames(git_.get(), parents.front().get(), commit);
    const auto found = renamed.find(path);
    return found == renamed.end() ? std::string{} : found->second;
}

// Goes over one commit of the walk: keeps it if it changed the file, and takes on the file's older
// name.
void GitRepository::step(git_commit* commit, std::string& path, Drafts* drafts) const {
    const git::TreeEntry now = entry_at(commit, path);
    if (!now) return; // of a branch that had it not
    const git::Commits parents = git::parents_of(commit);
    bool there = false;
    for (const git::Commit& parent : parents) {
        const git::TreeEntry before = entry_at(parent.get(), path);
        if (same(now, before)) return;
        there = there || before;
    }
    if (drafts != nullptr) drafts->all.push_back(draft_of(commit, path));
    if (there) return;
    if (std::string older = name_before(parents, commit, path); !older.empty())
        path = std::move(older);
}

Drafts GitRepository::all_drafts(const std::string& path) const {
    Drafts drafts;
    drafts.cut_off = shallow();
    std::string name = path;
    git::Walk walk(commit_of("HEAD"));
    while (const git::Commit commit = walk.next())
        step(commit.get(), name, &drafts);
    return drafts;
}

Outcome<Drafts> GitRepository::drafts(const std::string& path) {
    if (auto fault = no_head(path)) return *std::move(fault);
    return bounded<Drafts>(root() + path, [&] { return all_drafts(path); });
}

// The name that HEAD's `path` had at that commit: the walk from HEAD comes to it, and what it took
// on until then is the name.
std::string GitRepository::name_at(const git::Commit& revision, const std::string& path) const {
    std::string name = path;
    git::Walk walk(commit_of("HEAD"));
    while (const git::Commit commit = walk.next()) {
        if (git_oid_equal(git_commit_id(commit.get()), git_commit_id(revision.get())) != 0)
            return name;
        step(commit.get(), name, nullptr);
    }
    return path;
}

Outcome<Text> GitRepository::blob_text(const git::Commit& commit, const std::string& path,
                                       const std::string& revision) const {
    const git::TreeEntry entry = entry_at(commit.get(), path);
    const Fault fault{Problem::not_in_revision, root() + path, revision};
    if (!entry) return fault;
    const git_filemode_t mode = git_tree_entry_filemode(entry.get());
    if (mode == GIT_FILEMODE_COMMIT) return Fault{Problem::submodule, root() + path};
    if (mode != GIT_FILEMODE_BLOB && mode != GIT_FILEMODE_BLOB_EXECUTABLE)
        return Fault{Problem::not_text, root() + path, revision};
    git::Blob blob;
    if (git_blob_lookup(git::out(blob), git_.get(), git_tree_entry_id(entry.get())) != 0)
        return Fault{Problem::unreadable, root() + path, why_not()};
    const auto* bytes = static_cast<const char*>(git_blob_rawcontent(blob.get()));
    return Text{std::string(bytes, static_cast<std::size_t>(git_blob_rawsize(blob.get()))),
                hexadecimal(*git_commit_id(commit.get())), path};
}

Outcome<Text> GitRepository::text_at(const std::string& path, const std::string& revision) {
    if (auto fault = no_head(path)) return *std::move(fault);
    const git::Commit commit = commit_of(revision);
    if (!commit)
        return Fault{shallow() ? Problem::cut_off : Problem::unknown_revision, root() + path,
                     revision};
    if (entry_at(commit.get(), path)) return blob_text(commit, path, revision);
    Outcome<Text> text =
        bounded<Text>({}, [&] { return blob_text(commit, name_at(commit, path), revision); });
    if (auto* fault = std::get_if<Fault>(&text)) fault->path = root() + path;
    return text;
}

Counts GitRepository::all_counts() const {
    Counts counts;
    counts.cut_off = shallow();
    git::Walk walk(commit_of("HEAD"));
    git::Names names; // by the name at the commit where the walk is, the one in HEAD
    for (const std::string& path : git::files_of(git_.get(), commit_of("HEAD").get()))
        names.emplace(path, path);
    while (const git::Commit commit = walk.next())
        git::for_each_changed(git_.get(), commit.get(), names,
                              [&](const std::string& in_head, const std::string& path) {
                                  counts.of[in_head].moments.push_back(
                                      {hexadecimal(*git_commit_id(commit.get())), path,
                                       git_commit_time(commit.get())});
                              });
    const git::Commit head = commit_of("HEAD");
    for (auto& [path, past] : counts.of)
        if (const git::TreeEntry entry = entry_at(head.get(), path))
            past.blob = hexadecimal(*git_tree_entry_id(entry.get()));
    return counts;
}

Outcome<Counts> GitRepository::counts() {
    if (auto fault = no_head({})) return *std::move(fault);
    return bounded<Counts>(root(), [&] { return all_counts(); });
}

}
