#include "compiler/transcription/page_parts.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/transcription/evidence.hpp"
#include "compiler/transcription/heading_block.hpp"
#include "compiler/transcription/old_dates.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace quoin::transcription {

namespace {

class PageParser {
public:
    PageParser(const std::vector<OldLine>& lines, const portal::PageLanguages& languages,
               const IsWord& is_word)
        : lines_(lines), languages_(languages), is_word_(is_word),
          titles_(find_titles(lines, languages)), name_(find_name_line(lines)) {}

    PageParts parse() {
        const std::size_t first = titles_.empty() ? lines_.size() : titles_.front().line;
        add_heading(0, titles_.empty() ? std::min<std::size_t>(first, head_of_untitled()) : first);
        if (titles_.empty()) add_untitled();
        for (std::size_t i = 0; i < titles_.size(); ++i)
            add_section(titles_[i], i + 1 < titles_.size() ? titles_[i + 1].line : lines_.size());
        return std::move(page_);
    }

private:
    std::vector<OldRow> rows(std::vector<OldLine> lines) const {
        return rows_below(lines, is_word_);
    }

    std::vector<OldLine> part(std::size_t begin, std::size_t end) const {
        return {lines_.begin() + static_cast<std::ptrdiff_t>(begin),
                lines_.begin() + static_cast<std::ptrdiff_t>(end)};
    }

    // The name stands by itself, so that nothing above is joined with it.
    void add_heading(std::size_t begin, std::size_t end) {
        const bool here = name_ && begin <= *name_ && *name_ < end && !page_.name_row;
        if (!here) return append(part(begin, end));
        append(part(begin, *name_));
        page_.name_row = page_.heading.size();
        std::vector<OldLine> name = part(*name_, *name_ + 1);
        std::size_t next = *name_ + 1;
        if (next < end && goes_on_with_name(next)) {
            OldLine& line = name.front();
            std::vector<OldWord> more = lines_[next++].words;
            if (line.words.back().text.ends_with('-')) {
                line.words.back().text += more.front().text;
                more.erase(more.begin());
            }
            std::ranges::move(more, std::back_inserter(line.words));
        }
        append(std::move(name));
        append(part(next, end));
    }

    // A long name in a narrow column takes two lines of the same large letters.
    bool goes_on_with_name(std::size_t at) const {
        const OldLine &name = lines_[*name_], &line = lines_[at];
        const OldWord &first = name.words.front(), &next = line.words.front();
        const bool alike = first.font == next.font && first.strong == next.strong &&
                           std::abs(first.size - next.size) < 0.5;
        const bool open = name.words.back().text.ends_with('-');
        return alike && name.page == line.page && line.words.size() <= 2 &&
               !has_digit(line.text()) && line.text().find('@') == std::string::npos &&
               (open || (name.words.size() < 3 && stands_out(name) && line.gap < 0.6));
    }

    // As no line but the name and what belongs to it does.
    bool stands_out(const OldLine& name) const {
        return std::ranges::count_if(lines_, [&](const OldLine& line) {
                   return line.size() > name.size() - 0.5;
               }) == 2;
    }

    void append(std::vector<OldLine> lines) {
        std::ranges::move(rows(std::move(lines)), std::back_inserter(page_.heading));
    }

    // In a page of columns the name may stand below titles of the first.
    void add_section(const FoundTitle& title, std::size_t end) {
        const std::size_t begin = title.line;
        const bool names = name_ && *name_ > begin && *name_ < end;
        if (names) add_heading(*name_, end);
        std::vector<OldLine> lines = part(begin, names ? *name_ : end);
        OldLine& first = lines.front();
        first.words.erase(first.words.begin(),
                          first.words.begin() + static_cast<std::ptrdiff_t>(title.words));
        if (first.words.empty())
            lines.erase(lines.begin());
        else
            first.words.front().apart = false;
        if (!lines.empty()) lines.front().gap = 0;
        if (title.below == Below::contact) {
            page_.aside.push_back(title.text);
            append(std::move(lines));
        } else {
            page_.sections.push_back({title, rows(std::move(lines))});
        }
    }

    // Lines with something to reach somebody by, and the name; what has a date is below them.
    std::size_t head_of_untitled() const {
        constexpr std::size_t most = 6;
        std::size_t end = name_ ? *name_ + 1 : 1;
        for (std::size_t i = end; i < std::min(lines_.size(), most); ++i) {
            const std::string text = lines_[i].text();
            if (!dates_on(lines_[i].words, languages_).empty()) break;
            if (text.find('@') != std::string::npos || has_digit(text) ||
                KnownTowns().place_at_end(text) == text.size())
                end = i + 1;
        }
        return end;
    }

    void add_untitled() {
        const std::size_t begin = std::min(head_of_untitled(), lines_.size());
        if (begin == lines_.size()) return;
        page_.untitled = true;
        FoundTitle title{begin, 0, "Experience", std::nullopt, Below::entries};
        page_.sections.push_back({title, rows(part(begin, lines_.size()))});
    }

    const std::vector<OldLine>& lines_;
    const portal::PageLanguages& languages_;
    const IsWord& is_word_;
    std::vector<FoundTitle> titles_;
    std::optional<std::size_t> name_;
    PageParts page_;
};

}

PageParts parts_of(const std::vector<OldLine>& lines, const portal::PageLanguages& languages,
                   const IsWord& is_word) {
    return PageParser(lines, languages, is_word).parse();
}

}
