// Atomic output over POSIX calls, for they alone can sync, and their error numbers tell a full disk
// from a missing folder.
#include "compiler/base/write_file.hpp"

#include "compiler/base/descriptor.hpp"
#include "compiler/base/folder.hpp"
#include "compiler/base/messages.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <atomic>
#include <cerrno>
#include <filesystem>
#include <system_error>

namespace quoin {

namespace {

namespace fs = std::filesystem;

constexpr int links_followed = 40; // as Linux does, see path_resolution(7)
constexpr int names_tried = 1000;

std::string no_such_folder(const fs::path& file) {
    std::error_code ignored;
    fs::path folder = folder_of(file);
    if (fs::is_directory(folder, ignored)) return fill<messages::nothing_there>();
    while (folder.has_relative_path() && !fs::exists(folder.parent_path(), ignored) &&
           folder.has_parent_path())
        folder = folder.parent_path();
    return fill<messages::no_folder>(folder.string());
}

std::string reason(int error, const fs::path& file) {
    switch (error) {
    case ENOENT:
        return no_such_folder(file);
    case ENOTDIR:
        return fill<messages::not_a_folder>(folder_of(file).string());
    case EISDIR:
        return fill<messages::target_is_folder>();
    case EACCES:
    case EPERM:
        return fill<messages::folder_closed>(folder_of(file).string());
    case ENOSPC:
        return fill<messages::disk_full>();
    case EDQUOT:
        return fill<messages::quota_used_up>();
    case EFBIG:
        return fill<messages::too_long>();
    case EROFS:
        return fill<messages::read_only>();
    case ENAMETOOLONG:
        return fill<messages::name_too_long>();
    case ELOOP:
        return fill<messages::links_in_circle>();
    case EPIPE:
        return fill<messages::pipe_closed>();
    default:
        return std::generic_category().message(error);
    }
}

std::string fault(const std::string& target, const std::string& why) {
    return target == "-" ? fill<messages::cannot_print>(why)
                         : fill<messages::cannot_write>(target, why);
}

// 0, or the error number.
int write_all(int descriptor, std::string_view bytes) {
    while (!bytes.empty()) {
        const ssize_t written = ::write(descriptor, bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) return errno;
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return 0;
}

// What is there is appended to, for `/dev/stdout` may be a file with something in it.
int write_directly(const std::string& target, std::string_view bytes) {
    Descriptor device(::open(target.c_str(), O_WRONLY | O_APPEND | O_NOCTTY | O_CLOEXEC));
    if (device.number() < 0) return errno;
    if (const int error = write_all(device.number(), bytes)) return error;
    return device.close() ? 0 : errno;
}

bool starts_with_any(const std::string& path, std::initializer_list<std::string_view> starts) {
    for (const std::string_view start : starts)
        if (path.starts_with(start)) return true;
    return false;
}

// The file that `target` leads to; none if its links do not end.
std::optional<fs::path> follow_links(fs::path target) {
    std::error_code error;
    for (int i = 0; i < links_followed; ++i) {
        if (!fs::is_symlink(fs::symlink_status(target, error))) return target;
        const fs::path next = fs::read_symlink(target, error);
        if (error) return target;
        target = next.is_absolute() ? next : target.parent_path() / next;
    }
    return std::nullopt;
}

struct Temporary {
    int descriptor = -1; // -1: errno says why
    fs::path name;
};

// Its name does not grow with the target's, which may be as long as names can be. The process and
// a count make it unique on this machine; O_EXCL guards against all others.
Temporary open_temporary(const fs::path& target) {
    static std::atomic<unsigned> count{0};
    for (int i = 0; i < names_tried; ++i) {
        const fs::path name = target.parent_path() /
                              fmt::format(".quoin-{}-{}.pdf.part", ::getpid(), count.fetch_add(1));
        const int descriptor =
            ::open(name.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode_t{0666});
        if (descriptor >= 0 || errno != EEXIST) return {descriptor, name};
    }
    return {};
}

// 0, or the error number; the temporary file is then still there.
int fill_and_rename(Descriptor& file, const fs::path& name, const fs::path& target,
                    std::string_view bytes, const struct stat* old) {
    if (const int error = write_all(file.number(), bytes)) return error;
    if (old != nullptr && ::fchmod(file.number(), old->st_mode & 07777) != 0) return errno;
    if (::fsync(file.number()) != 0 && errno != EINVAL && errno != ENOTSUP) return errno;
    if (!file.close()) return errno;
    return ::rename(name.c_str(), target.c_str()) == 0 ? 0 : errno;
}

int replace(const fs::path& target, std::string_view bytes, const struct stat* old) {
    const Temporary temporary = open_temporary(target);
    if (temporary.descriptor < 0) return errno;
    Descriptor file(temporary.descriptor);
    const int error = fill_and_rename(file, temporary.name, target, bytes, old);
    if (error != 0) ::unlink(temporary.name.c_str());
    return error;
}

}

std::optional<std::string> write_file(const std::string& target, std::string_view bytes) {
    if (target.empty()) return fill<messages::name_empty>();
    if (target.find('\0') != std::string::npos) return fill<messages::name_with_null>();
    int error = 0;
    struct stat there {};
    const bool exists = target != "-" && ::stat(target.c_str(), &there) == 0;
    if (target == "-") {
        error = write_all(STDOUT_FILENO, bytes);
    } else if (exists && S_ISDIR(there.st_mode)) {
        error = EISDIR;
    } else if (exists &&
               (!S_ISREG(there.st_mode) || starts_with_any(target, {"/dev/", "/proc/"}))) {
        error = write_directly(target, bytes);
    } else if (exists && ::access(target.c_str(), W_OK) != 0) {
        return fault(target,
                     errno == EROFS ? reason(EROFS, target) : fill<messages::file_closed>());
    } else {
        const auto file = follow_links(target);
        error = file ? replace(*file, bytes, exists ? &there : nullptr) : ELOOP;
        if (error != 0 && file) return fault(target, reason(error, *file));
    }
    if (error != 0) return fault(target, reason(error, target));
    return std::nullopt;
}

}
