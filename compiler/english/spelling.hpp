// Spelling, by Hunspell. To load its dictionary takes longer than all the rest of a proof, so a
// list of words made from it and from WordNet when quoin is built answers first, and Hunspell is
// asked of what is not in the list. Safe to ask from several threads.
#pragma once

#include "compiler/english/near_words.hpp"
#include "compiler/english/word_list.hpp"

#include <filesystem>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

class Hunspell;

namespace quoin::english {

class Spelling {
public:
    // `name` is that of a dictionary in `folder`: en_US for en_US.words, .aff and .dic.
    Spelling(const std::filesystem::path& folder, const std::string& name);
    ~Spelling();

    bool right(std::string_view word) const;
    bool in_use(std::string_view word) const; // in small letters: listed, and not rare
    // None if it is right.
    NearWords near(std::string_view word) const;

private:
    bool listed(const std::string& word) const;
    bool parts_listed(std::string_view word) const;
    bool is_regular_form(const std::string& word) const;
    bool is_agent_of_verb(const std::string& word) const;
    bool known_to_hunspell(const std::string& word) const;

    WordList words_;
    mutable NearWordSearch near_;
    std::filesystem::path affixes_, dictionary_;
    mutable std::mutex mutex_;
    mutable std::unique_ptr<Hunspell> hunspell_;          // loaded when first asked
    mutable std::unordered_map<std::string, bool> asked_; // of Hunspell
    mutable std::unordered_map<std::string, NearWords> searched_;
};

// Programs and languages that many résumés name, in any letters.
bool is_technical_name(std::string_view word);
// As its makers write it; `lower` is in small letters.
std::optional<std::string_view> technical_name(std::string_view lower);

}
