#include "compiler/advice/content_stems.hpp"

#include "compiler/advice/lists.hpp"
#include "compiler/advice/texts.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"

namespace quoin::advice {

bool is_little(std::string_view word) {
    return word.size() < 3 || has_digit(word) || is_one_of(word, List::needed_words) ||
           is_one_of(word, List::little_words) || is_one_of(word, List::number_words) ||
           is_one_of(word, List::function_words) || is_one_of(word, List::turns);
}

Stems stems_of(std::string_view text, const english::Stemmer& stemmer) {
    Stems stems;
    for (const WordAt& word : words_in(text)) {
        const std::string small = lower_case(word.word);
        if (!is_little(small)) stems.insert(stemmer.stem(small));
    }
    return stems;
}

std::size_t shared(const Stems& a, const Stems& b) {
    std::size_t both = 0;
    for (auto one = a.begin(), other = b.begin(); one != a.end() && other != b.end();) {
        const int order = one->compare(*other);
        both += order == 0;
        if (order <= 0) ++one;
        if (order >= 0) ++other;
    }
    return both;
}

}
