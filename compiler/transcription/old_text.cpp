#include "compiler/transcription/old_text.hpp"

namespace quoin::transcription {

std::string joined_words(const std::vector<OldWord>& words, std::size_t begin, std::size_t end) {
    std::string text;
    for (std::size_t i = begin; i < end; ++i)
        text.append(text.empty() ? "" : " ").append(words[i].text);
    return text;
}

std::string OldLine::text() const {
    return joined_words(words, 0, words.size());
}

}
