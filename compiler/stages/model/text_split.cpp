// Items of a text: cut at separators that are typed plain and stand outside parentheses.
#include "compiler/stages/model/text.hpp"

#include <algorithm>
#include <utility>

namespace quoin::model {
namespace {

struct SpanPosition {
    std::size_t span = 0;
    std::size_t byte = 0;
};

// An escaped sign has a place longer than itself.
bool is_typed_plain(const Span& span) {
    return span.text.size() == span.place.length;
}

class Separators {
public:
    Separators(const Text& text, char separator) : text_(text), separator_(separator) {}

    // A parenthesis that is never closed, or never opened, holds nothing together.
    std::vector<SpanPosition> find() {
        for (std::size_t i = 0; i < text_.spans.size(); ++i) {
            const std::string& bytes = text_.spans[i].text;
            if (!is_typed_plain(text_.spans[i])) continue;
            for (std::size_t k = 0; k < bytes.size(); ++k)
                look_at(bytes[k], {i, k});
        }
        return std::move(found_);
    }

private:
    void look_at(char byte, SpanPosition position) {
        if (byte == separator_) found_.push_back(position);
        if (byte == '(') open_.push_back(found_.size());
        if (byte == ')' && !open_.empty()) {
            found_.resize(open_.back());
            open_.pop_back();
        }
    }

    const Text& text_;
    char separator_;
    std::vector<SpanPosition> found_;
    std::vector<std::size_t> open_; // how many were found before each open parenthesis
};

Span cut(const Span& span, std::size_t begin, std::size_t end) {
    Span piece{span.text.substr(begin, end - begin), span.marks, span.link, span.place};
    if (!is_typed_plain(span)) return piece;
    piece.place.column += static_cast<std::uint32_t>(begin);
    piece.place.length = static_cast<std::uint32_t>(end - begin);
    return piece;
}

void trim(std::vector<Span>& spans) {
    const auto is_blank = [](const Span& span) {
        return span.text.find_first_not_of(' ') == std::string::npos;
    };
    while (!spans.empty() && is_blank(spans.back()))
        spans.pop_back();
    spans.erase(spans.begin(), std::find_if_not(spans.begin(), spans.end(), is_blank));
    if (spans.empty()) return;
    const std::string& first = spans.front().text;
    spans.front() = cut(spans.front(), first.find_first_not_of(' '), first.size());
    spans.back() = cut(spans.back(), 0, spans.back().text.find_last_not_of(' ') + 1);
}

// The item keeps the links it shows, and no others.
void take_links(Text& item, const std::vector<std::string>& links) {
    std::optional<std::uint32_t> last;
    for (Span& span : item.spans) {
        if (!span.link) continue;
        if (span.link != last) item.links.push_back(links[*span.link]);
        last = span.link;
        span.link = static_cast<std::uint32_t>(item.links.size() - 1);
    }
}

Text item(const Text& text, SpanPosition begin, SpanPosition end) {
    Text result;
    for (std::size_t i = begin.span; i < text.spans.size() && i <= end.span; ++i) {
        const std::size_t from = i == begin.span ? begin.byte : 0;
        const std::size_t to = i == end.span ? end.byte : text.spans[i].text.size();
        if (from < to) result.spans.push_back(cut(text.spans[i], from, to));
    }
    trim(result.spans);
    take_links(result, text.links);
    return result;
}

}

std::vector<Text> split(const Text& text, char separator) {
    std::vector<SpanPosition> ends = Separators(text, separator).find();
    ends.push_back({text.spans.size(), 0});
    std::vector<Text> items;
    SpanPosition begin;
    for (const SpanPosition end : ends) {
        Text next = item(text, begin, end);
        if (!next.empty()) items.push_back(std::move(next));
        begin = {end.span, end.byte + 1};
    }
    return items;
}

}
