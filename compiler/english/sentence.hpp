// A bullet's words with all that is known of each: what the rules of reading look at.
#pragma once

#include "compiler/english/lexicon.hpp"
#include "compiler/english/tokens.hpp"
#include "compiler/english/verb_forms.hpp"
#include "compiler/english/word_classes.hpp"

#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <span>
#include <string_view>
#include <vector>

namespace quoin::english {

class Sentence {
public:
    Sentence(std::string_view text, std::span<const Extent> titles, const Lexicon& lexicon);
    Sentence(const Sentence&) = delete; // the forms point into the tokens
    Sentence& operator=(const Sentence&) = delete;

    const Lexicon& lexicon() const { return lexicon_; }
    const Tokens& tokens() const { return tokens_; }
    std::size_t size() const { return tokens_.size(); }
    // All of these take any index; past the end there is a stop without letters.
    const Token& token(std::size_t i) const { return i < size() ? tokens_[i] : end_; }
    const std::string& word(std::size_t i) const { return token(i).lower; }
    std::uint32_t classes(std::size_t i) const { return i < size() ? classes_[i] : 0; }
    const VerbForms& forms(std::size_t i) const { return i < size() ? forms_[i] : no_forms_; }

    bool is(std::size_t i, std::uint32_t any_of) const { return (classes(i) & any_of) != 0; }
    bool is(std::size_t i, List list) const { return lexicon_.has(word(i), list); }
    bool is_word(std::size_t i, std::initializer_list<std::string_view> any_of) const;
    bool is_figure(std::size_t i) const { return token(i).kind == TokenKind::figure; }
    bool is_number(std::size_t i) const { return is_figure(i) || is(i, word_class::number); }
    bool ends_phrase(std::size_t i) const; // a sign or the end: no word and no figure

    // Index of the first token at or after `i` that is no adverb.
    std::size_t past_adverbs(std::size_t i) const;
    // What starts the object of a verb: an article, a possessive, a number, a pronoun, a title.
    bool starts_object(std::size_t i) const;
    bool is_participle(std::size_t i) const; // counted, written: not the past alone

    Extent extent(std::size_t first, std::size_t last) const; // of tokens first to last

private:
    Lexicon lexicon_;
    Tokens tokens_;
    std::vector<std::uint32_t> classes_;
    std::vector<VerbForms> forms_;
    Token end_{TokenKind::stop, {}, {}, {}, 0, false};
    VerbForms no_forms_;
};

}
