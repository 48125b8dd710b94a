#include "compiler/base/file_watch.hpp"

#include "compiler/base/folder.hpp"

#include <sys/inotify.h>
#include <unistd.h>

#include <array>
#include <cstddef>
#include <cstring>
#include <utility>

namespace quoin {

namespace {

constexpr std::uint32_t watched_events =
    IN_CLOSE_WRITE | IN_MOVED_TO | IN_MOVED_FROM | IN_DELETE | IN_ONLYDIR;

}

FileWatch::FileWatch() : queue_(inotify_init1(IN_NONBLOCK | IN_CLOEXEC)) {}

bool FileWatch::watch(std::set<std::filesystem::path> files) {
    if (files == files_) return false;
    files_ = std::move(files);
    std::set<std::filesystem::path> folders;
    for (const auto& file : files_)
        folders.insert(folder_of(file));
    std::erase_if(numbers_, [&](const auto& known) {
        if (folders.contains(known.first)) return false;
        inotify_rm_watch(queue_.number(), known.second);
        folders_.erase(known.second);
        return true;
    });
    bool added = false;
    for (const auto& folder : folders) {
        if (numbers_.contains(folder)) continue;
        const int number = inotify_add_watch(queue_.number(), folder.c_str(), watched_events);
        if (number < 0) continue; // it is not there
        numbers_[folder] = number;
        folders_[number] = folder;
        added = true;
    }
    return added;
}

void FileWatch::add_change(int folder, const char* name,
                           std::set<std::filesystem::path>& changed) const {
    const auto known = folders_.find(folder);
    if (known == folders_.end()) return;
    for (const auto& path : {known->second / name, std::filesystem::path(name)})
        if (files_.contains(path) && folder_of(path) == known->second) changed.insert(path);
}

std::set<std::filesystem::path> FileWatch::changes() {
    constexpr std::size_t queue_bytes = 16384;
    alignas(inotify_event) std::array<char, queue_bytes> events{};
    std::set<std::filesystem::path> changed;
    for (ssize_t size = 0; (size = ::read(queue_.number(), events.data(), events.size())) > 0;) {
        for (std::size_t at = 0; at < static_cast<std::size_t>(size);) {
            inotify_event event{};
            std::memcpy(&event, events.data() + at, sizeof event);
            if ((event.mask & IN_Q_OVERFLOW) != 0) changed = files_; // more than are told
            if (event.len > 0) add_change(event.wd, events.data() + at + sizeof event, changed);
            at += sizeof event + event.len;
        }
    }
    return changed;
}

}
