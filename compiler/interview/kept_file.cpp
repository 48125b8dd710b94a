// The lock is on the file itself and goes with it; the system lets go of it when a run is killed.
// Each saving makes a new file of the same name, and holds that one in the old one's stead.
#include "compiler/interview/kept_file.hpp"

#include "compiler/base/write_file.hpp"
#include "compiler/interview/messages.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>
#include <utility>

namespace quoin::interview {

namespace {

bool is_same_file(int descriptor, const std::filesystem::path& path) {
    struct stat held {
    }, there{};
    return ::fstat(descriptor, &held) == 0 && ::stat(path.c_str(), &there) == 0 &&
           held.st_dev == there.st_dev && held.st_ino == there.st_ino;
}

}

bool KeptFile::is_there() const {
    std::error_code ignored;
    return std::filesystem::exists(path_, ignored);
}

std::optional<std::string> KeptFile::hold() {
    constexpr int tries = 100; // another run may be saving, and the file be a new one
    for (int i = 0; i < tries; ++i) {
        Descriptor file(open_calmly(path_.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
        if (file.number() < 0) return std::nullopt; // whoever reads it says why
        const bool taken = ::flock(file.number(), LOCK_EX | LOCK_NB) != 0 && errno == EWOULDBLOCK;
        if (taken) return fill<messages::another_run>(path_.string());
        if (!is_same_file(file.number(), path_)) continue;
        held_ = std::move(file);
        return std::nullopt;
    }
    return fill<messages::another_run>(path_.string());
}

std::optional<std::string> KeptFile::save(const Kept& kept) {
    if (auto fault = write_file(path_.string(), kept_text(kept))) return fault;
    return hold();
}

void KeptFile::remove() {
    std::error_code ignored;
    std::filesystem::remove(path_, ignored);
}

}
