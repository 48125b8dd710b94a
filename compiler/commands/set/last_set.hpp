// What was set last time, so that the same is not set again. It is told by what files hold and not
// by when they were written: clocks differ between machines, and git writes files anew.
#pragma once

#include <filesystem>
#include <set>
#include <string_view>

namespace quoin::commands {

class LastSet {
public:
    // `asked`: all but files that the outputs hang on. It is kept below `caches`.
    LastSet(const std::filesystem::path& caches, std::string_view asked);

    // Whether all files that were read and written then are there and hold the same bytes.
    bool still_stands() const;
    // Where it cannot be kept, it is set again next time.
    void keep(const std::set<std::filesystem::path>& files) const;

private:
    std::filesystem::path file_;
};

}
