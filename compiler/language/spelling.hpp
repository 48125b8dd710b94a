// Spelling by a Hunspell dictionary, read on the first question. Safe to ask from several threads.
#pragma once

#include <filesystem>
#include <memory>
#include <mutex>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

class Hunspell;

namespace quoin {

class Spelling {
public:
    // `name` is that of a dictionary: en_US.
    Spelling(std::filesystem::path folder, std::string name);
    ~Spelling();

    bool available() const; // whether the dictionary is there; it is not read for this
    bool right(std::string_view word) const;
    std::vector<std::string> near(std::string_view word) const; // best first, at most five

private:
    Hunspell* dictionary() const; // null if there is none; mutex_ is held
    bool knows(const std::string& word) const;
    std::vector<std::string> search(const std::string& word) const;

    std::filesystem::path folder_;
    std::string name_;
    mutable std::mutex mutex_;
    mutable std::unique_ptr<Hunspell> dictionary_;
    mutable bool tried_ = false;
    mutable std::unordered_map<std::string, std::vector<std::string>> searched_;
};

// Right in the trade, though dictionaries flag it: devops, onboarding.
bool is_trade_word(std::string_view word);

}
