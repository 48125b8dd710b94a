#include "compiler/server/reference.hpp"

#include "compiler/server/uris.hpp"

#include <fstream>
#include <map>

namespace quoin::server {

namespace {

namespace fs = std::filesystem;

// Lines that hold one word: a check's heading is one.
std::map<std::string, std::size_t, std::less<>> headings_of(const fs::path& page) {
    std::map<std::string, std::size_t, std::less<>> headings;
    std::ifstream in(page);
    std::size_t number = 0;
    for (std::string line; std::getline(in, line);) {
        ++number;
        if (!line.empty() && line.find(' ') == line.npos) headings.try_emplace(line, number);
    }
    return headings;
}

}

std::string check_reference(const fs::path& data, std::string_view check) {
    const fs::path page = data / "reference" / "checks.txt";
    static const auto headings = headings_of(page);
    const auto found = headings.find(check);
    const std::string line = found == headings.end() ? "" : "#L" + std::to_string(found->second);
    return uri_of_path(fs::absolute(page)) + line;
}

std::string markup_reference(const fs::path& data) {
    return uri_of_path(fs::absolute(data / "reference" / "markup.txt"));
}

}
