// Part files over POSIX calls, for they alone can lock and sync, and their error numbers tell a
// full disk from a missing folder.
#include "compiler/base/part_file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sched.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <atomic>
#include <cerrno>
#include <climits>
#include <csignal>
#include <cstdint>
#include <string_view>
#include <utility>

namespace quoin {

namespace {

namespace fs = std::filesystem;

constexpr int names_tried = 1000;

// --- the names, where a handler of signals can read them

enum SlotState : int { slot_free, slot_taken, slot_ready };

struct Slot {
    std::atomic<int> state{slot_free};
    char name[PATH_MAX]{};
};
std::array<Slot, 64> slots; // more than there are hands; without one a name is not looked after
static_assert(std::atomic<int>::is_always_lock_free, "a handler of signals reads it");

int keep_in_slot(const std::string& name) {
    if (name.size() >= sizeof(Slot::name)) return -1;
    for (std::size_t i = 0; i < slots.size(); ++i) {
        int expected = slot_free;
        if (!slots[i].state.compare_exchange_strong(expected, slot_taken)) continue;
        std::ranges::copy(name, slots[i].name);
        slots[i].name[name.size()] = '\0';
        slots[i].state = slot_ready;
        return static_cast<int>(i);
    }
    return -1;
}

void free_slot(int slot) {
    if (slot >= 0) slots[static_cast<std::size_t>(slot)].state = slot_free;
}

// --- a process that stops waits for no part file to come to be behind its back

std::atomic<bool> stops = false;
std::atomic<int> being_opened = 0;

// From before a part file is there until its name is in a slot. A signal waits until then, for its
// handler would wait for this thread in vain.
class Opening {
public:
    Opening() {
        sigset_t all;
        ::sigfillset(&all);
        ::pthread_sigmask(SIG_SETMASK, &all, &before_);
        ++being_opened;
        if (!stops) return;
        --being_opened;
        for (;;)
            ::pause();
    }
    ~Opening() {
        --being_opened;
        ::pthread_sigmask(SIG_SETMASK, &before_, nullptr);
    }
    Opening(const Opening&) = delete;
    Opening& operator=(const Opening&) = delete;

private:
    sigset_t before_{};
};

extern "C" void stop(int signal) {
    take_parts_away();
    ::raise(signal); // its own way again, once this handler is left
}

// --- names and locks

// FNV-1a: the name does not grow with the target's, which may be as long as names can be.
std::uint64_t mark_of(std::string_view name) {
    std::uint64_t mark = 0xcbf29ce484222325U;
    for (const char c : name)
        mark = (mark ^ static_cast<unsigned char>(c)) * 0x100000001b3U;
    return mark;
}

bool is_named(int descriptor, const std::string& name) {
    struct stat open {
    }, named{};
    return ::fstat(descriptor, &open) == 0 && ::lstat(name.c_str(), &named) == 0 &&
           open.st_dev == named.st_dev && open.st_ino == named.st_ino;
}

// Whether the name is known to lead nowhere any more, or elsewhere.
bool is_lost(int descriptor, const std::string& name) {
    struct stat open {
    }, named{};
    if (::lstat(name.c_str(), &named) != 0) return errno == ENOENT;
    return ::fstat(descriptor, &open) == 0 &&
           (open.st_dev != named.st_dev || open.st_ino != named.st_ino);
}

bool lock(int descriptor) {
    return ::flock(descriptor, LOCK_EX | LOCK_NB) == 0;
}

// Whether a part file of that name was there that nobody holds, and is gone now.
bool clear_left_over(const std::string& name) {
    const Descriptor file(
        open_calmly(name.c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK));
    struct stat status {};
    return file.number() >= 0 && ::fstat(file.number(), &status) == 0 && S_ISREG(status.st_mode) &&
           lock(file.number()) && is_named(file.number(), name) && ::unlink(name.c_str()) == 0;
}

// As the file that is replaced has them; only one that would be more open is a fault.
int keep_permissions(int descriptor, const fs::path& target) {
    struct stat old {
    }, own{};
    if (::stat(target.c_str(), &old) != 0 || ::fstat(descriptor, &own) != 0) return 0;
    if ((old.st_mode & 07777U) == (own.st_mode & 07777U)) return 0;
    const bool is_refused = ::fchmod(descriptor, old.st_mode & 07777U) != 0;
    return is_refused && (own.st_mode & ~old.st_mode & 0777U) != 0 ? errno : 0;
}

}

PartFile::PartFile(const fs::path& target) : target_(target) {
    const std::uint64_t mark = mark_of(target.filename().native());
    for (int i = 0; i < names_tried; ++i) {
        const fs::path name = target.parent_path() / fmt::format(".quoin-{:016x}-{}.part", mark, i);
        error_ = open(name);
        if (error_ == EEXIST && clear_left_over(name)) error_ = open(name);
        if (error_ != EEXIST) return;
    }
}

// EEXIST, too, if somebody who took it for a left-over held it before it could be locked. A file
// system without locks does as well: there nothing is taken for a left-over.
int PartFile::open(const fs::path& name) {
    std::string own = name.native();
    {
        const Opening opening;
        file_ = Descriptor(
            open_calmly(own.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode_t{0666}));
        if (file_.number() < 0) return errno;
        slot_ = keep_in_slot(own);
    }
    const bool is_held = lock(file_.number()) || errno != EWOULDBLOCK;
    if (is_held && !is_lost(file_.number(), own)) {
        name_ = std::move(own);
        return 0;
    }
    free_slot(std::exchange(slot_, -1));
    return EEXIST;
}

PartFile::PartFile(PartFile&& other) noexcept
    : target_(std::move(other.target_)), name_(std::exchange(other.name_, {})),
      file_(std::move(other.file_)), old_(std::move(other.old_)), is_new_(other.is_new_),
      error_(other.error_), slot_(std::exchange(other.slot_, -1)) {}

PartFile::~PartFile() {
    if (!name_.empty()) ::unlink(name_.c_str());
    free_slot(slot_);
}

int PartFile::write_safely(std::string_view bytes) {
    if (const int error = write_all(number(), bytes)) return error;
    if (const int error = keep_permissions(number(), target_)) return error;
    if (::fsync(number()) != 0 && errno != EINVAL && errno != ENOTSUP) return errno;
    // some file systems tell only at a close that the disk is full; that of a copy keeps the lock
    Descriptor copy(::fcntl(number(), F_DUPFD_CLOEXEC, 0));
    return copy.number() >= 0 && copy.close() ? 0 : errno;
}

// Whether the part file and its target have changed places.
bool PartFile::keep_old() {
    Descriptor old(open_calmly(target_.c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK));
    if (old.number() < 0 || !lock(old.number())) return false;
    if (::renameat2(AT_FDCWD, name_.c_str(), AT_FDCWD, target_.c_str(), RENAME_EXCHANGE) != 0)
        return false;
    old_ = std::move(old);
    return true;
}

int PartFile::put_in_place(bool keeps_old) {
    struct stat there {};
    is_new_ = keeps_old && ::lstat(target_.c_str(), &there) != 0 && errno == ENOENT;
    if (keeps_old && !is_new_ && keep_old()) return 0;
    if (::rename(name_.c_str(), target_.c_str()) != 0) return errno;
    name_.clear();
    free_slot(std::exchange(slot_, -1));
    return 0;
}

void PartFile::put_back() {
    if (old_.number() >= 0 && is_named(old_.number(), name_) && is_named(number(), target_))
        ::renameat2(AT_FDCWD, name_.c_str(), AT_FDCWD, target_.c_str(), RENAME_EXCHANGE);
    else if (is_new_ && name_.empty() && is_named(number(), target_))
        ::unlink(target_.c_str());
}

int write_all(int descriptor, std::string_view bytes) {
    while (!bytes.empty()) {
        const ssize_t written = ::write(descriptor, bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) return errno;
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return 0;
}

void take_parts_away() {
    constexpr int patience = 100'000;
    stops = true;
    for (int i = 0; i < patience && being_opened > 0; ++i)
        ::sched_yield();
    for (const Slot& slot : slots)
        if (slot.state == slot_ready) ::unlink(slot.name);
}

void take_parts_away_when_stopped() {
    for (const int signal : {SIGINT, SIGTERM, SIGHUP, SIGPIPE}) {
        struct sigaction action {};
        if (::sigaction(signal, nullptr, &action) != 0 || action.sa_handler == SIG_IGN) continue;
        action = {};
        action.sa_handler = stop;
        action.sa_flags = static_cast<int>(SA_RESETHAND | SA_RESTART);
        ::sigaction(signal, &action, nullptr);
    }
}

}
