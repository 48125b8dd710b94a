#include "compiler/history/git_changes.hpp"

#include "compiler/history/git_walk.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace quoin::history { namespace git {

namespace {

constexpr std::size_t deepest = 128;              // folders within one another
constexpr std::size_t most_path_bytes = 1U << 26; // of a million files and folders

struct Changes { // paths, against one parent
    std::vector<std::string> added, changed;
    bool removed = false; // something was
};

Tree tree_of(git_commit* commit) {
    Tree tree;
    git_commit_tree(out(tree), commit);
    return tree;
}

bool is_folder(const git_tree_entry* entry) {
    return git_tree_entry_type(entry) == GIT_OBJECT_TREE;
}

// Goes through two trees side by side, by the order that git keeps entries in.
class Comparison {
public:
    Comparison(git_repository* repository, Changes& changes)
        : repository_(repository), changes_(changes) {}

    void compare(const git_tree* before, const git_tree* after, const std::string& folder) {
        std::size_t a = 0, b = 0;
        while (a < size(before) || b < size(after)) {
            const git_tree_entry* old_one =
                a < size(before) ? git_tree_entry_byindex(before, a) : nullptr;
            const git_tree_entry* new_one =
                b < size(after) ? git_tree_entry_byindex(after, b) : nullptr;
            const int order = old_one == nullptr   ? 1
                              : new_one == nullptr ? -1
                                                   : git_tree_entry_cmp(old_one, new_one);
            if (order <= 0) ++a;
            if (order >= 0) ++b;
            entry(order <= 0 ? old_one : nullptr, order >= 0 ? new_one : nullptr, folder);
        }
    }

private:
    static std::size_t size(const git_tree* tree) {
        return tree == nullptr ? 0 : git_tree_entrycount(tree);
    }

    Tree tree(const git_tree_entry* entry) const {
        Tree tree;
        if (entry != nullptr && is_folder(entry))
            git_tree_lookup(out(tree), repository_, git_tree_entry_id(entry));
        return tree;
    }

    void entry(const git_tree_entry* before, const git_tree_entry* after,
               const std::string& folder) {
        if (before != nullptr && after != nullptr &&
            git_oid_equal(git_tree_entry_id(before), git_tree_entry_id(after)) != 0)
            return;
        const std::string path = folder + git_tree_entry_name(after == nullptr ? before : after);
        path_bytes_ += path.size();
        if (depth_ > deepest || path_bytes_ > most_path_bytes) throw TooMuch{};
        const Tree old_tree = tree(before), new_tree = tree(after);
        ++depth_;
        if (old_tree || new_tree) compare(old_tree.get(), new_tree.get(), path + '/');
        --depth_;
        const bool was = before != nullptr && !old_tree, is = after != nullptr && !new_tree;
        if (is) (was ? changes_.changed : changes_.added).push_back(path);
        if (was && !is) changes_.removed = true;
    }

    git_repository* repository_;
    Changes& changes_;
    std::size_t depth_ = 0, path_bytes_ = 0;
};

Changes changes_between(git_repository* repository, git_commit* parent, git_commit* commit) {
    Changes changes;
    const Tree before = parent == nullptr ? Tree{} : tree_of(parent);
    const Tree after = tree_of(commit);
    Comparison(repository, changes).compare(before.get(), after.get(), {});
    return changes;
}

std::vector<std::string> touched(const Changes& changes) {
    std::vector<std::string> paths = changes.changed;
    paths.insert(paths.end(), changes.added.begin(), changes.added.end());
    std::ranges::sort(paths);
    return paths;
}

std::vector<std::string> in_both(const std::vector<std::string>& a,
                                 const std::vector<std::string>& b) {
    std::vector<std::string> both;
    std::ranges::set_intersection(a, b, std::back_inserter(both));
    return both;
}

}

std::map<std::string, std::string> renames(git_repository* repository, git_commit* parent,
                                           git_commit* commit) {
    std::map<std::string, std::string> found;
    changes_between(repository, parent, commit); // that libgit2 can go through them, too
    const Tree before = tree_of(parent), after = tree_of(commit);
    Diff diff;
    if (git_diff_tree_to_tree(out(diff), repository, before.get(), after.get(), nullptr) != 0)
        return found;
    git_diff_find_options options;
    git_diff_find_options_init(&options, GIT_DIFF_FIND_OPTIONS_VERSION);
    options.flags = GIT_DIFF_FIND_RENAMES;
    if (git_diff_find_similar(diff.get(), &options) != 0) return found;
    for (std::size_t i = 0; i < git_diff_num_deltas(diff.get()); ++i) {
        const git_diff_delta* delta = git_diff_get_delta(diff.get(), i);
        if (delta->status == GIT_DELTA_RENAMED)
            found.emplace(delta->new_file.path, delta->old_file.path);
    }
    return found;
}

std::vector<std::string> files_of(git_repository* repository, git_commit* commit) {
    return changes_between(repository, nullptr, commit).added;
}

void for_each_changed(
    git_repository* repository, git_commit* commit, Names& names,
    const std::function<void(const std::string& in_head, const std::string& path)>& use) {
    const Commits parents = parents_of(commit);
    const Changes first =
        changes_between(repository, parents.empty() ? nullptr : parents.front().get(), commit);
    std::vector<std::string> paths = touched(first);
    for (std::size_t i = 1; i < parents.size(); ++i)
        paths = in_both(paths, touched(changes_between(repository, parents[i].get(), commit)));
    for (const std::string& path : paths)
        if (const auto known = names.find(path); known != names.end()) use(known->second, path);
    const bool renamed = first.removed && std::ranges::any_of(first.added, [&](const auto& path) {
                             return names.contains(path);
                         });
    if (!renamed || parents.empty()) return;
    for (const auto& [name, older] : renames(repository, parents.front().get(), commit))
        if (const auto known = names.find(name); known != names.end()) {
            names.insert_or_assign(older, known->second);
            names.erase(name);
        }
}

}}
