// Words are compared folded: in small letters without accents.
#include "compiler/stages/model/local_dates.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/utf8.hpp"

#include <algorithm>

namespace quoin::model {

namespace {

using grammar::dates::Local;

constexpr std::size_t longest_name = 40; // bytes; no month has a longer one

std::string without_dot(std::string name) {
    if (name.ends_with('.')) name.pop_back();
    return name;
}

bool is_word_letter(char32_t code) {
    return (code >= U'a' && code <= U'z') || (code >= U'A' && code <= U'Z') ||
           (code >= 0xC0 && code <= 0x24F);
}

std::string folded_word(std::string_view text) {
    return straight_apostrophes(folded(text));
}

std::string_view letters_at(std::string_view text) {
    std::size_t length = 0;
    while (length < text.size() && length < longest_name) {
        const Character next = first_character(text.substr(length));
        if (!is_word_letter(next.code)) break;
        length += next.length;
    }
    return text.substr(0, length);
}

// Whether a word may stand there by its first letter, which is cheap to tell: a letter of ASCII is
// folded to its small form, and what it may be folded from otherwise is looked at.
bool may_begin(std::string_view text, std::string_view word) {
    if (text.empty() || word.empty()) return false;
    const bool ascii = static_cast<unsigned char>(text.front()) < 0x80;
    return !ascii || small_letter(text.front()) == word.front();
}

// Bytes of the word at the front of the text; 0 if it is not there. Folding keeps the count of
// characters in the languages that there are words for, but for the German ß, which no word here
// has.
std::size_t length_of(const std::string& word, std::string_view text) {
    if (!may_begin(text, word)) return 0;
    std::size_t length = 0;
    for (std::size_t left = characters_in(word); left > 0; --left) {
        if (length >= text.size()) return 0;
        length += first_character(text.substr(length)).length;
    }
    if (folded_word(text.substr(0, length)) != word) return 0;
    return letters_at(text.substr(length)).empty() ? length : 0;
}

}

LocalDates::LocalDates(const page_words::DateWords& words) {
    const auto add = [&](Local what, const std::string& word) {
        if (word.empty()) return;
        words_[static_cast<std::size_t>(what)].push_back(folded_word(word));
        if (what != Local::to && what != Local::since && what != Local::of) names_.push_back(word);
    };
    for (std::size_t i = 0; i < months_.size(); ++i) {
        months_[i] = folded(words.months[i]);
        short_months_[i] = folded(without_dot(words.short_months[i]));
        if (!words.months[i].empty()) names_.push_back(words.months[i]);
    }
    constexpr std::array seasons{Local::spring, Local::summer, Local::autumn, Local::winter};
    for (std::size_t i = 0; i < seasons.size(); ++i)
        add(seasons[i], words.seasons[i]);
    add(Local::present, words.present);
    const std::pair<Local, const std::vector<std::string>&> read[] = {
        {Local::present, words.reads_present},
        {Local::expected, words.reads_expected},
        {Local::to, words.reads_to},
        {Local::since, words.reads_since},
        {Local::of, words.reads_of}};
    for (const auto& [what, list] : read)
        for (const std::string& word : list)
            add(what, word);
}

std::size_t LocalDates::length_at(std::string_view text, Local what) const {
    if (what == Local::month) {
        const std::string_view word = letters_at(text);
        if (!month(word)) return 0;
        return word.size() + (text.substr(word.size()).starts_with('.') ? 1 : 0);
    }
    std::size_t longest = 0;
    for (const std::string& word : words_[static_cast<std::size_t>(what)])
        longest = std::max(longest, length_of(word, text));
    return longest;
}

std::span<const LocalDates> LocalDates::others() const {
    if (!others_) return {};
    return others_();
}

// Bytes of the local word at the front of the text, and what it is in English; none if it is none.
// What opens a text says since when.
std::optional<std::pair<std::size_t, std::string>> LocalDates::english_at(std::string_view text,
                                                                          bool opens) const {
    constexpr std::array rows{std::pair{Local::present, "present"},
                              std::pair{Local::expected, "expected"},
                              std::pair{Local::spring, "spring"},
                              std::pair{Local::summer, "summer"},
                              std::pair{Local::autumn, "fall"},
                              std::pair{Local::winter, "winter"},
                              std::pair{Local::to, "-"}};
    for (const auto& [what, english] : rows)
        if (const std::size_t length = length_at(text, what)) return std::pair{length, english};
    if (const std::size_t length = length_at(text, Local::month))
        return std::pair{length, std::string(trade::month_names.at(
                                     static_cast<std::size_t>(month(text)->month - 1)))};
    const std::size_t since = length_at(text, Local::since), of = length_at(text, Local::of);
    if (since > 0 && (opens || of == 0)) return std::pair{since, "from"};
    if (of > 0) return std::pair{of, ""};
    return std::nullopt;
}

std::string LocalDates::in_english(std::string_view text) const {
    std::string english;
    while (!text.empty()) {
        if (const auto word = english_at(text, english.empty())) {
            english += word->second;
            text.remove_prefix(word->first);
            continue;
        }
        const std::size_t length = std::max(letters_at(text).size(), first_character(text).length);
        english += text.substr(0, length);
        text.remove_prefix(length);
    }
    return english;
}

bool LocalDates::is_never_shortened(int month) const {
    const auto index = static_cast<std::size_t>(month - 1);
    return !months_.at(index).empty() && months_[index] == short_months_[index];
}

std::optional<trade::NamedMonth> LocalDates::month(std::string_view word) const {
    constexpr std::size_t least = 3;
    if (std::ranges::none_of(months_,
                             [&](const std::string& month) { return may_begin(word, month); }))
        return std::nullopt;
    const std::string name = folded(letters_at(word));
    if (name.size() < least || months_.front().empty()) return std::nullopt;
    std::optional<trade::NamedMonth> found;
    for (std::size_t i = 0; i < months_.size(); ++i) {
        const bool whole = name == months_[i];
        const auto number = static_cast<int>(i) + 1;
        if (whole || name == short_months_[i]) return trade::NamedMonth{number, whole};
        if (!months_[i].starts_with(name)) continue;
        if (found) return std::nullopt;
        found = trade::NamedMonth{number, false};
    }
    return found;
}

}
