// Which targets are replaced and which written directly, and what is said when it cannot be done.
#include "compiler/base/write_file.hpp"

#include "compiler/base/descriptor.hpp"
#include "compiler/base/file_kinds.hpp"
#include "compiler/base/folder.hpp"
#include "compiler/base/messages.hpp"
#include "compiler/base/part_file.hpp"
#include "compiler/base/printable.hpp"
#include "compiler/base/whole_file.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <filesystem>
#include <initializer_list>
#include <system_error>
#include <utility>
#include <vector>

namespace quoin {

namespace {

namespace fs = std::filesystem;

constexpr int links_followed = 40; // as Linux does, see path_resolution(7)

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
                         : fill<messages::cannot_write>(printable_name(target), why);
}

// What is there is appended to, for `/dev/stdout` may be a file with something in it.
int append_to(const std::string& target, std::string_view bytes) {
    Descriptor device(open_calmly(target.c_str(), O_WRONLY | O_APPEND | O_NOCTTY | O_CLOEXEC));
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

// Under way to its target: as a part file, or to be written directly.
struct Prepared {
    const FileOutput* output = nullptr;
    std::optional<PartFile> part;
};

std::string own_fault(const FileOutput& output, int error, const fs::path& file) {
    return fault(output.target, reason(error, file));
}

// Why nothing can be written there, by what the system says of it; none if it can.
std::optional<std::string> closed(const std::string& target) {
    struct stat there {};
    if (::stat(target.c_str(), &there) != 0) {
        if (errno == ENOENT) return std::nullopt;
        const int error = errno;
        const bool is_link =
            error == EACCES && ::lstat(target.c_str(), &there) == 0 && S_ISLNK(there.st_mode);
        return fault(target, is_link ? fill<messages::link_of_another>() : reason(error, target));
    }
    if (S_ISDIR(there.st_mode)) return fault(target, reason(EISDIR, target));
    if (!is_replaceable(target) || ::access(target.c_str(), W_OK) == 0) return std::nullopt;
    return fault(target, errno == EROFS ? reason(EROFS, target) : fill<messages::file_closed>());
}

// `/dev/stdout` may be one, too.
bool is_terminal(const std::string& target) {
    if (target == "-") return ::isatty(STDOUT_FILENO) == 1;
    std::error_code ignored;
    if (!fs::is_character_file(target, ignored)) return false;
    const Descriptor device(::open(target.c_str(), O_WRONLY | O_NOCTTY | O_CLOEXEC));
    return device.number() >= 0 && ::isatty(device.number()) == 1;
}

std::optional<std::string> prepare(const FileOutput& output, Prepared& prepared) {
    prepared.output = &output;
    const std::string& target = output.target;
    if (begins_as_pdf(output.bytes) && is_terminal(target))
        return fill<messages::pdf_on_terminal>();
    if (target == "-") return std::nullopt;
    if (target.empty()) return fill<messages::name_empty>();
    if (target.find('\0') != std::string::npos) return fill<messages::name_with_null>();
    if (auto why = closed(target)) return why;
    if (!is_replaceable(target)) return std::nullopt;
    const auto file = follow_links(target);
    if (!file) return own_fault(output, ELOOP, target);
    PartFile part(*file);
    int error = part.error();
    if (error == 0) error = part.write_safely(output.bytes);
    if (error != 0) return own_fault(output, error, *file);
    prepared.part.emplace(std::move(part));
    return std::nullopt;
}

bool still_holds(const std::string& target, const std::string& bytes) {
    std::string held;
    return read_whole_file(target, held) == 0 && held == bytes;
}

std::optional<std::string> write_directly(const FileOutput& output) {
    const int error = output.target == "-" ? write_all(STDOUT_FILENO, output.bytes)
                                           : append_to(output.target, output.bytes);
    if (error != 0) return own_fault(output, error, output.target);
    return std::nullopt;
}

std::optional<std::string> put_in_place(Prepared& prepared, bool is_last) {
    const FileOutput& output = *prepared.output;
    if (output.over && !still_holds(output.target, *output.over))
        return fault(output.target, fill<messages::changed_meanwhile>());
    if (const int error = prepared.part->put_in_place(!is_last))
        return own_fault(output, error, output.target);
    return std::nullopt;
}

// One after the other: where one cannot be, those before it are put back.
std::optional<std::string> put_all_in_place(const std::vector<Prepared*>& parts) {
    for (std::size_t i = 0; i < parts.size(); ++i) {
        auto why = put_in_place(*parts[i], i + 1 == parts.size());
        if (!why) continue;
        while (i > 0)
            parts[--i]->part->put_back();
        return why;
    }
    return std::nullopt;
}

}

bool is_replaceable(const std::string& target) {
    std::error_code ignored;
    const fs::file_status there = fs::status(target, ignored);
    return target != "-" && (!fs::exists(there) || fs::is_regular_file(there)) &&
           !starts_with_any(target, {"/dev/", "/proc/"});
}

std::optional<std::string> write_files(std::span<const FileOutput> outputs) {
    std::vector<Prepared> all(outputs.size());
    for (std::size_t i = 0; i < outputs.size(); ++i)
        if (auto why = prepare(outputs[i], all[i])) return why;
    for (const Prepared& each : all)
        if (!each.part)
            if (auto why = write_directly(*each.output)) return why;
    std::vector<Prepared*> parts;
    for (Prepared& each : all)
        if (each.part) parts.push_back(&each);
    return put_all_in_place(parts);
}

std::optional<std::string> write_file(const std::string& target, std::string_view bytes) {
    const FileOutput output{target, bytes};
    return write_files({&output, 1});
}

}
