#include "compiler/postings/choices.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/said_phrases.hpp"
#include "compiler/trade/spoken_languages.hpp"

#include <algorithm>
#include <numeric>
#include <string>
#include <utility>

namespace quoin::postings {

namespace {

enum class Joint { none, comma, or_, either };

// What may stand between the members of a list: or another, or experience with.
bool is_filler(std::string_view word) {
    return is_one_of(word, List::praise) || is_one_of(word, List::general_nouns) ||
           is_one_of(word, List::between_choices) || word.ends_with("ly");
}

// , or completion of a: not another member of the list.
bool opens_clause_of_its_own(const std::string& between, const std::vector<std::string>& words) {
    return between.starts_with(',') && std::ranges::any_of(words, [](const std::string& word) {
               return is_one_of(word, List::general_nouns) &&
                      !is_one_of(word, List::between_choices);
           });
}

// Observability tools such as Prometheus: a kind, and examples of it.
bool gives_examples(std::string_view lower) {
    constexpr std::string_view openings[] = {"such as", "like", "e.g", "for example",
                                             "for instance"};
    return is_one_of(trimmed(lower, " ,(.:"), openings);
}

// Between two phrases: a list goes on, with its `or`, or the sentence has another side.
Joint joint_of(std::string_view between) {
    const std::string lower = lower_case(between);
    if (gives_examples(lower)) return Joint::or_;
    const std::vector<std::string> words = parted(lower, " ,/");
    const auto is_or = [](const std::string& word) { return word == "or" || word == "and/or"; };
    const bool any_or = std::ranges::any_of(words, is_or) || lower.find("and/or") != lower.npos;
    const bool filled = lower.find_first_of(";:.()") == lower.npos &&
                        std::ranges::all_of(words, [&](const std::string& word) {
                            return is_or(word) || is_filler(word);
                        });
    if (any_or)
        return filled && !opens_clause_of_its_own(lower, words) ? Joint::or_ : Joint::either;
    const bool parts = lower.find(',') != lower.npos || lower == "/";
    return filled && parts ? Joint::comma : Joint::none;
}

// geography, or a closely related field: what follows names nothing, but is another.
bool others_will_do(std::string_view after) {
    constexpr std::size_t longest = 80;
    after = after.substr(0, longest);
    const std::string lower = lower_case(after.substr(0, after.find_first_of(";:.()")));
    const std::vector<std::string> words = parted(lower, " ,");
    return !words.empty() && words.front() == "or" &&
           std::all_of(words.begin() + 1, words.end(),
                       [](const std::string& word) { return is_filler(word); });
}

class ChoiceReader {
public:
    ChoiceReader(std::string_view sentence, std::span<const Phrase> phrases, bool any)
        : any_(any), sentence_(sentence), phrases_(phrases), choices_(phrases.size()),
          outer_(phrases.size()) {
        std::vector<std::size_t> sorted(phrases.size());
        std::iota(sorted.begin(), sorted.end(), std::size_t{0});
        std::ranges::stable_sort(sorted, {}, [&](std::size_t i) {
            return std::pair(begin(i), sentence_.size() - end(i)); // the longest first
        });
        for (const std::size_t i : sorted) {
            if (order_.empty() || end(i) > end(order_.back())) order_.push_back(i);
            outer_[i] = order_.back();
        }
        join_deeds();
    }

    std::vector<Choice> read() {
        std::uint32_t side = 1;
        for (std::size_t i = 0; i < order_.size();) {
            const std::size_t last = end_of_list(i);
            for (std::size_t k = i; k <= last; ++k)
                choices_[order_[k]] = {0, side, any_ && listed_ ? lists_ : 0, false};
            if (any_ && joint_after(last) == Joint::either) ++side;
            i = last + 1;
        }
        join_what_is_within();
        join_languages();
        return std::move(choices_);
    }

private:
    // A verb that is told by itself and with what it is done to.
    void join_deeds() {
        std::vector<std::size_t> kept;
        for (std::size_t k = 0; k < order_.size(); ++k) {
            const Phrase& one = phrases_[order_[k]];
            const bool with_next = one.deed && one.lower.size() == 1 && k + 1 < order_.size() &&
                                   phrases_[order_[k + 1]].deed &&
                                   phrases_[order_[k + 1]].lower.front() == one.lower.front();
            if (with_next)
                outer_[order_[k]] = order_[k + 1];
            else
                kept.push_back(order_[k]);
        }
        order_ = std::move(kept);
    }

    std::size_t begin(std::size_t i) const { return phrases_[i].extent.offset; }
    std::size_t end(std::size_t i) const { return begin(i) + phrases_[i].extent.length; }

    Joint joint_after(std::size_t k) const {
        if (k + 1 >= order_.size()) return Joint::none;
        const std::size_t from = end(order_[k]), to = begin(order_[k + 1]);
        return from < to ? joint_of(sentence_.substr(from, to - from)) : Joint::none;
    }

    // The last of the list that begins at `k`, and whether any of it will do.
    std::size_t end_of_list(std::size_t k) {
        listed_ = false;
        Joint joint = joint_after(k);
        for (; joint == Joint::comma || joint == Joint::or_; joint = joint_after(++k))
            listed_ = listed_ || joint == Joint::or_;
        listed_ =
            listed_ || (joint == Joint::none && others_will_do(sentence_.substr(end(order_[k]))));
        lists_ += listed_ ? 1 : 0;
        return k;
    }

    // Part 107 of `a Part 107 card`, and `reposition` beside `reposition patients`, are one with
    // it.
    void join_what_is_within() {
        for (std::size_t i = 0; i < choices_.size(); ++i) {
            Choice& outer = choices_[outer_[i]];
            if (outer_[i] == i) continue;
            if (outer.list == 0) outer.list = ++lists_;
            choices_[i] = outer;
            choices_[i].within = true;
        }
    }

    // A second language (Spanish, Mam, Vietnamese): nobody is asked for all of them.
    void join_languages() {
        std::vector<std::size_t> languages;
        for (std::size_t i = 0; i < phrases_.size(); ++i)
            if (trade::is_spoken_language(lower_case(phrases_[i].words)) ||
                phrases_[i].lower.back() == "language")
                languages.push_back(i);
        if (!any_ || languages.size() < 2 ||
            find_phrase(lower_case(sentence_), "and") != sentence_.npos)
            return;
        const auto listed =
            std::ranges::find_if(languages, [&](std::size_t i) { return choices_[i].list > 0; });
        const std::uint32_t list = listed == languages.end() ? ++lists_ : choices_[*listed].list;
        for (const std::size_t i : languages)
            choices_[i].list = list;
    }

    bool any_; // of what `or` joins will do
    std::string_view sentence_;
    std::span<const Phrase> phrases_;
    std::vector<Choice> choices_;
    std::vector<std::size_t> order_; // without what stands within another
    std::vector<std::size_t> outer_; // of each that which it stands within, or itself
    std::uint32_t lists_ = 0;
    bool listed_ = false; // the list that was read last is a choice
};

}

std::vector<Choice> choices_in(std::string_view sentence, std::span<const Phrase> phrases,
                               bool any) {
    return ChoiceReader(sentence, phrases, any).read();
}

bool is_another_side(std::string_view sentence) {
    const std::string lower = lower_case(trimmed(sentence));
    return lower.starts_with("or ") || says_any(lower, List::said_of_alternatives);
}

bool ends_with_or(std::string_view sentence) {
    const std::vector<std::string> words = parted(lower_case(sentence), " ,;");
    return !words.empty() && words.back() == "or";
}

bool opens_alternatives(std::string_view sentence) {
    return trimmed(sentence).ends_with(':') &&
           says_any(lower_case(sentence), List::said_before_alternatives);
}

}
