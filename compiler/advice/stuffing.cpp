// A term that is said over and over, for a portal's search and against its reader.
#include "compiler/advice/stuffing.hpp"

#include "compiler/advice/messages.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/english/word_classes.hpp"
#include "compiler/postings/phrases.hpp"
#include "compiler/postings/posting.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <unordered_map>
#include <vector>

namespace quoin::advice {

namespace {

constexpr std::size_t most_texts = 4; // bullets and items that may name one thing
constexpr std::size_t most_in_one = 2;

struct Counted {
    std::size_t texts = 0;
    std::size_t text = 0; // the last that says it, from 1
    std::size_t in_this = 0, most_in_this = 0;

    void add(std::size_t number) {
        in_this = text == number ? in_this + 1 : 1;
        texts += text == number ? 0 : 1;
        text = number;
        most_in_this = std::max(most_in_this, in_this);
    }
    bool too_often() const { return texts > most_texts || most_in_this > most_in_one; }
};

struct Said {
    std::string words; // as said first
    Place last;
    Counted count;
};

using SaidByStems = std::map<std::vector<std::string>, Said>;

// Bullets, listed things and prose, with what their words count to. To find a text's terms is dear,
// and one that is said over and over is made of words that are.
class Texts {
public:
    explicit Texts(const TextsRead& texts) {
        for (const TextInResume& one : texts) {
            const bool listed = one.field && one.field->name == trade::FieldName::group;
            const bool prose = one.field && one.field->name == trade::FieldName::text;
            if (one.bullet || listed || prose) add(one);
        }
    }

    // Calls visit(text, number from 1) with those that may hold a term said too often.
    void visit_likely(const auto& visit) const {
        for (std::size_t i = 0; i < texts_.size(); ++i) {
            const auto often = [&](const std::string* stem) {
                return counts_.at(*stem).too_often();
            };
            if (std::ranges::count_if(texts_[i].stems, often) > 1) visit(*texts_[i].text, i + 1);
        }
    }

private:
    struct TextOfStems {
        const TextInResume* text;
        std::vector<const std::string*> stems; // of all words but those of grammar
    };

    void add(const TextInResume& text) {
        TextOfStems& one = texts_.emplace_back(TextOfStems{&text, {}});
        for (const WordAt& word : text.words) {
            const std::string& stem = stem_of(std::string(text.small(word)));
            if (stem.empty()) continue;
            const auto counted = counts_.try_emplace(stem).first;
            counted->second.add(texts_.size());
            one.stems.push_back(&counted->first);
        }
    }

    const std::string& stem_of(const std::string& word) {
        const auto [found, is_new] = stems_.try_emplace(word);
        constexpr std::uint32_t open = english::word_class::adverb | english::word_class::number;
        if (is_new && (english::word_classes(word, {}) & ~open) == 0)
            found->second = postings::stem_of(word);
        return found->second;
    }

    std::vector<TextOfStems> texts_;
    std::unordered_map<std::string, Counted> counts_;
    std::unordered_map<std::string, std::string> stems_; // of each word; none of one of grammar
};

// One word may well be the page's subject; a term of several is said once or twice.
void count_terms(const TextInResume& text, std::size_t number, SaidByStems& said) {
    for (const postings::Phrase& phrase : postings::phrases_in(text.plain)) {
        if (phrase.lower.size() < 2) continue;
        std::vector<std::string> stems;
        for (const std::string& word : phrase.lower)
            stems.push_back(postings::stem_of(word));
        Said& one = said[stems];
        if (one.words.empty()) one.words = phrase.words;
        one.last = text.text.place(phrase.extent.offset, phrase.extent.length);
        one.count.add(number);
    }
}

}

void stuffing(const ProofContext& context, std::vector<Finding>& findings) {
    SaidByStems said;
    Texts(context.texts).visit_likely([&](const TextInResume& text, std::size_t number) {
        count_terms(text, number, said);
    });
    for (const auto& [stems, one] : said)
        if (one.count.too_often())
            report<messages::said_over_and_over>(findings, one.last, one.words,
                                                 std::max(one.count.texts, one.count.most_in_this));
}

}
