// Languages that people speak, and the words for how well.
#include "compiler/advice/spoken_languages.hpp"
#include "compiler/base/phrases.hpp"

#include "compiler/advice/walk.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace quoin::advice {

namespace {

// Tables of words, in lines and not one below the other.
// clang-format off

// As US résumés name them.
constexpr std::array<std::string_view, 144> spoken_languages{
    "afrikaans", "akan", "albanian", "american sign language", "amharic", "arabic", "armenian",
    "asl", "aymara", "azerbaijani", "basque", "belarusian", "bengali", "bosnian",
    "brazilian portuguese", "bulgarian", "burmese", "cantonese", "cape verdean creole", "catalan",
    "cebuano", "chamorro", "cherokee", "chinese", "chuukese", "croatian", "czech", "danish",
    "dari", "dutch", "english", "esperanto", "estonian", "farsi", "fijian", "filipino", "finnish",
    "flemish", "french", "gaelic", "galician", "georgian", "german", "greek", "guarani",
    "gujarati", "haitian", "haitian creole", "hakka", "hausa", "hawaiian", "hebrew", "hindi",
    "hmong", "hokkien", "hungarian", "icelandic", "igbo", "ilocano", "indonesian", "irish",
    "italian", "japanese", "kannada", "karen", "kazakh", "khmer", "kinyarwanda", "korean", "krio",
    "kurdish", "lakota", "lao", "latin", "latvian", "lingala", "lithuanian", "lushootseed",
    "macedonian", "malagasy", "malay", "malayalam", "maltese", "mam", "mandarin",
    "mandarin chinese", "maori", "marathi", "marshallese", "mayan", "mixtec", "mongolian",
    "nahuatl", "navajo", "nepali", "norwegian", "odia", "oromo", "pashto", "persian", "polish",
    "portuguese", "punjabi", "quechua", "romanian", "russian", "samoan", "serbian",
    "shanghainese", "shona", "sign language", "sinhala", "slovak", "slovene", "slovenian",
    "somali", "spanish", "swahili", "swedish", "tagalog", "taiwanese", "tamil", "telugu",
    "teochew", "thai", "tibetan", "tigrinya", "toisanese", "tongan", "turkish", "twi",
    "ukrainian", "urdu", "uyghur", "uzbek", "vietnamese", "welsh", "wolof", "xhosa", "yiddish",
    "yoruba", "yupik", "zapotec", "zulu"};

// CEFR, ILR, and the usual words.
constexpr std::array<std::string_view, 34> levels{
    "a1", "a2", "b1", "b2", "c1", "c2", "native", "bilingual", "fluent", "fluency", "proficient",
    "proficiency", "advanced", "intermediate", "professional", "working", "conversational",
    "basic", "beginner", "beginning", "elementary", "limited", "heritage", "ilr", "cefr",
    "mother tongue", "reading", "novice", "superior", "independent", "full", "business",
    "learner", "distinguished"};

// In parentheses: what one can do in it.
constexpr std::array<std::string_view, 12> abilities{
    "read", "write", "written", "writing", "spoken", "speaking", "speak", "first language",
    "second language", "interpreting", "interpreter", "translating"};
// clang-format on

bool has_any_phrase(std::string_view text, const auto& phrases) {
    return std::ranges::any_of(phrases, [&](auto phrase) { return has_phrase(text, phrase); });
}

// "3", "3+", "0+": levels of ILR
bool is_grade(std::string_view word) {
    if (word.ends_with('+')) word.remove_suffix(1);
    return word.size() == 1 && word[0] >= '0' && word[0] <= '6';
}

// A grade alone, or after the scale that it is of: "3+", "ASL 3", "HSK 4", "JLPT N2". "3 years" is
// none.
bool is_graded(std::string_view inner) {
    const std::size_t space = inner.rfind(' ');
    const std::string_view last = inner.substr(space == std::string_view::npos ? 0 : space + 1);
    return is_grade(last) || (last.starts_with('n') && is_grade(last.substr(1)));
}

}

bool is_spoken_language(std::string_view lower) {
    return is_one_of(lower, spoken_languages);
}

bool are_spoken_languages(std::string_view lower) {
    for (const std::string_view sign : {" and ", " & ", "/"})
        if (const std::size_t at = lower.find(sign); at != std::string_view::npos)
            return is_spoken_language(trimmed(lower.substr(0, at), " ")) &&
                   are_spoken_languages(trimmed(lower.substr(at + sign.size()), " "));
    return is_spoken_language(lower);
}

bool has_language_level(std::string_view lower) {
    if (has_any_phrase(lower, levels)) return true;
    const std::size_t open = lower.find('('), close = lower.rfind(')');
    if (open == std::string_view::npos || close == std::string_view::npos || close < open)
        return false;
    const std::string_view inner = trimmed(lower.substr(open + 1, close - open - 1), " ");
    return is_graded(inner) || has_any_phrase(inner, abilities);
}

}
