#include "compiler/portal/languages.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"

#include <algorithm>
#include <variant>

namespace quoin::portal {

namespace {

std::string without_signs(std::string_view word) {
    return straight_apostrophes(folded(trimmed(word, " ():,-")));
}

bool begins_with_word_of(const model::LocalDates& local, std::string_view text) {
    for (std::size_t what = 0; what < grammar::dates::local_count; ++what)
        if (local.length_at(text, static_cast<grammar::dates::Local>(what)) > 0) return true;
    return false;
}

// What holds none reads as English does, which is known by then.
bool holds_word_of(const model::LocalDates& local, std::string_view text) {
    for (; !text.empty(); text.remove_prefix(first_character(text).length))
        if (begins_with_word_of(local, text)) return true;
    return false;
}

}

std::optional<trade::Holds> PageLanguages::title(std::string_view text) const {
    const auto found =
        std::ranges::find(titles, without_signs(text), &page_words::SectionTitle::title);
    return found == titles.end() ? std::nullopt : std::optional(found->holds);
}

bool PageLanguages::says_continued(std::string_view text) const {
    return is_one_of(without_signs(text), continued);
}

std::optional<model::DateRange> dates_in_any(std::string_view text,
                                             const PageLanguages& languages) {
    auto read = model::read_dates(text);
    if (const auto* dates = std::get_if<model::DateRange>(&read)) return *dates;
    for (const model::LocalDates& local : languages.dates) {
        if (!holds_word_of(local, text)) continue;
        read = model::read_dates(text, local);
        if (const auto* dates = std::get_if<model::DateRange>(&read)) return *dates;
    }
    return std::nullopt;
}

PageLanguages page_languages(const std::filesystem::path& folder) {
    Sources sources;
    Diagnostics unheard; // nothing is lost but a language
    PageLanguages languages;
    for (const page_words::Words& words : page_words::read_all_words(sources, folder, unheard)) {
        languages.dates.emplace_back(words.dates);
        languages.continued.push_back(without_signs(words.continued));
        for (const page_words::SectionTitle& one : words.titles)
            languages.titles.push_back({without_signs(one.title), one.holds});
    }
    return languages;
}

}
