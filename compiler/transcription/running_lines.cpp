#include "compiler/transcription/running_lines.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/phrases.hpp"

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
    return text.find_first_not_of("0123456789/- ") == std::string::npos &&
           text.size() <= 2 * digits;
}

}

void mark_running_lines(std::vector<OldLine>& lines) {
    constexpr std::size_t looked_at = 2; // at either end of a page
    for (std::size_t begin = 0; begin < lines.size();) {
        std::size_t end = begin;
        while (end < lines.size() && lines[end].page == lines[begin].page)
            ++end;
        for (std::size_t i = begin; i < end; ++i)
            if (i < begin + looked_at || i + looked_at >= end)
                lines[i].running = numbers_page(lines[i].text());
        begin = end;
    }
}

}
