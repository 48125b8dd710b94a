#include "compiler/postings/titles.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/english/nouns.hpp"
#include "compiler/english/sentence.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/names.hpp"

#include <algorithm>

namespace quoin::postings {

namespace {

constexpr std::size_t lines_of_head = 8, most_words_of_title = 12;

bool is_of_work(std::string_view word) {
    return english::is_person_noun(word, english::Lexicon{}) ||
           is_one_of(word, List::names_of_workers);
}

bool may_be_title(const Statement& statement, std::uint32_t first_line) {
    return !statement.item && statement.line < first_line + lines_of_head &&
           !statement.text.ends_with('.') && word_count(statement.text) <= most_words_of_title;
}

}

JobTitle::JobTitle(std::span<const Statement> statements) {
    for (const Statement& statement : statements) {
        if (!may_be_title(statement, statements.front().line)) continue;
        std::set<std::string> words;
        for (const std::string_view word : parted(lower_case(statement.text), " ,/()"))
            words.emplace(trimmed(word, ".:!?"));
        if (std::ranges::any_of(words, is_of_work)) words_.merge(words);
    }
}

bool JobTitle::is_named_by(const Phrase& phrase, const Statement& statement) const {
    const auto in_title = [&](const std::string& word) { return words_.contains(word); };
    if (!std::ranges::all_of(phrase.lower, in_title) || !is_of_work(phrase.lower.back()))
        return false;
    if (statement.standing > Standing::preferred) return true;
    constexpr std::size_t longest_verb = 32; // is looking for a
    const std::size_t hiring = end_of_employer(statement.text);
    if (hiring > 0 && phrase.extent.offset < hiring + longest_verb) return true;
    constexpr std::size_t looked_at = 4;
    const std::size_t begin = phrase.extent.offset - std::min(phrase.extent.offset, looked_at);
    return lower_case(statement.text.substr(begin, phrase.extent.offset - begin)) == "the ";
}

}
