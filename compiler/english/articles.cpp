// The sound is that of the word's letters, of its letters' names, or of its figures; where a word
// may be said in several ways, all of them must agree.
#include "compiler/english/articles.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/english/neighbours.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace quoin::english {
namespace {

enum class Sound { vowel, consonant, either };

bool starts_with_any(std::string_view word, const auto& beginnings) {
    return std::ranges::any_of(beginnings,
                               [&](std::string_view one) { return word.starts_with(one); });
}

Sound sound_of_letter_name(char letter) { // em, en, ess; but bee, you
    return std::string_view("aefhilmnorsx").find(letter) != std::string_view::npos
               ? Sound::vowel
               : Sound::consonant;
}

// u as in use, and as in under
Sound sound_of_u(std::string_view word) {
    constexpr std::array<std::string_view, 16> as_you{"usa", "use",  "usi",  "usu", "uti", "ute",
                                                      "uto", "ura",  "ure",  "uri", "eu",  "ubiq",
                                                      "uni", "unan", "ukul", "uro"};
    constexpr std::array<std::string_view, 9> as_in_under{"unim", "unin", "unid", "unig", "unir",
                                                          "unil", "usab", "ub",   "uk"};
    constexpr std::array<std::string_view, 6> surely_you{"unilat", "unidir", "unimod",
                                                         "usable", "uninom", "unary"};
    if (starts_with_any(word, surely_you)) return Sound::consonant;
    if (starts_with_any(word, as_in_under))
        return word.starts_with("unin") || word.starts_with("unim") || word.starts_with("unident")
                   ? Sound::vowel
                   : Sound::either;
    return starts_with_any(word, as_you) ? Sound::consonant : Sound::vowel;
}

// Of a word in small letters, said as one.
Sound sound_of_word(std::string_view word) {
    constexpr std::array<std::string_view, 4> as_won{"one", "once", "onetime", "oneself"};
    constexpr std::array<std::string_view, 4> silent_h{"hour", "honest", "hono", "heir"};
    constexpr std::array<std::string_view, 10> said_both_ways{"hyster", "halluc", "herb",  "histor",
                                                              "hotel",  "homage", "habit", "heroi",
                                                              "hors",   "heredit"};
    const std::string_view first = word.substr(0, std::min(word.find_first_of("-'"), word.size()));
    if (is_one_of(first, as_won)) return Sound::consonant;
    if (starts_with_any(word, said_both_ways)) return Sound::either;
    if (starts_with_any(word, silent_h)) return Sound::vowel;
    if (word.starts_with("eu") || word.starts_with("ew") || word.starts_with("oui"))
        return Sound::consonant;
    if (word.starts_with('u')) return sound_of_u(word);
    if (word.starts_with('y')) // yttrium, Ypres
        return word.size() > 1 && !is_vowel(word[1]) ? Sound::either : Sound::consonant;
    return is_vowel(word.front()) ? Sound::vowel : Sound::consonant;
}

// Eight, eleven, eighteen, eighty; a figure of four places from 11 or 18 on may be read by
// hundreds.
Sound sound_of_figure(std::string_view figure) {
    if (!figure.empty() && figure.front() == '$') figure.remove_prefix(1);
    std::string digits;
    std::size_t at = 0;
    for (; at < figure.size() && (is_figure(figure[at]) || figure[at] == ','); ++at)
        if (figure[at] != ',') digits += figure[at];
    if (digits.empty() || digits.front() == '0') return Sound::either;
    if (digits.front() == '8') return Sound::vowel;
    if (!digits.starts_with("11") && !digits.starts_with("18")) return Sound::consonant;
    switch (digits.size() % 3) {
    case 2:
        return Sound::vowel; // 11, 18,000
    case 1:
        return Sound::either;
    default:
        return Sound::consonant; // 110, 180
    }
}

Sound agreed(Sound one, Sound other) {
    return one == other ? one : Sound::either;
}

// NASA, FEMA; but FBI, HTML, MRI are said by their letters, as no word begins so.
bool may_be_said(std::string_view small) {
    constexpr std::string_view beginnings =
        " bl br ch cl cr dr fl fr gl gr kn ph pl pr qu sc sh sk "
        "sl sm sn sp squ st sw th tr tw wh wr ";
    const std::size_t vowel = small.find_first_of("aeiouy");
    if (vowel == std::string_view::npos) return false;
    if (vowel < 2) return true;
    return beginnings.find(' ' + std::string(small.substr(0, vowel)) + ' ') !=
           std::string_view::npos;
}

// API, MRI; URL and USB are spelled by most, SQL by some.
Sound sound_of_capitals(std::string_view small) {
    constexpr std::size_t short_one = 3;
    const Sound spelled = sound_of_letter_name(small.front());
    if (small == "sql") return Sound::either;
    if (small.front() == 'u' && small.size() <= short_one) return spelled;
    return may_be_said(small) ? agreed(spelled, sound_of_word(small)) : spelled;
}

Sound sound_of(const Token& token) {
    if (token.kind == TokenKind::figure) return sound_of_figure(token.text);
    const std::string_view text = token.text, small = token.lower;
    if (!is_ascii_letter(text.front())) return Sound::either;
    const std::size_t end = std::min(small.find_first_of("-/&'."), small.size());
    const std::string_view first = text.substr(0, end), first_small = small.substr(0, end);
    if (first.size() == 1) // X-ray, an A; but not a x b
        return first.size() == text.size() && is_small_letter(text.front())
                   ? Sound::either
                   : sound_of_letter_name(first_small.front());
    const bool has_capitals = std::ranges::any_of(first.substr(1), is_capital_letter);
    if (has_capitals && std::ranges::none_of(first, is_small_letter))
        return sound_of_capitals(first_small);
    const bool worded = !has_capitals && !has_digit(first) && may_be_said(first_small);
    const Sound as_word = sound_of_word(small);
    return worded ? as_word : agreed(sound_of_letter_name(first_small.front()), as_word); // mRNA
}

// The letter A, and what is no article: Hepatitis A outbreaks, a la carte.
bool is_article(const Sentence& sentence, std::size_t i) {
    const Token& token = sentence.token(i);
    if (token.kind != TokenKind::word || (token.lower != "a" && token.lower != "an")) return false;
    const bool opens = i == 0 || sentence.token(i - 1).kind == TokenKind::stop;
    return !token.title && (opens || !is_capital(token));
}

bool stands_before(const Sentence& sentence, std::size_t i) { // a word or a figure, after a blank
    const Token &article = sentence.token(i), &next = sentence.token(i + 1);
    constexpr std::uint32_t no_phrase = word_class::conjunction | word_class::preposition |
                                        word_class::be | word_class::relative |
                                        word_class::pronoun | word_class::modal;
    const bool worded =
        (next.kind == TokenKind::word || next.kind == TokenKind::figure) &&
        (is_all_capitals(next) || !sentence.is(i + 1, no_phrase)); // vitamins a and e
    return i + 1 < sentence.size() && worded && !next.title && next.depth == article.depth &&
           next.extent.offset == article.extent.offset + article.extent.length + 1;
}

// `food an water`: `and` may have been meant.
bool may_be_and(const Sentence& sentence, std::size_t i) {
    const auto noun = kind_named("noun"); // named as in the table
    return sentence.word(i) == "an" &&
           (kinds_of(sentence, i - 1) & kinds_of(sentence, i + 1) & *noun);
}

WordSlip article_slip(const Sentence& sentence, std::size_t i) {
    const Token& token = sentence.token(i);
    const std::string meant = token.lower == "a" ? "an" : "a";
    return {token.extent, is_capital(token) ? capitalised(meant) : meant, !may_be_and(sentence, i)};
}

}

std::vector<WordSlip> find_article_slips(const Sentence& sentence) {
    std::vector<WordSlip> slips;
    for (std::size_t i = 0; i < sentence.size(); ++i) {
        if (!is_article(sentence, i) || !stands_before(sentence, i)) continue;
        const Sound said = sound_of(sentence.token(i + 1));
        const Sound right = sentence.word(i) == "a" ? Sound::consonant : Sound::vowel;
        if (said != Sound::either && said != right) slips.push_back(article_slip(sentence, i));
    }
    return slips;
}

}
