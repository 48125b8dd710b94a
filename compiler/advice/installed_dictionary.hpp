// A dictionary of Hunspell's that the system has, asked in UTF-8 whatever it is written in.
#pragma once

#include <filesystem>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

class Hunspell;

namespace quoin::advice {

class InstalledDictionary {
public:
    explicit InstalledDictionary(const std::filesystem::path& without_ending);
    ~InstalledDictionary();

    bool right(std::string_view word) const;
    std::vector<std::string> near(std::string_view word) const; // best first

private:
    std::unique_ptr<Hunspell> hunspell_;
    std::string encoding_;
};

}
