#include "compiler/postings/fixed_phrases.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/postings/acronyms.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/phrase_roles.hpp"

#include <algorithm>
#include <string>
#include <utility>

namespace quoin::postings {

namespace {

namespace wc = english::word_class;

constexpr std::size_t most_words_listed = 5;

bool is_listed(std::string_view words) {
    return is_one_of(words, List::credentials) || is_one_of(words, List::soft_skills) ||
           is_one_of(words, List::terms_of_general_words);
}

class FixedPhrases {
public:
    FixedPhrases(const english::Sentence& sentence, std::string_view text)
        : sentence_(sentence), text_(text), fixed_(sentence.size()) {}

    std::vector<std::size_t> find() {
        find_long_forms();
        find_listed();
        find_predicates();
        return std::move(fixed_);
    }

private:
    bool is_wordy(std::size_t i) const { return postings::is_wordy(sentence_, i); }

    void find_listed() {
        for (std::size_t i = 0; i < sentence_.size(); ++i) {
            std::string words;
            for (std::size_t k = 0;
                 k < most_words_listed && is_wordy(i + k) && i + k < sentence_.size(); ++k) {
                words += (k == 0 ? "" : " ") + sentence_.word(i + k);
                const bool in_name = i > 0 && is_wordy(i - 1) &&
                                     is_capital(sentence_.token(i - 1)) &&
                                     is_capital(sentence_.token(i)) && k > 0;
                if (!in_name && is_listed(words))
                    fixed_[i] = std::max(fixed_[i], k + 1 + words_of_level(i + k + 1));
            }
        }
    }

    // The long form of an acronym that grammar would cut: augmentative and alternative
    // communication (AAC), Basic Life Support (BLS).
    void find_long_forms() {
        std::size_t from = 0, first = 0; // they come in order
        for (const Acronym& acronym : acronyms_in(text_)) {
            from = std::min(text_.find(acronym.long_form, from), text_.size());
            first = word_from(from, first);
            const std::size_t last = word_from(from + acronym.long_form.size(), first);
            for (std::size_t i = first; i < last; ++i)
                if (is_cut_at(i, i == first)) fixed_[first] = last - first;
        }
    }

    // The first word at a byte or after it, not before the word `at`.
    std::size_t word_from(std::size_t byte, std::size_t at) const {
        while (at < sentence_.size() && sentence_.token(at).extent.offset < byte)
            ++at;
        return at;
    }

    bool is_cut_at(std::size_t i, bool first) const {
        return sentence_.is_word(i, {"and", "for", "of"}) ||
               (first && is_one_of(sentence_.word(i), List::praise));
    }

    // Level I of CST Level I
    std::size_t words_of_level(std::size_t i) const {
        constexpr std::string_view numerals[] = {"i", "ii", "iii", "iv"};
        const bool level =
            sentence_.is_word(i, {"level", "class", "type"}) &&
            (sentence_.is_figure(i + 1) || is_one_of(sentence_.word(i + 1), numerals));
        return level ? 2 : 0;
    }

    // You're curious; be honest and punctual: adjectives that are said of a person.
    void find_predicates() {
        for (std::size_t i = 0; i < sentence_.size(); ++i) {
            if (!is_one_of(sentence_.word(i), List::soft_predicates)) continue;
            const bool after = i == 0 || !is_wordy(i - 1) ||
                               sentence_.is(i - 1, wc::adverb | wc::be) ||
                               sentence_.is_word(i - 1, {"be", "you're", "and", "or", "who's"});
            const bool before = i + 1 >= sentence_.size() || !is_wordy(i + 1) ||
                                sentence_.is(i + 1, wc::preposition | wc::conjunction);
            if (after && before) fixed_[i] = std::max<std::size_t>(fixed_[i], 1);
        }
    }

    const english::Sentence& sentence_;
    std::string_view text_;
    std::vector<std::size_t> fixed_;
};

}

std::vector<std::size_t> fixed_in(const english::Sentence& sentence, std::string_view text) {
    return FixedPhrases(sentence, text).find();
}

}
