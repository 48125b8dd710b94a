// Where in quoin's own data its parts lie.
#pragma once

#include <filesystem>

namespace quoin {

inline std::filesystem::path themes_in(const std::filesystem::path& data) {
    return data / "themes";
}

inline std::filesystem::path page_words_in(const std::filesystem::path& data) {
    return themes_in(data) / "words";
}

inline std::filesystem::path word_list_in(const std::filesystem::path& data) {
    return data / "dictionaries" / "en_US.words";
}

}
