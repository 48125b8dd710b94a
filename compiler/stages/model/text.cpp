// Inline text: values become spans; spans are asked for their places and split into items.
#include "compiler/stages/model/text.hpp"

#include "compiler/stages/model/messages.hpp"
#include "compiler/stages/model/text_links.hpp"
#include "compiler/stages/model/text_pieces.hpp"
#include "grammar/inline.hpp"
#include "grammar/messages.hpp"

#include <algorithm>
#include <utility>

namespace quoin::model {
namespace {

namespace pegtl = tao::pegtl;
namespace inline_text = grammar::inline_text;
constexpr std::string_view blanks_around = " \t";

class Spans {
public:
    explicit Spans(const JoinedValue& value) : value_(value) {}

    // Source text as it stands, in one span with what stood before it where that can be.
    void literal(std::size_t begin, std::size_t end, const Piece& piece) {
        while (begin < end) {
            if (value_.is_fold(begin)) {
                push(" ", begin, begin + 1, piece);
                ++begin;
                continue;
            }
            const std::size_t stop = std::min(end, value_.slice_end(begin));
            std::string text = value_.text().substr(begin, stop - begin);
            std::replace(text.begin(), text.end(), '\t', ' ');
            if (joins(begin, piece))
                extend(text);
            else
                push(text, begin, stop, piece);
            literal_end_ = stop;
            begin = stop;
        }
    }

    void sign(const Piece& piece) {
        push(std::string{piece.text}, piece.begin, piece.end, piece);
        literal_end_ = Piece::none;
    }

    std::vector<Span> take() { return std::move(spans_); }

private:
    static std::optional<std::uint32_t> link(const Piece& piece) {
        if (piece.link == Piece::none) return std::nullopt;
        return static_cast<std::uint32_t>(piece.link);
    }

    bool joins(std::size_t begin, const Piece& piece) const {
        return literal_end_ == begin && !value_.is_fold(begin) && !spans_.empty() &&
               spans_.back().marks == piece.marks && spans_.back().link == link(piece);
    }

    void extend(const std::string& text) {
        spans_.back().text += text;
        spans_.back().place.length += static_cast<std::uint32_t>(text.size());
    }

    void push(std::string text, std::size_t begin, std::size_t end, const Piece& piece) {
        spans_.push_back(
            {std::move(text), piece.marks, link(piece), value_.place(begin, end - begin)});
    }

    const JoinedValue& value_;
    std::vector<Span> spans_;
    std::size_t literal_end_ = Piece::none;
};

std::vector<Span> spans_of(const Pieces& pieces, const JoinedValue& value) {
    Spans spans(value);
    for (const Piece& piece : pieces) {
        if (piece.kind == Piece::Kind::dropped) continue;
        if (piece.text.empty())
            spans.literal(piece.begin, piece.end, piece);
        else
            spans.sign(piece);
    }
    return spans.take();
}

// Bytes [begin, end) of a value as a value of its own, which has a place even if it is empty.
syntax::Value cut(const syntax::Value& value, std::size_t begin, std::size_t end) {
    syntax::Value result;
    std::size_t start = 0;
    for (const syntax::Slice& slice : value.slices) {
        const std::size_t from = std::clamp(begin, start, start + slice.text.size()) - start;
        const std::size_t to = std::clamp(end, start, start + slice.text.size()) - start;
        if (from < to || (begin <= start && start < end)) {
            syntax::Slice piece{slice.text.substr(from, to - from), slice.place};
            piece.place.column += static_cast<std::uint32_t>(from);
            piece.place.length = static_cast<std::uint32_t>(to - from);
            result.slices.push_back(std::move(piece));
        }
        start += slice.text.size() + 1;
    }
    if (result.slices.empty() && !value.slices.empty()) {
        result.slices.push_back({{}, value.place()});
        result.slices.front().place.length = 0;
    }
    return result;
}

syntax::Value without_outer_blanks(const syntax::Value& value) {
    const std::string text = value.joined();
    const std::size_t begin = std::min(text.find_first_not_of(blanks_around), text.size());
    std::size_t end = text.find_last_not_of(blanks_around) + 1;
    if (end > 0 && end < text.size() && text[end - 1] == '\\') ++end; // an escaped space
    return cut(value, begin, std::max(begin, end));
}

template<typename Rule>
bool matches(std::string_view text) {
    pegtl::memory_input<pegtl::tracking_mode::lazy> in(text.data(), text.data() + text.size(), "");
    return pegtl::parse<Rule>(in);
}

// The scheme a bare address goes without; none if it is no address.
std::optional<std::string_view> scheme_of(std::string_view address) {
    if (matches<inline_text::known_scheme>(address)) return "";
    if (matches<inline_text::bare_mailbox>(address)) return "mailto:";
    if (matches<inline_text::bare_web>(address)) return "https://";
    return std::nullopt;
}

struct Address {
    std::string uri;
    std::size_t begin = 0;
    std::size_t end = 0;
};

// `[words](address)`, `Portfolio: name.example`, `Portfolio - https://name.example` as the markup
// has them; empty if it is none of these.
std::string link_meant(std::string_view text) {
    std::string_view words, address;
    const std::size_t middle = text.find("](");
    if (text.starts_with('[') && text.ends_with(')') && middle != std::string_view::npos) {
        words = text.substr(1, middle - 1);
        address = text.substr(middle + 2, text.size() - middle - 3);
    } else if (const std::size_t space = text.rfind(' '); space != std::string_view::npos) {
        words = text.substr(0, space);
        address = text.substr(space + 1);
    }
    while (!words.empty() && std::string_view{" -:|,\t"}.find(words.back()) != words.npos)
        words.remove_suffix(1);
    const bool one =
        words.find_first_of(".@/") == words.npos; // not two addresses, nor one with a space
    if (words.empty() || !one || !scheme_of(address)) return {};
    return std::string(words) + " <" + std::string(address) + '>';
}

std::optional<Address> address_in(const JoinedValue& value, std::size_t begin, std::size_t end,
                                  Diagnostics& diagnostics) {
    const std::string_view typed = std::string_view{value.text()}.substr(begin, end - begin);
    const auto scheme = scheme_of(typed);
    if (!scheme) {
        diagnostics.error(value.place(begin, end - begin),
                          worded<grammar::message<inline_text::no_address>>(typed));
        return std::nullopt;
    }
    return Address{read_address(value, begin, end, *scheme, diagnostics), begin, end};
}

Text shown(const JoinedValue& value, Shown range, std::string uri) {
    Piece piece;
    piece.link = 0;
    Spans spans(value);
    spans.literal(range.begin, range.end, piece);
    return {spans.take(), {std::move(uri)}};
}

Text labelled(const syntax::Value& value, std::size_t label_end, std::string uri,
              Diagnostics& diagnostics) {
    Text text = read_text(cut(value, 0, label_end), diagnostics);
    if (!text.links.empty()) {
        const auto first = std::find_if(text.spans.begin(), text.spans.end(),
                                        [](const Span& span) { return span.link.has_value(); });
        diagnostics.error(first->place, fill<grammar::message<inline_text::second_address>>());
    }
    for (Span& span : text.spans)
        span.link = 0;
    text.links = {std::move(uri)};
    return text;
}

}

std::string Text::plain() const {
    std::string text;
    for (const Span& span : spans)
        text += span.text;
    return text;
}

Place Text::place(std::size_t offset, std::size_t length) const {
    auto span = spans.begin();
    while (span != spans.end() && offset >= span->text.size())
        offset -= span++->text.size();
    if (span == spans.end()) {
        if (spans.empty()) return {};
        Place end = spans.back().place;
        end.column += end.length;
        end.length = 0;
        return end;
    }
    Place place = span->place;
    const bool exact = span->text.size() == place.length;
    if (exact) place.column += static_cast<std::uint32_t>(offset);
    const std::uint32_t start = place.column;
    std::uint32_t stop = start;
    for (length += offset; span != spans.end() && span->place.line == place.line; ++span) {
        const bool last = length <= span->text.size();
        const bool same = span->text.size() == span->place.length;
        const auto within = last && same ? static_cast<std::uint32_t>(length) : span->place.length;
        stop = std::max(stop, span->place.column + within);
        if (last) break;
        length -= span->text.size();
    }
    place.length = stop - start;
    return place;
}

Text read_text(const syntax::Value& value, Diagnostics& diagnostics) {
    const syntax::Value inner = without_outer_blanks(value);
    const JoinedValue joined(inner);
    Pieces pieces = cut_pieces(joined, diagnostics);
    pair_marks(pieces, joined, diagnostics);
    pair_quotes(pieces, joined.text());
    std::vector<std::string> links = place_links(pieces, joined, diagnostics);
    return {spans_of(pieces, joined), std::move(links)};
}

Text read_link(const syntax::Value& value, Diagnostics& diagnostics) {
    const syntax::Value inner = without_outer_blanks(value);
    const JoinedValue joined(inner);
    const std::string& text = joined.text();
    if (!matches<inline_text::labelled_link>(text)) {
        if (const std::string right = scheme_of(text) ? "" : link_meant(text); !right.empty()) {
            diagnostics.error(joined.place(0, text.size()),
                              fill<messages::link_meant>(in_quotes(text), right),
                              {{joined.place(0, text.size()), right}});
            return read_plain(value);
        }
        auto address = address_in(joined, 0, text.size(), diagnostics);
        return address ? shown(joined, {0, text.size()}, std::move(address->uri))
                       : read_plain(value);
    }
    const std::size_t open = text.rfind('<');
    auto address = address_in(joined, open + 1, text.size() - 1, diagnostics);
    if (!address) return read_plain(value);
    if (text.find_first_not_of(blanks_around) == open)
        return shown(joined, shown_address(text, address->begin, address->end),
                     std::move(address->uri));
    return labelled(inner, open, std::move(address->uri), diagnostics);
}

Text read_plain(const syntax::Value& value) {
    const syntax::Value inner = without_outer_blanks(value);
    const JoinedValue joined(inner);
    Spans spans(joined);
    spans.literal(0, joined.text().size(), {});
    return {spans.take(), {}};
}

}
