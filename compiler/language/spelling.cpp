// Hunspell finds what is wrong. What was meant is mostly one edit away, and trying these edits is
// many times faster than Hunspell's own search, which is left for the rest.
#include "compiler/language/spelling.hpp"

#include <hunspell/hunspell.hxx>

#include <algorithm>
#include <system_error>
#include <utility>

namespace quoin {
namespace {

constexpr std::size_t most_suggestions = 5;
constexpr std::size_t longest = 40; // no word of English is longer; what is takes too long
constexpr std::string_view letters = "abcdefghijklmnopqrstuvwxyz";

bool is_doubling(std::string_view word, std::size_t i, char letter) {
    return (i > 0 && word[i - 1] == letter) || (i < word.size() && word[i] == letter);
}

bool is_vowel(char c) {
    return std::string_view("aeiouy").find(c) != std::string_view::npos;
}

struct Candidate {
    std::string word;
    int cost = 0; // how unlikely the slip is
};

// Words one edit away, with a cost by the kind of slip: swapped letters, a letter doubled or not,
// a wrong vowel, any other. A slip at the first letter is rare.
std::vector<Candidate> one_edit_away(const std::string& word) {
    std::vector<Candidate> result;
    const auto add = [&](std::string candidate, std::size_t at, int cost) {
        result.push_back({std::move(candidate), cost + (at == 0 ? 3 : 0)});
    };
    for (std::size_t i = 0; i <= word.size(); ++i) {
        const std::string head = word.substr(0, i), tail = word.substr(i);
        if (tail.size() > 1) add(head + tail[1] + tail[0] + tail.substr(2), i, 0);
        if (!tail.empty()) add(head + tail.substr(1), i, i > 0 && word[i - 1] == tail[0] ? 1 : 3);
        for (const char letter : letters) {
            if (!tail.empty() && letter != tail[0])
                add(head + letter + tail.substr(1), i,
                    is_vowel(letter) && is_vowel(tail[0]) ? 2 : 4);
            add(head + letter + tail, i,
                is_doubling(word, i, letter) ? 1
                : is_vowel(letter)           ? 2
                                             : 3);
        }
    }
    return result;
}

bool is_lower(std::string_view word) {
    return std::ranges::all_of(word, [](char c) { return c >= 'a' && c <= 'z'; });
}

bool is_capitalised(std::string_view word) {
    return word.size() > 1 && word.front() >= 'A' && word.front() <= 'Z' &&
           is_lower(word.substr(1));
}

std::string with_case_of(std::string word, bool capital) {
    if (capital && !word.empty() && word.front() >= 'a' && word.front() <= 'z')
        word.front() = static_cast<char>(word.front() - 'a' + 'A');
    return word;
}

}

Spelling::Spelling(std::filesystem::path folder, std::string name)
    : folder_(std::move(folder)), name_(std::move(name)) {}

Spelling::~Spelling() = default;

bool Spelling::available() const {
    std::error_code fault;
    return std::filesystem::exists(folder_ / (name_ + ".aff"), fault) &&
           std::filesystem::exists(folder_ / (name_ + ".dic"), fault);
}

Hunspell* Spelling::dictionary() const {
    if (!tried_ && available())
        dictionary_ = std::make_unique<Hunspell>((folder_ / (name_ + ".aff")).c_str(),
                                                 (folder_ / (name_ + ".dic")).c_str());
    tried_ = true;
    return dictionary_.get();
}

bool Spelling::knows(const std::string& word) const {
    Hunspell* hunspell = dictionary();
    return hunspell == nullptr || hunspell->spell(word);
}

bool Spelling::right(std::string_view word) const {
    if (word.size() > longest || is_trade_word(word)) return true;
    const std::lock_guard lock(mutex_);
    return knows(std::string(word));
}

// Those of one edit, the likeliest slip first; else what Hunspell finds. mutex_ is held.
std::vector<std::string> Spelling::search(const std::string& word) const {
    Hunspell* hunspell = dictionary();
    if (hunspell == nullptr) return {};
    const bool capital = is_capitalised(word);
    std::string small = word;
    if (capital) small.front() = static_cast<char>(small.front() - 'A' + 'a');
    std::vector<std::string> result;
    std::vector<Candidate> candidates;
    if (is_lower(small)) candidates = one_edit_away(small);
    std::ranges::stable_sort(candidates, {}, &Candidate::cost);
    for (const Candidate& candidate : candidates) {
        if (result.size() == most_suggestions) return result;
        const std::string cased = with_case_of(candidate.word, capital);
        if (std::ranges::find(result, cased) != result.end()) continue;
        if (candidate.word.size() > 1 && hunspell->spell(candidate.word)) result.push_back(cased);
    }
    if (result.empty()) result = hunspell->suggest(word);
    if (result.size() > most_suggestions) result.resize(most_suggestions);
    return result;
}

std::vector<std::string> Spelling::near(std::string_view word) const {
    constexpr std::size_t most_kept = 1024;
    if (word.size() > longest || word.size() < 2) return {};
    const std::lock_guard lock(mutex_);
    std::string key(word);
    if (const auto found = searched_.find(key); found != searched_.end()) return found->second;
    if (searched_.size() >= most_kept) searched_.clear();
    std::vector<std::string> result = search(key);
    return searched_.emplace(std::move(key), std::move(result)).first->second;
}

}
