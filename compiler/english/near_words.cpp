#include "compiler/english/near_words.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/english/lexicon.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace quoin::english {
namespace {

constexpr std::size_t most_suggestions = 5;

bool has_small_alone(std::string_view word) {
    return std::ranges::all_of(word, is_small_letter);
}

// How much a slip may cost so that it is surely one. A long word has room for more of them, and a
// word that is seldom used is seldom meant.
int most_cost(std::size_t length, char rank) {
    constexpr int cheap_slip = 3;
    constexpr std::array<int, 11> by_length{0, 0, 0, 3, 3, 4, 6, 6, 7, 7, 8};
    const std::size_t longest_told = by_length.size() - 1;
    const int most = by_length[std::min(length, longest_told)];
    if (rank == WordList::is_frequent || rank == WordList::is_ordinary) return most;
    if (rank == WordList::is_met)
        return length >= longest_told ? most : length > 4 ? std::max(cheap_slip, most - 2) : 0;
    return rank != WordList::is_hidden && length >= 8 ? cheap_slip : 0;
}

// A word in frequent use outweighs a step of cost, and one that nobody uses hardly comes first.
int rareness(char rank) {
    return rank == WordList::is_frequent   ? 0
           : rank == WordList::is_ordinary ? 1
           : rank == WordList::is_met      ? 3
                                           : 8;
}

}

// The words near one, gathered from several lists.
class NearWords::Nearest {
public:
    explicit Nearest(std::string_view small) : typed_{small} {
        for (const char rank : {WordList::is_rare, WordList::is_met, WordList::is_ordinary,
                                WordList::is_frequent, WordList::is_hidden, WordList::is_beside})
            most_.at(static_cast<std::size_t>(rank)) = most_cost(small.size(), rank);
    }

    void offer(const Listed& one) {
        const int most = most_.at(static_cast<std::size_t>(one.rank));
        if (most <= 0 || surely_over(typed_, one.small, most)) return;
        if (one.small.word == typed_.word) return;
        // a plural of the trade is no slip: sightlines
        if (one.rank == WordList::is_rare && one.small.word.starts_with(typed_.word)) return;
        const int cost = slip_cost(typed_, one.small, most);
        if (cost > most) return;
        found_.push_back({one.word, cost + rareness(one.rank)});
    }

    std::vector<std::string> best(bool capital) {
        std::ranges::stable_sort(found_, {}, &Candidate::cost);
        std::vector<std::string> result;
        for (const Candidate& one : found_) {
            if (result.size() == most_suggestions) break;
            std::string word(one.word);
            add_once(result, capital ? capitalised(std::move(word)) : word, all_of_them);
        }
        return result;
    }

private:
    struct Candidate {
        std::string_view word;
        int cost = 0;
    };

    Compared typed_;
    std::array<int, 128> most_{}; // that a slip for a word of a rank may cost
    std::vector<Candidate> found_;
};

const std::vector<NearWords::Listed>& NearWords::starting(const std::string& start) {
    const auto [place, is_new] = starting_.try_emplace(start);
    std::vector<Listed>& gathered = place->second;
    if (!is_new) return gathered;
    words_.visit(start, [&](std::string_view word, char rank) {
        if (has_small_alone(word))
            gathered.push_back({word, {word}, rank});
        else if (is_capital_letter(word.front()) && has_small_alone(word.substr(1)))
            gathered.push_back({word, {small_names_.emplace_back(lower_case(word))}, rank});
    });
    return gathered;
}

const std::vector<NearWords::Listed>& NearWords::of_trades() {
    if (of_trades_.empty())
        each_listed(lines_of(List::trade_words), [&](std::string_view word, std::string_view) {
            of_trades_.push_back({word, {word}, WordList::is_met});
        });
    return of_trades_;
}

const std::vector<NearWords::Listed>& NearWords::technical() {
    if (technical_.empty())
        each_listed(lines_of(List::technical_names),
                    [&](std::string_view small, std::string_view name) {
                        technical_.push_back({name, {small}, WordList::is_frequent});
                    });
    return technical_;
}

std::vector<std::string> NearWords::search(const std::string& word) {
    const std::string small = lower_case(word);
    if (small.size() < 2 || !has_small_alone(small)) return {};
    const bool capital = is_capital_letter(word.front());
    Nearest nearest(small);
    const auto offer_all = [&](const std::vector<Listed>& listed, char first) {
        for (const Listed& one : listed)
            if (one.word.front() == first) nearest.offer(one);
    };
    offer_all(starting(small.substr(0, 1)), small[0]);
    if (small[1] != small[0]) offer_all(starting({small[1], small[0]}), small[1]); // hte
    offer_all(of_trades(), small[0]);
    if (capital) {
        offer_all(starting(word.substr(0, 1)), word[0]);
        offer_all(technical(), word[0]);
    }
    return nearest.best(capital);
}

}
