#include "compiler/base/given_file.hpp"

#include "compiler/base/messages.hpp"
#include "compiler/base/whole_file.hpp"

#include <cerrno>
#include <system_error>

namespace quoin {

namespace fs = std::filesystem;

std::optional<std::string> fault_reading(const GivenFile& file, std::string& bytes) {
    std::error_code error;
    const fs::file_status status = fs::status(file.path, error);
    if (!fs::exists(status)) return fill<messages::given_no_file>();
    if (fs::is_directory(status)) return fill<messages::given_folder>(file.not_a_folder);
    if (!fs::is_regular_file(status)) return fill<messages::given_device>(file.not_a_device);
    const std::uintmax_t size = fs::file_size(file.path, error);
    if (error) return fill<messages::given_unreadable>(error.message());
    if (size > file.most) return fill<messages::given_too_large>(size >> 20, file.most >> 20);
    const int fault = read_whole_file(file.path, bytes);
    if (fault == EACCES) return fill<messages::given_closed>();
    if (fault != 0) return fill<messages::given_unreadable>(std::generic_category().message(fault));
    return bytes.empty() ? std::optional(fill<messages::given_empty>()) : std::nullopt;
}

}
