// What is asked of the lists of labels that people type (words/labels.txt).
#include "compiler/trade/guessed_labels.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/trade/lists.hpp"
#include "compiler/trade/section_titles.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <string>

namespace quoin::trade {

namespace {

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
    return pieces_of(said_of(guess, lines_of(List::guessed_labels)).value_or(""), " ");
}

std::optional<std::string_view> meant_in_heading(std::string_view guess) {
    return first_that(guess, [](const Word& word) { return word.heading; });
}

std::optional<std::string_view> meant_in(Holds kind, std::string_view guess) {
    return first_that(guess, [kind](const Word& word) { return word.kinds.has(kind); });
}

bool means_bullets(std::string_view guess) {
    return is_one_of(guess, List::bullet_words);
}

bool means_section(std::string_view guess) {
    std::string title(guess);
    std::ranges::replace(title, '-', ' ');
    return is_section_title(title);
}

std::string_view has_no_place(std::string_view guess) {
    return said_of(guess, lines_of(List::labels_without_place)).value_or("");
}

bool begins_range(std::string_view guess) {
    return is_one_of(guess, List::range_begins);
}

bool ends_range(std::string_view guess) {
    return is_one_of(guess, List::range_ends);
}

}
