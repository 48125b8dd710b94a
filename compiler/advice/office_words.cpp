#include "compiler/advice/office_words.hpp"

#include "compiler/advice/walk.hpp"
#include "compiler/base/message.hpp"
#include "compiler/english/stems.hpp"

#include <map>
#include <unordered_map>

namespace quoin::advice {

namespace {

// Phrases by their stems, found in one way through a text.
template<typename Rule>
class StemmedPhrases {
public:
    explicit StemmedPhrases(const std::vector<Rule>& rules) {
        for (const Rule& rule : rules)
            if (auto stems = stems_of(rule.words); !stems.empty()) {
                const std::string first = stems.front();
                by_first_[first].push_back({std::move(stems), &rule});
            }
    }

    // The words of the text, and what is said of some of them.
    void each_in(const std::string& text, const auto& visit) const {
        if (by_first_.empty()) return;
        const auto words = words_in(text);
        const std::vector<std::string> stems = stems_of(text);
        for (std::size_t i = 0; i < words.size(); ++i)
            if (const Phrase* found = longest_at(stems, i)) {
                const WordAt& last = words[i + found->stems.size() - 1];
                visit(*found->rule, words[i].offset,
                      last.offset + last.word.size() - words[i].offset);
                i += found->stems.size() - 1;
            }
    }

private:
    struct Phrase {
        std::vector<std::string> stems;
        const Rule* rule = nullptr;
    };

    std::vector<std::string> stems_of(const std::string& text) const {
        std::vector<std::string> stems;
        for (const WordAt& word : words_in(text))
            stems.push_back(stemmer_.stem(lower_case(word.word)));
        return stems;
    }

    // Of two of one length the one that is given last: what is said for a stage comes after.
    const Phrase* longest_at(const std::vector<std::string>& stems, std::size_t at) const {
        const auto found = by_first_.find(stems[at]);
        if (found == by_first_.end()) return nullptr;
        const Phrase* longest = nullptr;
        for (const Phrase& phrase : found->second) {
            const std::size_t size = phrase.stems.size();
            const auto from = stems.begin() + static_cast<std::ptrdiff_t>(at);
            if (size > stems.size() - at || (longest && longest->stems.size() > size)) continue;
            if (std::equal(phrase.stems.begin(), phrase.stems.end(), from)) longest = &phrase;
        }
        return longest;
    }

    english::Stemmer stemmer_;
    std::unordered_map<std::string, std::vector<Phrase>> by_first_;
};

bool is_worded(const TextInResume& part) {
    return part.bullet || !part.field || has(part.field->name, trade::Trait::may_pad);
}

}

void office_words(const ProofContext& context, std::vector<Finding>& findings) {
    const StemmedPhrases phrases(context.rules().avoid);
    for (const TextInResume& part : context.texts) {
        if (!is_worded(part)) continue;
        const std::string& text = part.plain;
        phrases.each_in(
            text, [&](const office::WordToAvoid& rule, std::size_t at, std::size_t length) {
                Finding& finding = report<messages::avoided_words>(
                    findings, part.text.place(at, length), in_quotes(text.substr(at, length)));
                finding.suggestion =
                    rule.advice.empty() ? fill<messages::say_otherwise>() : rule.advice;
                add_office(finding,
                           context.office->says(fill<messages::office_asks>(), {rule.line, {}}));
            });
    }
}

void office_phrases(const ProofContext& context, std::vector<Finding>& findings) {
    const StemmedPhrases phrases(context.rules().phrases);
    for (const TextInResume& part : context.texts) {
        if (!is_worded(part)) continue;
        const std::string& text = part.plain;
        phrases.each_in(
            text, [&](const office::OfficePhrase& rule, std::size_t at, std::size_t length) {
                Finding& finding = report<messages::office_phrase>(
                    findings, part.text.place(at, length), in_quotes(text.substr(at, length)));
                finding.suggestion = rule.advice;
                finding.weight = rule.weight;
                const std::string warns = rule.source.empty()
                                              ? fill<messages::office_warns>()
                                              : fill<messages::office_quotes>(rule.source);
                add_office(finding, context.office->says(warns, {rule.line, {}}));
            });
    }
}

}
