// What one commit changed, by comparing trees: folders that stayed as they were are not gone into.
// Of the module alone.
#pragma once

#include "compiler/history/git_handles.hpp"

#include <functional>
#include <map>
#include <string>
#include <unordered_map>
#include <vector>

namespace quoin::history { namespace git {

// Thrown where one commit names more than can be gone through: a folder that holds itself, or one
// and the same folder many times over at each of many levels.
struct TooMuch {};

// Of a file that a commit has and its first parent has not under that name, the name it had there;
// found as git finds it, by likeness.
std::map<std::string, std::string> renames(git_repository* repository, git_commit* parent,
                                           git_commit* commit);

std::vector<std::string> files_of(git_repository* repository, git_commit* commit);

using Names = std::unordered_map<std::string, std::string>; // by a file's name then, that in HEAD

// Uses each file of `names` that is in the commit as in none of its parents; then takes the older
// names of those that it renamed.
void for_each_changed(
    git_repository* repository, git_commit* commit, Names& names,
    const std::function<void(const std::string& in_head, const std::string& path)>& use);

}}
