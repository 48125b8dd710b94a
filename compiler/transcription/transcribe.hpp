// An old document to the source of a draft. Every word of it is in a field, in a bullet or in a
// comment; what is guessed is said in a comment above it.
#pragma once

#include "compiler/transcription/draft.hpp"
#include "compiler/transcription/old_text.hpp"
#include "compiler/transcription/rows.hpp"
#include "compiler/transcription/titles.hpp"

#include <filesystem>
#include <string>

namespace quoin::transcription {

struct TranscriptionTools {
    const portal::PageLanguages& languages;
    IsWord is_word;
    std::filesystem::path words; // of pages, as model::build_resume has it
};

struct Transcription {
    std::string source;
    std::size_t sections = 0, entries = 0, bullets = 0, guesses = 0;
};
Transcription transcribe(const OldDocument& document, const TranscriptionTools& tools);

}
