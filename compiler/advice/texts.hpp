// Every text of the selected résumé with its words: read once for a proof, and looked at by all of
// its checks.
#pragma once

#include "compiler/base/phrases.hpp"
#include "compiler/english/sentence.hpp"
#include "compiler/stages/model/resume.hpp"

#include <cstddef>
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::advice {

struct WordAt { // letters and figures, apostrophes and hyphens within
    std::string_view word;
    std::size_t offset = 0;
};
std::vector<WordAt> words_in(std::string_view text);
WordAt word_from(std::string_view text, std::size_t at); // the first one; empty if there is none

// A text of the résumé, and what it is.
struct TextInResume {
    TextInResume(const model::Text& which, const model::Section* of_section,
                 const model::Field* of_field, const model::Bullet* of_bullet,
                 const english::Language& language);
    TextInResume(const TextInResume&) = delete; // the words lie in it
    TextInResume& operator=(const TextInResume&) = delete;

    const model::Text& text;
    const model::Section* section = nullptr; // null in the heading
    const model::Field* field = nullptr;     // null for titles and bullets
    const model::Bullet* bullet = nullptr;   // null for titles and fields
    bool in_heading = false;
    std::string plain, lower;   // `lower` in small letters
    Phrased phrased;            // `lower`
    std::vector<WordAt> words;  // of `plain`
    english::Sentence sentence; // words in italics are a title's, unless all are

    std::string_view small(const WordAt& word) const { // of `words`, in small letters
        return std::string_view(lower).substr(word.offset, word.word.size());
    }
};

// A figure that may have been grouped, 1,510, of which `words` has 1 and 510.
struct FigureAt {
    WordAt figure;
    std::size_t first = 0; // of the words, at which it begins
    double value = 0;
};
std::optional<FigureAt> figure_ending_at(const TextInResume& part, std::size_t word);

using TextsRead = std::deque<TextInResume>;
TextsRead read_texts(const model::Resume& resume, const english::Language& language); // in order

}
