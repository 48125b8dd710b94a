// Plain text as a page of letters of one width.
#include "compiler/transcription/read_old.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/strange_signs.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/transcription/messages.hpp"
#include "compiler/transcription/running_lines.hpp"

#include <algorithm>
#include <utility>

namespace quoin::transcription {

namespace {

constexpr double letter_width = 6, line_height = 12; // pt, as a typewriter has it
constexpr std::size_t tab_stops = 8;

// `-----`, `* * *`: a line that rules off.
bool is_ruled(std::string_view line) {
    constexpr std::string_view signs = "-=_*~+#. ";
    return line.size() > 2 && line.find_first_not_of(signs) == line.npos;
}

class TextPage {
public:
    void add_line(std::string_view line) {
        const std::string plain = plain_signs(line, kept_signs(line));
        column_ = 0;
        strong_ = false;
        for (std::string_view left = plain; !left.empty() && !is_ruled(plain);)
            take(left);
        close_word();
        ++line_;
    }

    std::vector<PlacedWord> words() { return std::move(words_); }

private:
    void take(std::string_view& left) {
        const Character character = take_character(left);
        if (character.code == U' ' || character.code == U'\u00A0' || character.code == U'\t') {
            close_word();
            column_ = character.code == U'\t' ? (column_ / tab_stops + 1) * tab_stops : column_ + 1;
            return;
        }
        if (word_.empty()) begin_ = column_;
        word_ += character.bytes;
        ++column_;
    }

    void close_word() {
        if (word_.empty()) return;
        const double top = line_height * static_cast<double>(line_);
        OldWord word{without_emphasis(std::exchange(word_, {})),
                     letter_width * static_cast<double>(begin_),
                     letter_width * static_cast<double>(column_)};
        word.size = line_height;
        word.strong = word_strong_;
        if (word.text.empty()) return;
        words_.push_back({std::move(word), top, top + line_height - 1});
    }

    // `**Tide Clock** (2023)`, and `##` before a title, as texts for the web have them.
    std::string without_emphasis(std::string word) {
        constexpr std::string_view sign = "**";
        if (column_ == word.size() && word.find_first_not_of('#') == word.npos) word.clear();
        if (word.starts_with(sign) && word.size() > sign.size()) {
            strong_ = true;
            word.erase(0, sign.size());
        }
        word_strong_ = strong_;
        const std::size_t end = word.rfind(sign);
        if (!strong_ || end == word.npos || word.size() - end > sign.size() + 1) return word;
        strong_ = false;
        return word.erase(end, sign.size());
    }

    std::vector<PlacedWord> words_;
    bool strong_ = false, word_strong_ = false;
    std::string word_;
    std::size_t line_ = 0, column_ = 0, begin_ = 0;
};

}

OldDocument lines_of_text(std::string_view text, const IsTitle& is_title) {
    OldDocument document;
    std::vector<OldLine> lines;
    std::size_t count = 0;
    for (std::size_t page = 0; !text.empty() && count < most_lines; ++page) {
        const std::size_t end = std::min(text.find('\f'), text.size());
        TextPage one;
        std::string_view left = text.substr(0, end);
        for (; !left.empty() && count < most_lines; ++count) {
            const std::size_t line_end = std::min(left.find('\n'), left.size());
            one.add_line(left.substr(0, line_end));
            left.remove_prefix(std::min(line_end + 1, left.size()));
        }
        lines = lines_of_page(one.words(), page, is_title);
        std::ranges::move(lines, std::back_inserter(document.lines));
        text.remove_prefix(std::min(end + 1, text.size()) - left.size());
    }
    if (!text.empty()) document.remarks.push_back(fill<messages::lines_left>(most_lines));
    mark_running_lines(document.lines);
    return document;
}

}
