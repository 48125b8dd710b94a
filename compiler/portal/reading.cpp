#include "compiler/portal/reading.hpp"

#include "compiler/portal/markup.hpp"

#include <algorithm>
#include <utility>

namespace quoin::portal {

namespace {

ReadBox box_of(const MarkupTag& tag) {
    return {number_in(tag, "xMin"), number_in(tag, "yMin"), number_in(tag, "xMax"),
            number_in(tag, "yMax")};
}

bool goes_on_to(const ReadLine& line, const ReadBox& next) {
    const double height = std::max(line.box.height(), next.height());
    return std::abs(line.box.middle() - next.middle()) < height / 2 &&
           next.left > line.words.back().box.left && next.left < line.box.right + 3 * height;
}

// The file's order knows no kerning: a quotation mark drawn back over a comma begins a new word,
// which no reader shows as one, for no space stands between.
bool touches(const ReadLine& line, const ReadBox& next) {
    constexpr double nothing = 0.02; // of the height
    const ReadBox& last = line.words.back().box;
    return next.left < last.right + nothing * last.height();
}

class ReadingBuilder {
public:
    explicit ReadingBuilder(Reading& out) : out_(out) {}

    void take(const MarkupTag& tag) {
        if (tag.name == "page") {
            out_.pages.push_back({number_in(tag, "width"), number_in(tag, "height")});
            open_ = false;
            ++block_;
        } else if (tag.name == "block") {
            ++block_;
        } else if (tag.name == "line") {
            lines_are_told_ = true;
            open_ = false;
        } else if (tag.name == "word" && !out_.pages.empty()) {
            add_word({clean_text(tag.text), box_of(tag)});
        }
    }

private:
    void add_word(ReadWord word) {
        if (word.text.find_first_not_of(' ') == std::string::npos) return;
        const bool same = open_ && (lines_are_told_ || goes_on_to(out_.lines.back(), word.box));
        if (!same) out_.lines.push_back({out_.pages.size() - 1, block_, word.box, {}});
        open_ = true;
        ReadLine& line = out_.lines.back();
        line.box = {std::min(line.box.left, word.box.left), std::min(line.box.top, word.box.top),
                    std::max(line.box.right, word.box.right),
                    std::max(line.box.bottom, word.box.bottom)};
        if (same && !lines_are_told_ && touches(line, word.box)) {
            line.words.back().text += word.text;
            line.words.back().box.right = std::max(line.words.back().box.right, word.box.right);
        } else {
            line.words.push_back(std::move(word));
        }
    }

    Reading& out_;
    std::size_t block_ = 0;
    bool open_ = false; // the last line may go on
    bool lines_are_told_ = false;
};

}

std::string ReadLine::text() const {
    std::string text;
    for (const ReadWord& word : words)
        text.append(text.empty() ? "" : " ").append(word.text);
    return text;
}

std::size_t Reading::word_count() const {
    std::size_t count = 0;
    for (const ReadLine& line : lines)
        count += line.words.size();
    return count;
}

std::string Reading::text() const {
    std::string text;
    const ReadLine* before = nullptr;
    for (const ReadLine& line : lines) {
        if (before && before->page != line.page)
            text += '\f';
        else if (before && before->block != line.block)
            text += '\n';
        text += line.text() + '\n';
        before = &line;
    }
    return text;
}

Reading read_boxes(std::string_view xml) {
    Reading reading;
    ReadingBuilder builder(reading);
    TagReader tags(xml);
    while (const auto tag = tags.next())
        builder.take(*tag);
    return reading;
}

double usual_height(const Reading& reading) {
    std::vector<std::pair<double, std::size_t>> heights; // and letters
    std::size_t letters = 0;
    for (const ReadLine& line : reading.lines)
        for (const ReadWord& word : line.words) {
            heights.emplace_back(word.box.height(), word.text.size());
            letters += word.text.size();
        }
    std::ranges::sort(heights);
    std::size_t seen = 0;
    for (const auto& [height, count] : heights)
        if (seen += count; 2 * seen >= letters) return height;
    return 0;
}

}
