// Proper names in small letters: places, employers, schools, and what English gives a capital to.
#include "compiler/advice/consistency.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"

#include <algorithm>
#include <array>
#include <optional>

namespace quoin::advice {

namespace {

using trade::FieldName;

bool is_small_word(const WordAt& word) {
    return is_small_letter(word.word.front()) && all_small_letters(word.word);
}

// `kestrel bay, WA`, `Port Ellery, wa`; not `remote`.
std::optional<WordAt> small_in_place(std::string_view text) {
    const auto words = words_in(text);
    for (const WordAt& word : words) {
        if (!is_small_word(word) || is_one_of(word.word, List::small_in_names) ||
            is_one_of(word.word, List::minor_words) ||
            is_one_of(word.word, List::no_names_of_places))
            continue;
        const bool parted = text.find(", ") != text.npos;
        const bool all = std::ranges::all_of(words, is_small_word);
        if (parted || all) return word;
    }
    return std::nullopt;
}

// `gull charters`; `private families` is no name.
std::optional<WordAt> small_in_name(std::string_view text) {
    const auto words = words_in(text);
    if (words.size() < 2 || !std::ranges::all_of(words, is_small_word)) return std::nullopt;
    const bool general = std::ranges::any_of(words, [](const WordAt& word) {
        return is_one_of(word.word, List::no_names_of_employers);
    });
    return general ? std::nullopt : std::optional(words.front());
}

// `english`, `tuesday`: always with a capital; not in links and addresses.
std::optional<WordAt> small_in_text(std::string_view text) {
    for (const WordAt& word : words_in(text)) {
        if (!is_small_word(word) || !is_one_of(word.word, List::capital_words)) continue;
        const std::size_t end = word.offset + word.word.size();
        const bool joined =
            (end < text.size() && (text[end] == '.' || text[end] == '@') && end + 1 < text.size() &&
             is_ascii_letter(text[end + 1])) ||
            (word.offset > 0 &&
             std::string_view("@./").find(text[word.offset - 1]) != std::string_view::npos);
        if (!joined) return word;
    }
    return std::nullopt;
}

std::optional<WordAt> small_name_in(const TextInResume& part, std::string_view text) {
    if (part.field && has(part.field->name, trade::Trait::locates)) return small_in_place(text);
    constexpr std::array named{FieldName::employer, FieldName::school, FieldName::issuer,
                               FieldName::by, FieldName::activity};
    if (part.field && std::ranges::find(named, part.field->name) != named.end())
        return small_in_name(text);
    constexpr std::array passed{FieldName::link, FieldName::email};
    if (part.field && std::ranges::find(passed, part.field->name) != passed.end())
        return std::nullopt;
    return small_in_text(text);
}

}

void proper_names(const ProofContext& context, std::vector<Finding>& findings) {
    visit_texts(context.resume, [&](const TextInResume& part) {
        const std::string text = part.text.plain();
        const auto small = small_name_in(part, text);
        if (!small) return;
        report<messages::small_name>(findings, part.text.place(small->offset, small->word.size()),
                                     in_quotes(small->word));
    });
}

}
