// The lines of every source file of the program, for the tests that hold its form to the rules.
#pragma once

#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

namespace quoin::test {

inline std::vector<std::string> lines_in(const std::filesystem::path& file) {
    std::ifstream in(file);
    std::vector<std::string> lines;
    for (std::string line; std::getline(in, line);)
        lines.push_back(line);
    return lines;
}

template<typename Visit>
void visit_sources(const Visit& visit) {
    namespace fs = std::filesystem;
    for (const char* top : {"compiler", "grammar"})
        for (const auto& entry :
             fs::recursive_directory_iterator(fs::path(QUOIN_SOURCE_FOLDER) / top)) {
            const std::string kind = entry.path().extension().string();
            if (kind == ".cpp" || kind == ".hpp") visit(entry.path(), lines_in(entry.path()));
        }
}

}
