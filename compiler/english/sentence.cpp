#include "compiler/english/sentence.hpp"

namespace quoin::english {

Sentence::Sentence(std::string_view text, std::span<const Extent> titles, const Lexicon& lexicon)
    : lexicon_(lexicon), tokens_(read_tokens(text, titles)) {
    classes_.reserve(size());
    forms_.reserve(size());
    for (const Token& token : tokens_) {
        const bool word = token.kind == TokenKind::word;
        const bool ampersand = token.kind == TokenKind::sign &&
                               text.substr(token.extent.offset, token.extent.length) == "&";
        classes_.push_back(word        ? word_classes(token.lower, lexicon_)
                           : ampersand ? word_class::conjunction
                                       : 0);
        forms_.push_back(word ? verb_forms(token.lower, lexicon_) : VerbForms{});
    }
}

bool Sentence::is_word(std::size_t i, std::initializer_list<std::string_view> any_of) const {
    if (i >= size()) return false;
    const std::string_view word = tokens_[i].lower;
    for (const std::string_view one : any_of) // most are told apart by their length or first letter
        if (one.size() == word.size() && one.front() == word.front() && one == word) return true;
    return false;
}

bool Sentence::ends_phrase(std::size_t i) const {
    const TokenKind kind = token(i).kind;
    return i >= size() || (kind != TokenKind::word && kind != TokenKind::figure);
}

std::size_t Sentence::past_adverbs(std::size_t i) const {
    while (is(i, word_class::adverb | word_class::negation) && !is(i, word_class::number))
        ++i;
    return i;
}

bool Sentence::starts_object(std::size_t i) const {
    if (i >= size()) return false;
    if (token(i).kind == TokenKind::quote || token(i).title) return true;
    if (is_number(i)) return true;
    if (is_word(i, {"that", "new", "over", "nearly", "approximately", "about", "up", "more"}))
        return is_number(i + 1) || is_word(i, {"new"});
    return is(i, word_class::determiner | word_class::possessive) ||
           is_word(i, {"them", "it", "him", "us", "me", "you"}) || word(i).ends_with("'s");
}

bool Sentence::is_participle(std::size_t i) const {
    return forms(i).participle;
}

Extent Sentence::extent(std::size_t first, std::size_t last) const {
    const std::size_t begin = token(first).extent.offset;
    const Extent& end = token(last).extent;
    return {begin, end.offset + end.length - begin};
}

}
