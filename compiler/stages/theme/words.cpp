#include "compiler/stages/theme/words.hpp"

#include "compiler/stages/syntax/parse.hpp"
#include "compiler/stages/theme/messages.hpp"
#include "compiler/stages/theme/values.hpp"

#include <algorithm>
#include <span>

namespace quoin::theme {

namespace {

struct WordsLine {
    std::string_view label;
    std::span<std::string> (*of)(Words&); // as many as the line has, parted by commas
};

template<std::string Words::*Member>
std::span<std::string> one(Words& words) {
    return {&(words.*Member), 1};
}

constexpr WordsLine words_lines[] = {
    {"months", [](Words& words) -> std::span<std::string> { return words.dates.months; }},
    {"short-months",
     [](Words& words) -> std::span<std::string> { return words.dates.short_months; }},
    {"seasons", [](Words& words) -> std::span<std::string> { return words.dates.seasons; }},
    {"present", [](Words& words) { return std::span(&words.dates.present, 1); }},
    {"expected", [](Words& words) { return std::span(&words.dates.expected, 1); }},
    {"email", one<&Words::email>},
    {"phone", one<&Words::phone>},
    {"web-page", one<&Words::web_page>},
    {"resume", one<&Words::resume>},
};

void read_words_line(const syntax::Node& node, Words& words, Diagnostics& diagnostics) {
    const auto* line = std::ranges::find(words_lines, node.label.text, &WordsLine::label);
    if (line == std::end(words_lines))
        return diagnostics.error(node.place, fill<messages::no_such_words>(node.label.text));
    const std::span<std::string> into = line->of(words);
    const std::vector<std::string> given = parted_by_commas(node.value.joined());
    if (given.size() != into.size())
        return diagnostics.error(node.value.place(), fill<messages::count_of_words>(
                                                         line->label, into.size(), given.size()));
    std::ranges::copy(given, into.begin());
}

}

Words read_words(Sources& sources, const std::filesystem::path& path, Diagnostics& diagnostics) {
    Words words;
    const auto file = sources.read(path, diagnostics);
    if (!file) return words;
    const syntax::Tree tree = parse(sources, *file, diagnostics, syntax::Braces::text);
    for (const syntax::Block& block : tree.heading)
        for (const syntax::Node& node : block)
            if (node.kind != syntax::Node::Kind::comment) read_words_line(node, words, diagnostics);
    for (const WordsLine& line : words_lines)
        if (line.of(words).front().empty() && !diagnostics.has_errors())
            diagnostics.error({.file = *file}, fill<messages::words_missing>(line.label));
    return words;
}

}
