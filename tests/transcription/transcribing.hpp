// Old documents in text, for tests of what is made of them.
#pragma once

#include "compiler/english/word_list.hpp"
#include "compiler/transcription/read_old.hpp"
#include "compiler/transcription/transcribe.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <initializer_list>
#include <string>
#include <string_view>
#include <variant>

namespace quoin::test {

inline const std::filesystem::path& data_folder() {
    static const std::filesystem::path folder = QUOIN_DATA_FOLDER;
    return folder;
}

inline const portal::PageLanguages& page_languages() {
    static const portal::PageLanguages languages =
        portal::page_languages(data_folder() / "themes" / "words");
    return languages;
}

inline transcription::OldReaders old_readers() {
    return {
        data_folder() / "fonts" / "readers.conf",
        [](std::string_view text) { return transcription::is_known_title(text, page_languages()); },
        {}};
}

inline transcription::Transcription transcribed(const transcription::OldDocument& document) {
    static const english::WordList words(data_folder() / "dictionaries" / "en_US.words");
    const auto is_word = [](std::string_view word) {
        return words.class_of(word) != english::WordList::is_none;
    };
    return transcription::transcribe(document,
                                     {page_languages(), is_word, data_folder() / "themes/words"});
}

// The source made of plain text; what stands in the way, if it cannot be read.
inline std::string source_of_text(std::string_view text) {
    const auto old = transcription::read_old_bytes(text, old_readers());
    if (const auto* fault = std::get_if<std::string>(&old)) return *fault;
    return transcribed(std::get<transcription::OldDocument>(old)).source;
}

// What is to be in the source made of a text.
inline void check_pieces(std::string_view text, std::initializer_list<const char*> pieces) {
    const std::string source = source_of_text(text);
    CAPTURE(source);
    for (const char* piece : pieces) {
        CAPTURE(piece);
        CHECK(source.find(piece) != std::string::npos);
    }
}

}
