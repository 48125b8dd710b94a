#include "compiler/commands/posting/posting_pdf.hpp"

#include "compiler/base/ascii.hpp"

#include <algorithm>
#include <cstddef>
#include <map>
#include <span>
#include <string_view>
#include <vector>

namespace quoin::commands {

namespace {

using portal::ReadLine;
using portal::ReadWord;
using portal::StyledText;

constexpr std::size_t longest = 60; // bytes of a heading
constexpr std::size_t most_words_of_heading = 8;
constexpr double larger = 1.15; // than most letters

struct Look {
    double size = 0;
    bool strong = false;

    auto operator<=>(const Look&) const = default;
};

bool is_within(const ReadWord& word, const StyledText& style) {
    const double x = (word.box.left + word.box.right) / 2, y = word.box.middle();
    return style.box.left <= x && x <= style.box.right && style.box.top <= y &&
           y <= style.box.bottom;
}

class HeadingMarker {
public:
    explicit HeadingMarker(const portal::StyledReading& reading) : reading_(reading) {
        for (const StyledText& style : reading.styles)
            styles_[style.page].push_back(&style);
        std::map<Look, std::size_t> letters;
        for (const ReadLine& line : reading.by_place.lines)
            for (const ReadWord& word : line.words)
                letters[look_of(line, word)] += word.text.size();
        const auto most =
            std::ranges::max_element(letters, {}, [](const auto& look) { return look.second; });
        if (most != letters.end()) usual_ = most->first;
    }

    std::string text() const {
        std::string text;
        const ReadLine* before = nullptr;
        const std::vector<ReadLine>& lines = reading_.by_place.lines;
        for (std::size_t i = 0; i < lines.size(); ++i) {
            if (before && (before->page != lines[i].page || before->block != lines[i].block))
                text += '\n';
            const bool hangs = i + 1 < lines.size() && hangs_over(lines[i], lines[i + 1]);
            text += hangs ? heading(lines[i].text()) : marked(lines[i]);
            before = &lines[i];
        }
        return text;
    }

private:
    Look look_of(const ReadLine& line, const ReadWord& word) const {
        const auto page = styles_.find(line.page);
        if (page == styles_.end()) return {};
        for (const StyledText* style : page->second)
            if (is_within(word, *style)) return {style->size, style->strong};
        return {};
    }

    bool stands_out(const ReadLine& line, const ReadWord& word) const {
        const Look look = look_of(line, word);
        return (look.strong && !usual_.strong) || look.size > usual_.size * larger;
    }

    // Its words that stand out, from the first; with the rest of the line below it.
    std::string marked(const ReadLine& line) const {
        std::size_t count = 0;
        while (count < line.words.size() && stands_out(line, line.words[count]))
            ++count;
        const std::string head = words(std::span(line.words).first(count));
        const std::string rest = words(std::span(line.words).subspan(count));
        if (head.empty() || head.size() > longest || count > most_words_of_heading)
            return line.text() + '\n';
        const bool closed = std::string_view(":.!?").find(head.back()) != std::string_view::npos;
        if (!rest.empty() && !closed) return line.text() + '\n';
        return heading(head) + (rest.empty() ? "" : rest + '\n');
    }

    static std::string heading(const std::string& words) { return "\n## " + words + "\n\n"; }

    // A short line that is no sentence, with what is indented below it.
    static bool hangs_over(const ReadLine& line, const ReadLine& below) {
        constexpr double least = 18, most = 60; // pt
        const std::string text = line.text();
        const double indent = below.box.left - line.box.left;
        const bool sentence = std::string_view(".,;").find(text.back()) != std::string_view::npos;
        return line.page == below.page && below.box.top > line.box.top && indent >= least &&
               indent <= most && is_capital_letter(text.front()) && !sentence &&
               text.size() <= longest && line.words.size() <= most_words_of_heading;
    }

    static std::string words(std::span<const ReadWord> words) {
        std::string text;
        for (const ReadWord& word : words)
            text += (text.empty() ? "" : " ") + word.text;
        return text;
    }

    const portal::StyledReading& reading_;
    std::map<std::size_t, std::vector<const StyledText*>> styles_; // by page
    Look usual_;
};

}

std::string text_with_headings(const portal::StyledReading& reading) {
    return HeadingMarker(reading).text();
}

}
