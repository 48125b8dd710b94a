#include "compiler/postings/said_phrases.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/base/utf8.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <mutex>
#include <optional>
#include <unordered_map>
#include <utility>
#include <vector>

namespace quoin::postings {

namespace {

std::string_view word_at(std::string_view text, std::size_t begin) {
    std::size_t end = begin;
    while (end < text.size() && is_word_byte(text[end]))
        ++end;
    return text.substr(begin, end - begin);
}

// A list's phrases by the word that each begins with: a text is gone through once.
class PhraseIndex {
public:
    struct Row {
        std::string_view phrase;
        bool sure = false;
    };

    explicit PhraseIndex(List list) {
        each_listed(lines_of(list), [&](std::string_view phrase, std::string_view said) {
            rows_[word_at(phrase, 0)].push_back({phrase, said == "surely"});
        });
    }

    // Until `visit` says that it is enough.
    template<typename Visit>
    void each_in(std::string_view text, const Visit& visit) const {
        for (std::size_t i = 0; i < text.size();) {
            const std::string_view word = word_at(text, i);
            const auto at = word.empty() ? rows_.end() : rows_.find(word);
            if (at != rows_.end())
                for (const Row& row : at->second)
                    if (stands_at(text, i, row.phrase) && visit(row)) return;
            i += std::max<std::size_t>(word.size(), 1);
        }
    }

private:
    static bool stands_at(std::string_view text, std::size_t i, std::string_view phrase) {
        const std::size_t end = i + phrase.size();
        return text.substr(i).starts_with(phrase) &&
               (end == text.size() || !is_word_byte(text[end]));
    }

    std::unordered_map<std::string_view, std::vector<Row>> rows_;
};

const PhraseIndex& index_of(List list) { // made at its first use: of most lists there is none
    static std::array<std::once_flag, list_count> made;
    static std::array<std::optional<PhraseIndex>, list_count> all;
    const auto i = static_cast<std::size_t>(list);
    std::call_once(made[i], [&] { all[i].emplace(list); });
    return *all[i];
}

}

std::string comparable(std::string_view text) {
    std::string lower = lower_case(text);
    for (const std::string_view sign : {"\u2026", "\u2013", "\u2014", "\u2022"})
        lower = replaced(std::move(lower), sign, " ");
    return lower;
}

bool says_any(std::string_view lower, List list) {
    bool any = false;
    index_of(list).each_in(lower, [&](const PhraseIndex::Row&) { return any = true; });
    return any;
}

// What an employer would like, it does not require.
bool supposes(std::string_view lower) {
    constexpr std::string_view firm[] = {"expect", "want", "need",   "ask",    "require", "have",
                                         "never",  "not",  "insist", "rather", "you",     "we"};
    for (const std::string_view opening :
         {"we'd", "we would", "i'd", "i would", "what would", "what'd", "who'd be"}) {
        const std::size_t at = find_phrase(lower, opening);
        if (at == lower.npos) continue;
        const std::string_view after = trimmed(lower.substr(at + opening.size()));
        const std::string_view word = after.substr(0, after.find(' '));
        if (!word.empty() && !is_one_of(word, firm)) return true;
    }
    return false;
}

bool says_preferred(std::string_view lower) {
    return (says_any(lower, List::said_preferred) || supposes(lower)) &&
           !says_any(lower, List::said_of_meeting);
}

PhrasesSeen seen_of(std::string_view lower, List list) {
    std::vector<std::string_view> counted;
    PhrasesSeen seen;
    index_of(list).each_in(lower, [&](const PhraseIndex::Row& row) {
        if (!is_one_of(row.phrase, counted)) {
            counted.push_back(row.phrase);
            ++(row.sure ? seen.sure : seen.unsure);
        }
        return false;
    });
    return seen;
}

}
