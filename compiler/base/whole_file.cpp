// Over POSIX calls, for their error numbers tell a missing permission from a disk that fails.
#include "compiler/base/whole_file.hpp"

#include "compiler/base/descriptor.hpp"

#include <sys/stat.h>

#include <array>
#include <cerrno>

namespace quoin {

int read_whole_file(const std::filesystem::path& file, std::string& bytes) {
    bytes.clear();
    const Descriptor open(open_calmly(file.c_str(), O_RDONLY | O_CLOEXEC | O_NOCTTY | O_NONBLOCK));
    struct stat status {};
    if (open.number() < 0 || ::fstat(open.number(), &status) != 0) return errno;
    if (!S_ISREG(status.st_mode)) return EINVAL;
    bytes.reserve(static_cast<std::size_t>(status.st_size));
    std::array<char, 65536> piece;
    for (;;) {
        const ssize_t count = ::read(open.number(), piece.data(), piece.size());
        if (count == 0) return 0;
        if (count < 0 && errno != EINTR) return errno;
        if (count > 0) bytes.append(piece.data(), static_cast<std::size_t>(count));
    }
}

}
