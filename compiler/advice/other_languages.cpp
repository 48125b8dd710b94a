// The checks of any language are listed here; one that is not is for English alone.
#include "compiler/advice/other_languages.hpp"

#include "compiler/advice/messages.hpp"
#include "compiler/base/message.hpp"

#include <algorithm>
#include <array>
#include <system_error>

namespace quoin::advice {

namespace {

namespace fs = std::filesystem;

constexpr std::array<std::string_view, 35> of_any_language{
    "missing-contact", "email-form",      "email-tone",       "phone-form",
    "phone-notation",  "link-form",       "empty-section",    "section-twice",
    "degree-order",    "dates-missing",   "end-before-start", "day-given",
    "date-order",      "date-forms",      "expected-past",    "stale-present",
    "not-updated",     "bullet-count",    "employer-missing", "place-missing",
    "skills-missing",  "skill-twice",     "bullet-ends",      "dash",
    "spelling",        "text-size",       "margins",          "length",
    "page-fill",       "two-lines",       "emphasis",         "two-columns",
    "contrast",        "identity-number", "public-repository"};

// The country that a language's dictionary is named for, where the tag has none.
struct Dictionary {
    std::string_view language, name, package;
};
constexpr std::array<Dictionary, 4> dictionaries{{{"en-GB", "en_GB", "hunspell-en-gb"},
                                                  {"fr", "fr", "hunspell-fr"},
                                                  {"de", "de_DE", "hunspell-de-de"},
                                                  {"es", "es_ES", "hunspell-es"}}};

const Dictionary* dictionary_of(std::string_view language) {
    const auto* found = std::ranges::find(dictionaries, language, &Dictionary::language);
    if (found == dictionaries.end())
        found = std::ranges::find(dictionaries, language.substr(0, language.find('-')),
                                  &Dictionary::language);
    return found == dictionaries.end() ? nullptr : found;
}

}

bool is_english(const model::Resume& resume) {
    const std::string& language = *resume.settings.language;
    return language == "en" || language.starts_with("en-");
}

bool is_american(const model::Resume& resume) {
    return *resume.settings.language == "en" || *resume.settings.language == "en-US";
}

bool reads_any_language(std::string_view check) {
    return check.starts_with("accept-") ||
           std::ranges::find(of_any_language, check) != of_any_language.end();
}

std::optional<fs::path> installed_dictionary(const model::Resume& resume) {
    const Dictionary* named = dictionary_of(*resume.settings.language);
    if (is_american(resume) || !named) return std::nullopt;
    const fs::path path = fs::path("/usr/share/hunspell") / named->name;
    std::error_code fault;
    if (!fs::exists(fs::path(path) += ".dic", fault)) return std::nullopt;
    return path;
}

std::vector<std::string> passed_over(const model::Resume& resume) {
    std::vector<std::string> said;
    const std::string language = in_quotes(*resume.settings.language);
    if (!is_english(resume)) said.push_back(fill<messages::no_wording>(language));
    if (is_american(resume) || installed_dictionary(resume)) return said;
    const Dictionary* named = dictionary_of(*resume.settings.language);
    said.push_back(named ? fill<messages::no_dictionary>(language, named->package)
                         : fill<messages::no_known_dictionary>(language));
    return said;
}

}
