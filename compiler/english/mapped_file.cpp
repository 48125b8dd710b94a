#include "compiler/english/mapped_file.hpp"

#include "compiler/base/descriptor.hpp"

#include <fmt/format.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>

namespace quoin::english {
namespace {

// There may be none; but of one that fails the same words would be judged otherwise, and nobody
// told.
[[noreturn]] void refuse(const std::filesystem::path& file) {
    throw std::system_error(errno, std::generic_category(),
                            fmt::format("cannot read the list of words '{}'", file.string()));
}

}

MappedFile::MappedFile(const std::filesystem::path& file) {
    const Descriptor list(open_calmly(file.c_str(), O_RDONLY | O_CLOEXEC));
    if (list.number() < 0 && errno == ENOENT) return;
    struct stat status {};
    if (list.number() < 0 || ::fstat(list.number(), &status) != 0) refuse(file);
    if (status.st_size == 0) return;
    const auto size = static_cast<std::size_t>(status.st_size);
    void* bytes = ::mmap(nullptr, size, PROT_READ, MAP_PRIVATE, list.number(), 0);
    if (bytes == MAP_FAILED) refuse(file);
    mapping_ = {bytes, [size](const void* begin) { ::munmap(const_cast<void*>(begin), size); }};
    bytes_ = {static_cast<const char*>(bytes), size};
}

}
