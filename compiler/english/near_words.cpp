#include "compiler/english/near_words.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/english/lexicon.hpp"
#include "compiler/english/slip_odds.hpp"
#include "compiler/english/sound_spellings.hpp"
#include "compiler/english/unknown_word.hpp"

#include <algorithm>
#include <utility>

namespace quoin::english {
namespace {

constexpr std::size_t most_suggestions = 5;

bool has_small_alone(std::string_view word) {
    return std::ranges::all_of(word, is_small_letter);
}

// A word in frequent use outweighs a step of cost, and one that nobody uses hardly comes first.
int rareness(char rank) {
    return rank == WordList::is_frequent     ? 0
           : rank == WordList::is_ordinary   ? 1
           : rank == WordList::is_of_resumes ? 1
           : rank == WordList::is_met        ? 3
                                             : 8;
}

}

// The words near one, gathered from several lists.
class NearWordSearch::Nearest {
public:
    explicit Nearest(std::string_view small) : typed_{small} {}

    void offer(const Listed& one) {
        if (surely_over(typed_, one.small, SlipOdds::most_cost)) return;
        if (one.small.word == typed_.word || is_never_meant(one.small.word, one.rank)) return;
        const int cost = slip_cost(typed_, one.small, SlipOdds::most_cost);
        if (cost <= SlipOdds::most_cost) add(one.word, cost, one.rank);
    }

    void offer_by_sound(std::string_view word, char rank, int cost) {
        if (!is_never_meant(word, rank)) add(word, cost, rank);
    }

    std::size_t found() const { return found_.size(); }
    // Those found since, by their letters.
    void sort_from(std::size_t first) {
        std::ranges::sort(found_.begin() + static_cast<std::ptrdiff_t>(first), found_.end(), {},
                          &Candidate::word);
    }

    double odds(const UnknownWord& typed) const { return odds_.of(typed); }

    std::vector<std::string> best(bool capital) {
        std::ranges::stable_sort(found_, {}, &Candidate::cost);
        std::vector<std::string> result;
        for (Candidate& one : found_) {
            if (result.size() == most_suggestions) break;
            std::string word = capital ? capitalised(std::move(one.word)) : std::move(one.word);
            add_once(result, word, all_of_them);
        }
        return result;
    }

private:
    struct Candidate {
        std::string word;
        int cost = 0;
    };

    bool is_never_meant(std::string_view small, char rank) const {
        if (rank == WordList::is_none || rank == WordList::is_hidden || rank == WordList::is_beside)
            return true;
        // a plural of the trade is no slip: sightlines
        return rank == WordList::is_rare && small.starts_with(typed_.word);
    }

    void add(std::string_view word, int cost, char rank) {
        odds_.see(cost, rank);
        found_.push_back({std::string(word), cost + rareness(rank)});
    }

    Compared typed_;
    std::vector<Candidate> found_;
    SlipOdds odds_;
};

const NearWordSearch::ByLength& NearWordSearch::starting(const std::string& start) {
    const auto [place, is_new] = starting_.try_emplace(start);
    ByLength& gathered = place->second;
    if (!is_new) return gathered;
    const auto add = [&](std::string_view word, std::string_view small, char rank) {
        if (gathered.size() <= word.size()) gathered.resize(word.size() + 1);
        gathered[word.size()].push_back({word, {small}, rank});
    };
    words_.visit(start, [&](std::string_view word, char rank) {
        if (has_small_alone(word))
            add(word, word, rank);
        else if (is_capital_letter(word.front()) && has_small_alone(word.substr(1)))
            add(word, small_names_.emplace_back(lower_case(word)), rank);
    });
    return gathered;
}

// Of a length that a slip may have made of the typed one's; in the order of the list, whichever it
// is.
void NearWordSearch::offer_starting(const std::string& start, std::size_t length,
                                    Nearest& nearest) {
    constexpr std::size_t farthest = SlipOdds::most_cost / least_slip_cost;
    const ByLength& all = starting(start);
    const std::size_t before = nearest.found();
    const std::size_t end = std::min(all.size(), length + farthest + 1);
    for (std::size_t one = length - std::min(length, farthest); one < end; ++one)
        for (const Listed& listed : all[one])
            nearest.offer(listed);
    nearest.sort_from(before);
}

const std::vector<NearWordSearch::Listed>& NearWordSearch::of_trades() {
    if (of_trades_.empty())
        each_listed(lines_of(List::trade_words), [&](std::string_view word, std::string_view) {
            of_trades_.push_back({word, {word}, WordList::is_of_resumes});
        });
    return of_trades_;
}

const std::vector<NearWordSearch::Listed>& NearWordSearch::technical() {
    if (technical_.empty())
        each_listed(lines_of(List::technical_names),
                    [&](std::string_view small, std::string_view name) {
                        technical_.push_back({name, {small}, WordList::is_frequent});
                    });
    return technical_;
}

// Words that begin as the typed one does, or are it but for the first letter or the sound.
void NearWordSearch::offer_near(const std::string& small, Nearest& nearest) {
    const auto offer_listed = [&](const std::string& word) {
        if (has_small_alone(word)) nearest.offer({word, {word}, words_.class_of(word)});
    };
    offer_starting(small.substr(0, 1), small.size(), nearest);
    offer_listed(std::string{small[1], small[0]} + small.substr(2)); // hte
    for (char first = 'a'; first <= 'z'; ++first) {
        if (first == small.front()) continue;
        offer_listed(first + small);           // elped
        offer_listed(first + small.substr(1)); // urrors
    }
    constexpr int once = 3, twice = 5; // as two letters in the wrong order; as a wrong vowel more
    constexpr std::size_t long_enough = 8;
    each_by_sound(small, [&](const std::string& word) {
        if (has_small_alone(word)) nearest.offer_by_sound(word, words_.class_of(word), once);
        if (small.size() < long_enough) return;
        each_by_sound(word, [&](const std::string& other) { // maintainence, excersise
            if (other == small || !has_small_alone(other)) return;
            const char rank = words_.class_of(other);
            if (is_in_use(rank)) nearest.offer_by_sound(other, rank, twice);
        });
    });
    for (const Listed& one : of_trades())
        if (one.word.front() == small.front()) nearest.offer(one);
}

NearWords NearWordSearch::search(const std::string& word) {
    const std::string small = lower_case(word);
    if (small.size() < 2 || !has_small_alone(small)) return {};
    const bool capital = is_capital_letter(word.front());
    Nearest nearest(small);
    offer_near(small, nearest);
    if (capital) {
        offer_starting(word.substr(0, 1), word.size(), nearest);
        for (const Listed& one : technical())
            if (one.word.front() == word.front()) nearest.offer(one);
    }
    return {nearest.best(capital), nearest.odds(look_at(small, words_, letters_))};
}

}
