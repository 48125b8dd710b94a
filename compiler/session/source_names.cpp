#include "compiler/session/source_names.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/office/find.hpp"

#include <array>
#include <string_view>
#include <system_error>

namespace quoin::session {

namespace {

constexpr std::array<std::string_view, 3> source_suffixes{".resume", ".theme", ".begin"};

bool is_source_name(const std::filesystem::path& file) {
    return is_one_of(file.extension().string(), source_suffixes) ||
           file.filename() == office::file_name;
}

}

bool is_source(const std::filesystem::path& file) {
    std::error_code fault; // nothing is there, or it may not be seen
    const std::filesystem::path real = std::filesystem::canonical(file, fault);
    return !fault && (is_source_name(file) || is_source_name(real));
}

}
