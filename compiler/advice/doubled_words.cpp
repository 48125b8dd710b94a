// Words that stand twice in a row, but for those that may: `to log in in Spanish`.
#include "compiler/advice/consistency.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/english/language.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace quoin::advice {

namespace {

constexpr std::array<std::string_view, 3> forms_of_be{"is", "are", "was"};
constexpr std::array<std::string_view, 9> subjects{"it",   "that", "this",  "he",  "she",
                                                   "they", "we",   "there", "what"};

bool only_blanks_between(std::string_view text, std::size_t begin, std::size_t end) {
    return begin < end && std::ranges::all_of(text.substr(begin, end - begin),
                                              [](char c) { return c == ' ' || c == '\t'; });
}

// Long words in small letters: names such as Walla Walla are written with capitals.
bool is_surely_doubled(std::string_view word) {
    constexpr std::size_t long_enough = 5;
    if (is_one_of(lower_case(word), List::function_words)) return true;
    return word.size() >= long_enough && all_small_letters(word);
}

// After `before`: `log in in Spanish`, `what it is is a map`.
bool may_stand_twice(std::string_view before, std::string_view word,
                     const english::Language& language) {
    const std::string small = lower_case(before), doubled = lower_case(word);
    if (is_one_of(doubled, forms_of_be)) return is_one_of(small, subjects);
    if (!is_one_of(doubled, List::verb_particles)) return false;
    const auto base = language.base_of(small);
    return is_one_of(small, List::verbs_with_particles) ||
           (base && is_one_of(*base, List::verbs_with_particles));
}

// Titles, which are as their owners wrote them: in double quotes, or in italics.
class Titles {
public:
    Titles(const model::Text& text, std::string_view plain) : text_(text), plain_(plain) {}

    // Asked from the front to the back.
    bool hold(std::size_t offset) {
        for (; at_ < offset; ++at_) {
            const std::string_view rest = plain_.substr(at_);
            if (rest.starts_with("“")) quoted_ = true;
            if (rest.starts_with("”")) quoted_ = false;
        }
        while (span_ < text_.spans.size() && span_end() <= offset) {
            span_begin_ = span_end();
            ++span_;
        }
        return quoted_ || (span_ < text_.spans.size() && text_.spans[span_].marks.emphasis);
    }

private:
    std::size_t span_end() const { return span_begin_ + text_.spans[span_].text.size(); }

    const model::Text& text_;
    std::string_view plain_;
    std::size_t at_ = 0;
    bool quoted_ = false;
    std::size_t span_ = 0, span_begin_ = 0;
};

std::string_view source_before(const Sources& sources, const Place& place) {
    const std::string_view line = sources.file(place.file).line(place.line);
    return line.substr(0, std::min<std::size_t>(place.column - 1, line.size()));
}

struct Doubled { // bytes of the text
    WordAt one, two;
    std::size_t end_of_one() const { return one.offset + one.word.size(); }
    std::size_t end() const { return two.offset + two.word.size(); }
};

void report_doubled(const Doubled& words, const model::Text& text, std::string_view plain,
                    const Sources& sources, std::vector<Finding>& findings) {
    const std::size_t length = words.end() - words.end_of_one();
    const Place second = text.place(words.end_of_one(), length);
    std::vector<Edit> mend;
    const std::string_view before = source_before(sources, second);
    // no mark stands between, which would be left without its word
    if (before.ends_with(words.one.word) &&
        source_at(sources, second) == plain.substr(words.end_of_one(), length))
        mend.push_back({second, ""});
    const std::size_t begin = words.one.offset;
    report<messages::doubled_word>(findings, text.place(begin, words.end() - begin), words.one.word,
                                   words.two.word)
        .safe_mend = std::move(mend);
}

}

void doubled_words(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        const std::string& text = part.plain;
        const auto& words = part.words;
        Titles titles(part.text, text);
        for (std::size_t i = 1; i < words.size(); ++i) {
            const Doubled two{words[i - 1], words[i]};
            const bool doubled =
                part.small(two.one) == part.small(two.two) && is_surely_doubled(two.two.word) &&
                only_blanks_between(text, two.end_of_one(), two.two.offset) &&
                !(i > 1 && may_stand_twice(words[i - 2].word, two.two.word, context.language)) &&
                !titles.hold(two.one.offset) && !titles.hold(two.two.offset);
            if (doubled) report_doubled(two, part.text, text, context.sources, findings);
        }
    }
}

}
