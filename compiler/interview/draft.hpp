// What has been answered so far: of each section its entries, of each entry its answers by label,
// as they were typed.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::interview {

struct AnsweredEntry {
    std::map<std::string, std::string, std::less<>> values; // none of them empty
    std::vector<std::string> lines;                         // bullets, or more groups of skills

    bool operator==(const AnsweredEntry&) const = default;
};

struct Draft {
    // By what the plan calls them.
    std::map<std::string, std::vector<AnsweredEntry>, std::less<>> sections;

    const std::vector<AnsweredEntry>& entries(std::string_view section) const;
    std::string_view value(std::string_view section, std::string_view label) const; // of its first
    void set(std::string_view section, std::string_view label, std::string text);   // likewise
    bool operator==(const Draft&) const = default;
};

}
