// What is asked of the lists of labels that people type (words/labels.txt).
#include "compiler/trade/guessed_labels.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/trade/lists.hpp"
#include "compiler/trade/section_titles.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <string>

namespace quoin::trade {

namespace {

// Without what forms have around a label: `your-phone-(optional)`, `license-#`.
std::string plain_label(std::string_view guess) {
    constexpr std::string_view openings[]{"your-", "my-"};
    constexpr std::string_view closings[]{"(required)", "(optional)", "(s)", "."};
    for (const std::string_view opening : openings)
        if (guess.starts_with(opening)) guess.remove_prefix(opening.size());
    for (const std::string_view closing : closings)
        if (guess.ends_with(closing))
            guess = trimmed(guess.substr(0, guess.size() - closing.size()), "-");
    const bool numbered = guess.size() > 2 && is_figure(guess.back()) && // project-1
                          guess[guess.size() - 2] == '-';
    if (numbered) guess.remove_suffix(2);
    if (!guess.ends_with('#')) return std::string(guess);
    return std::string(trimmed(guess, "-#")) + "-no";
}

std::optional<std::string_view> said_of_label(std::string_view guess, List list) {
    if (const auto said = said_of(guess, lines_of(list))) return said;
    return said_of(plain_label(guess), lines_of(list));
}

template<typename Fits>
std::optional<std::string_view> first_that(std::string_view guess, const Fits& fits) {
    for (const std::string_view label : meant_by(guess)) {
        const Word* word = find_word(label);
        if (word && label != guess && fits(*word)) return label;
    }
    return std::nullopt;
}

}

std::vector<std::string_view> meant_by(std::string_view guess) {
    const std::string plain = plain_label(guess);
    if (plain != guess)
        if (const Word* word = find_word(plain)) return {word->label};
    return pieces_of(said_of_label(guess, List::guessed_labels).value_or(""), " ");
}

std::optional<std::string_view> meant_in_heading(std::string_view guess) {
    return first_that(guess, [](const Word& word) { return word.heading; });
}

std::optional<std::string_view> meant_in(Holds kind, std::string_view guess) {
    return first_that(guess, [kind](const Word& word) { return word.kinds.has(kind); });
}

bool means_bullets(std::string_view guess) {
    return said_of_label(guess, List::bullet_words).has_value();
}

bool means_section(std::string_view guess) {
    std::string title(guess);
    std::ranges::replace(title, '-', ' ');
    return is_section_title(title);
}

std::string_view has_no_place(std::string_view guess) {
    return said_of_label(guess, List::labels_without_place).value_or("");
}

std::optional<LabelPiece> piece_of_label(std::string_view guess) {
    const auto said = said_of_label(guess, List::label_pieces);
    if (!said) return std::nullopt;
    return LabelPiece{said->substr(0, said->find(' ')), said->back()};
}

bool is_empty_value(std::string_view value) {
    return is_one_of(lower_case(trimmed(value)), List::empty_values);
}

bool is_ditto(std::string_view value) {
    return is_one_of(lower_case(trimmed(value, " .()")), List::ditto_values);
}

bool begins_range(std::string_view guess) {
    return is_one_of(guess, List::range_begins);
}

bool ends_range(std::string_view guess) {
    return is_one_of(guess, List::range_ends);
}

}
