#include "compiler/matching/other_words.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/matching/lists.hpp"
#include "compiler/postings/posting.hpp"

#include <cstddef>
#include <map>

namespace quoin::matching {

namespace {

using Words = std::vector<std::string>;

std::string key_of(const Words& words) {
    std::string key;
    for (const std::string& word : words)
        key += postings::stem_of(word) + ' ';
    return key;
}

// Names by the stems of each thing.
class NameIndex {
public:
    NameIndex() {
        each_listed(lines_of(List::one_thing), [&](std::string_view name, std::string_view others) {
            std::vector<Words> names{parted(name, " ")};
            for (const std::string_view other : pieces_of(others, ", "))
                names.push_back(parted(other, " "));
            for (const Words& one : names)
                for (const Words& other : names)
                    if (one != other) names_[key_of(one)].push_back({other, As::same});
        });
        add(List::members, As::member);
        add(List::jobs_of_trades, As::job);
    }

    const std::vector<OtherName>& of(const Words& words) const {
        static const std::vector<OtherName> none;
        const auto at = names_.find(key_of(words));
        return at == names_.end() ? none : at->second;
    }

private:
    using As = OtherName::As;

    void add(List list, As as) {
        each_listed(lines_of(list), [&](std::string_view kind, std::string_view members) {
            for (const std::string_view member : pieces_of(members, ", "))
                names_[key_of(parted(kind, " "))].push_back({parted(member, " "), as});
        });
    }

    std::map<std::string, std::vector<OtherName>> names_;
};

}

std::vector<OtherName> other_names_of(const Words& lower) {
    constexpr std::size_t most_words = 3; // of a term whose words are changed one by one
    static const NameIndex index;
    std::vector<OtherName> names = index.of(lower);
    if (lower.size() < 2 || lower.size() > most_words) return names;
    const std::size_t whole = names.size();
    names.push_back({lower, OtherName::As::same});
    for (std::size_t i = 0; i < lower.size(); ++i)
        for (std::size_t all = names.size(), n = whole; n < all; ++n)
            for (const OtherName& other : index.of({lower[i]})) {
                if (other.as != OtherName::As::same || other.words.size() > 1) continue;
                names.push_back(names[n]);
                names.back().words[i] = other.words.front();
            }
    names.erase(names.begin() + static_cast<std::ptrdiff_t>(whole)); // its own words
    return names;
}

}
