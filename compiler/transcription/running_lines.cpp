#include "compiler/transcription/running_lines.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/phrases.hpp"

#include <algorithm>
#include <set>
#include <string>

namespace quoin::transcription {

namespace {

// `page 1 of 2`, `Brandt, p. 2`, `2/2`; a number by itself.
bool numbers_page(const std::string& text) {
    constexpr std::size_t longest = 60, digits = 3;
    if (text.size() > longest || !has_digit(text)) return false;
    const std::string lower = lower_case(text);
    for (const std::string_view word : {"page", "seite", "p"})
        if (const std::size_t at = find_phrase(lower, word); at != std::string::npos) {
            const std::size_t figure = lower.find_first_not_of(" .", at + word.size());
            if (figure != std::string::npos && is_figure(lower[figure])) return true;
        }
    const bool year = text.size() == 4 && (text.starts_with("19") || text.starts_with("20"));
    return text.find_first_not_of("0123456789/- ") == std::string::npos && !year &&
           text.size() <= 2 * digits;
}

// The words of a page's first lines, in small letters: a name, and how to reach it.
std::set<std::string> words_at_top(const std::vector<OldLine>& lines) {
    constexpr std::size_t most = 6;
    std::set<std::string> words = {"continued",        "cont", "cont'd", "resume",
                                   "r\u00E9sum\u00E9", "cv",   "vitae",  "curriculum"};
    for (std::size_t i = 0; i < std::min(most, lines.size()); ++i)
        for (const OldWord& word : lines[i].words)
            words.insert(lower_case(trimmed(word.text, " ,.;:|()")));
    return words;
}

// On a further page, nothing but words that the first began with: `O. Brandt, continued`.
bool repeats_name(const OldLine& line, const std::set<std::string>& top, std::size_t least = 2) {
    std::size_t known = 0;
    for (const OldWord& word : line.words) {
        const std::string bare = lower_case(trimmed(word.text, " ,.;:|()-"));
        const bool sign = std::ranges::none_of(bare, is_letter_or_figure);
        if (!sign && !top.contains(bare)) return false;
        known += !sign;
    }
    return known >= least;
}

bool opens_with_name(const OldLine& line, const OldLine& first) {
    constexpr std::size_t least = 2; // words of a name
    std::size_t same = 0;
    while (same < std::min(line.words.size(), first.words.size()) &&
           line.words[same].text == first.words[same].text)
        ++same;
    return same >= least;
}

// At a page's foot, the name from its top with something beside it.
bool signs_off(const OldLine& line, const OldLine& first) {
    const std::string text = lower_case(line.text()), name = lower_case(first.text());
    return first.words.size() > 1 && first.words.size() < 5 && text.size() > name.size() &&
           text.starts_with(name) && line.size() < first.size() && !line.listed;
}

bool reaches_again(const OldLine& line, const std::set<std::string>& top) {
    const std::string text = line.text();
    return (has_digit(text) || text.find('@') != std::string::npos) && repeats_name(line, top, 1);
}

// A page's head in a text that was pasted as one: `Ottoline Brandt          Page 2`, on one line or
// on two, and below it how to reach her.
void mark_heads_within(std::vector<OldLine>& lines, const std::set<std::string>& top) {
    const auto numbers = [](const OldLine& line) { return numbers_page(line.text()); };
    const auto repeats = [&](const OldLine& line) { return repeats_name(line, top); };
    for (std::size_t i = 1; i < lines.size(); ++i) {
        const bool whole = numbers(lines[i]) && opens_with_name(lines[i], lines.front());
        const bool below = i > 1 && numbers(lines[i]) && repeats(lines[i - 1]);
        if (!whole && !below) continue;
        lines[i].running = true;
        if (below) lines[i - 1].running = true;
        while (i + 1 < lines.size() && reaches_again(lines[i + 1], top))
            lines[++i].running = true;
    }
}

}

void mark_running_lines(std::vector<OldLine>& lines) {
    constexpr std::size_t looked_at = 2; // at either end of a page
    const auto top = words_at_top(lines);
    for (std::size_t begin = 0; begin < lines.size();) {
        std::size_t end = begin;
        while (end < lines.size() && lines[end].page == lines[begin].page)
            ++end;
        for (std::size_t i = begin; i < end; ++i)
            if (i < begin + looked_at || i + looked_at >= end)
                lines[i].running = numbers_page(lines[i].text()) ||
                                   (lines[i].page > 0 && repeats_name(lines[i], top)) ||
                                   (i > begin + looked_at && signs_off(lines[i], lines.front()));
        begin = end;
    }
    mark_heads_within(lines, top);
}

}
