#include "compiler/portal/languages.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/stages/page_words/words.hpp"

namespace quoin::portal {

namespace {

std::string without_signs(std::string_view word) {
    return folded(trimmed(word, " ():,-"));
}

}

bool PageLanguages::says_continued(std::string_view text) const {
    return is_one_of(without_signs(text), continued);
}

PageLanguages page_languages(const std::filesystem::path& folder) {
    Sources sources;
    Diagnostics unheard; // nothing is lost but a language
    PageLanguages languages;
    for (const page_words::Words& words : page_words::read_all_words(sources, folder, unheard)) {
        languages.dates.emplace_back(words.dates);
        languages.continued.push_back(without_signs(words.continued));
    }
    return languages;
}

}
