// One table of the lines, with where the words of each go.
#include "compiler/stages/page_words/words.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/stages/page_words/messages.hpp"
#include "compiler/stages/syntax/parse.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <span>
#include <system_error>
#include <utility>

namespace quoin::page_words {

namespace {

namespace fs = std::filesystem;

using Places = std::span<std::string>; // as many as the line has, parted by commas

struct WordsLine {
    std::string_view label;
    Places (*of)(Words&);
};

template<std::string Words::*word>
Places one_of(Words& words) {
    return {&(words.*word), 1};
}

template<std::string DateWords::*word>
Places one_of_dates(Words& words) {
    return {&(words.dates.*word), 1};
}

constexpr WordsLine words_lines[] = {
    {"months", [](Words& words) -> Places { return words.dates.months; }},
    {"short-months", [](Words& words) -> Places { return words.dates.short_months; }},
    {"long-date", one_of_dates<&DateWords::long_date>},
    {"short-date", one_of_dates<&DateWords::short_date>},
    {"seasons", [](Words& words) -> Places { return words.dates.seasons; }},
    {"present", one_of_dates<&DateWords::present>},
    {"expected", one_of_dates<&DateWords::expected>},
    {"email", one_of<&Words::email>},
    {"phone", one_of<&Words::phone>},
    {"web-page", one_of<&Words::web_page>},
    {"resume", one_of<&Words::resume>},
    {"continued", one_of<&Words::continued>},
};

struct ReadingLine { // any number of words, which may be missing
    std::string_view label;
    std::vector<std::string> DateWords::*of;
};

constexpr ReadingLine reading_lines[] = {
    {"reads-present", &DateWords::reads_present}, {"reads-expected", &DateWords::reads_expected},
    {"reads-to", &DateWords::reads_to},           {"reads-since", &DateWords::reads_since},
    {"reads-of", &DateWords::reads_of},
};

std::vector<std::string> words_with_commas(const std::string& list) {
    std::vector<std::string> words;
    for (std::size_t start = 0; start <= list.size();) {
        const std::size_t end = std::min(list.find(',', start), list.size());
        words.emplace_back(trimmed(std::string_view(list).substr(start, end - start)));
        start = end + 1;
    }
    return words;
}

// `titles-education: Formation, Études`; none needs to be there.
bool read_titles(std::string_view label, const std::string& value, Words& words) {
    constexpr std::string_view before = "titles-";
    if (!label.starts_with(before)) return false;
    const auto holds = trade::named<trade::Holds>(label.substr(before.size()));
    if (!holds) return false;
    for (std::string& title : words_with_commas(value))
        words.titles.push_back({std::move(title), *holds});
    return true;
}

Places places_of(std::string_view label, Words& words) {
    const auto* pattern = std::ranges::find(pattern_words, label);
    if (pattern != pattern_words.end())
        return {&words.of_patterns[static_cast<std::size_t>(pattern - pattern_words.begin())], 1};
    const auto* line = std::ranges::find(words_lines, label, &WordsLine::label);
    return line == std::end(words_lines) ? Places{} : line->of(words);
}

void read_words_line(const syntax::Node& node, Words& words, Diagnostics& diagnostics) {
    const std::string value = node.value.joined();
    const auto* reading = std::ranges::find(reading_lines, node.label.text, &ReadingLine::label);
    if (reading != std::end(reading_lines)) {
        words.dates.*(reading->of) = words_with_commas(value);
        return;
    }
    if (read_titles(node.label.text, value, words)) return;
    const Places into = places_of(node.label.text, words);
    if (into.empty())
        return diagnostics.error(node.place, fill<messages::no_such_words>(node.label.text));
    const std::vector<std::string> given = words_with_commas(value);
    if (given.size() != into.size())
        return diagnostics.error(
            node.value.place(),
            fill<messages::count_of_words>(node.label.text, into.size(), given.size()));
    std::ranges::copy(given, into.begin());
}

void require_all(std::uint32_t file, Words& words, Diagnostics& diagnostics) {
    const auto require = [&](std::string_view label) {
        if (places_of(label, words).front().empty())
            diagnostics.error({.file = file}, fill<messages::words_missing>(label));
    };
    for (const WordsLine& line : words_lines)
        require(line.label);
    std::ranges::for_each(pattern_words, require);
}

// The file of a whole language has every line; one of a region has those that differ.
void read_words_file(Sources& sources, const fs::path& path, Words& words,
                     Diagnostics& diagnostics) {
    const std::size_t errors_before = diagnostics.count(Severity::error);
    const auto file = sources.read(path, diagnostics);
    if (!file) return;
    const syntax::Tree tree = parse(sources, *file, diagnostics, syntax::Braces::text);
    for (const syntax::Block& block : tree.heading)
        for (const syntax::Node& node : block)
            if (node.kind != syntax::Node::Kind::comment) read_words_line(node, words, diagnostics);
    if (diagnostics.count(Severity::error) == errors_before) require_all(*file, words, diagnostics);
    words.files.push_back(path);
}

std::vector<std::string> languages_in(const fs::path& folder) {
    std::vector<std::string> names;
    std::error_code fault;
    for (const auto& entry : fs::directory_iterator(folder, fault))
        names.push_back(entry.path().filename().string());
    std::ranges::sort(names);
    return names;
}

// One that only fails is told by whoever reads it: a page without its words would be another.
bool is_missing(const Sources& sources, const fs::path& file) {
    std::error_code fault;
    return !sources.holds(file) && fs::status(file, fault).type() == fs::file_type::not_found;
}

}

const std::string& Words::of_pattern(std::string_view name) const {
    const auto* found = std::ranges::find(pattern_words, name);
    return of_patterns.at(static_cast<std::size_t>(found - pattern_words.begin()));
}

std::vector<Words> read_all_words(Sources& sources, const fs::path& folder,
                                  Diagnostics& diagnostics) {
    std::vector<Words> all;
    for (const std::string& language : languages_in(folder))
        if (language.find('-') == std::string::npos)
            all.push_back(read_words(sources, folder, language, {}, diagnostics));
    return all;
}

Words read_words(Sources& sources, const fs::path& folder, const std::string& language,
                 Place asked_at, Diagnostics& diagnostics) {
    Words words;
    const std::string whole = language.substr(0, language.find('-'));
    if (is_missing(sources, folder / whole)) {
        const auto names = languages_in(folder);
        diagnostics.error(asked_at, names.empty()
                                        ? fill<messages::no_words_at_all>(folder.string())
                                        : fill<messages::no_language>(
                                              in_quotes(language), fmt::join(names, ", "), whole));
        return words;
    }
    for (std::size_t end = whole.size(); end != std::string::npos;
         end = end == language.size() ? std::string::npos
                                      : std::min(language.find('-', end + 1), language.size())) {
        const fs::path path = folder / language.substr(0, end);
        if (!is_missing(sources, path)) read_words_file(sources, path, words, diagnostics);
    }
    return words;
}

}
