// Files on the disk watched for changes, by inotify. What is watched are their folders, so that a
// file which an editor writes anew and renames over the old one is seen too, and one that comes to
// be.
#pragma once

#include "compiler/base/descriptor.hpp"

#include <filesystem>
#include <map>
#include <set>

namespace quoin {

class FileWatch {
public:
    FileWatch();

    // These, and no longer others. True if some may have changed before they were watched.
    bool watch(std::set<std::filesystem::path> files);
    int descriptor() const { return queue_.number(); } // readable when something may have changed
    // Those of the files that have changed since the last call. Does not wait.
    std::set<std::filesystem::path> changes();

private:
    void add_change(int folder, const char* name, std::set<std::filesystem::path>& changed) const;

    Descriptor queue_;
    std::set<std::filesystem::path> files_;
    std::map<std::filesystem::path, int> numbers_; // of the folders
    std::map<int, std::filesystem::path> folders_;
};

}
