// Links of inline text: their words, and their addresses.
#include "compiler/stages/model/text_links.hpp"

#include "compiler/base/ascii.hpp"

#include "grammar/inline.hpp"
#include "grammar/messages.hpp"

#include <algorithm>

namespace quoin::model {
namespace {

namespace pegtl = tao::pegtl;
namespace inline_text = grammar::inline_text;
using UriInput = pegtl::memory_input<pegtl::tracking_mode::lazy>;

template<typename Rule>
struct UriReach { // how far any rule of a URI came, for where it fails
    template<typename ActionInput>
    static void apply(const ActionInput& in, const char*& furthest) {
        furthest = std::max(furthest, in.end());
    }
};

std::size_t valid_length(std::string_view uri) {
    UriInput in(uri.data(), uri.data() + uri.size(), "");
    const char* furthest = in.begin();
    if (pegtl::parse<inline_text::known_address, UriReach>(in, furthest)) furthest = in.current();
    return static_cast<std::size_t>(furthest - uri.data());
}

template<typename Rule>
struct Wrong : pegtl::nothing<Rule> {};

template<typename Rule>
struct WrongAs {
    template<typename ActionInput>
    static void apply(const ActionInput& in, std::string_view uri, std::string& text) {
        const bool whole = std::is_same_v<Rule, inline_text::address_end>;
        text = worded<grammar::message<Rule>>(whole ? uri : in.string_view());
    }
};

template<>
struct Wrong<inline_text::address_end> : WrongAs<inline_text::address_end> {};
template<>
struct Wrong<inline_text::address_blank> : WrongAs<inline_text::address_blank> {};
template<>
struct Wrong<inline_text::address_percent> : WrongAs<inline_text::address_percent> {};
template<>
struct Wrong<inline_text::address_character> : WrongAs<inline_text::address_character> {};

// In messages the address is as typed, without a scheme put before it.
std::string what_is_wrong(std::string_view uri, std::size_t at, std::size_t added) {
    UriInput in(uri.data() + at, uri.data() + uri.size(), "");
    std::string text;
    pegtl::parse<inline_text::wrong_in_address, Wrong>(in, uri.substr(added), text);
    return text;
}

void lower_scheme(std::string& uri) {
    const auto end = uri.find(':');
    for (std::size_t i = 0; i < end && i < uri.size(); ++i)
        uri[i] = small_letter(uri[i]);
}

template<typename Rule>
bool begins_with(std::string_view text) {
    UriInput in(text.data(), text.data() + text.size(), "");
    return pegtl::parse<Rule>(in);
}

// The words of links, piece by piece backwards from each `<`.
class LinkWords {
public:
    LinkWords(Pieces& pieces, const JoinedValue& value) : pieces_(pieces), value_(value) {}

    // Marks the words of the link at `index`; false if the address has to stand for itself.
    bool place(std::size_t index, std::size_t link) {
        std::size_t last = index; // the last piece of the words is the one before
        while (last > floor_ && is_space(last - 1))
            --last;
        const std::size_t first = first_of(last);
        floor_ = index + 1;
        if (first == last) return false;
        for (std::size_t i = first; i < last; ++i)
            pieces_[i].link = link;
        for (std::size_t i = last; i < index; ++i)
            pieces_[i].kind = Piece::Kind::dropped;
        return true;
    }

private:
    bool is_space(std::size_t i) const { return pieces_[i].kind == Piece::Kind::space; }
    bool opens(std::size_t i) const {
        return pieces_[i].partner != Piece::none && pieces_[i].partner > i;
    }
    bool is_dash(std::size_t i) const {
        const std::string_view typed = source(i);
        return pieces_[i].kind == Piece::Kind::dash || typed == "–" || typed == "—" || typed == "-";
    }
    std::string_view source(std::size_t i) const {
        return std::string_view{value_.text()}.substr(pieces_[i].begin,
                                                      pieces_[i].end - pieces_[i].begin);
    }

    // A marked or quoted phrase, or the one word, that ends before `last`.
    std::size_t first_of(std::size_t last) const {
        if (last == floor_) return last;
        const std::size_t partner = pieces_[last - 1].partner;
        if (partner != Piece::none && partner < last) return partner < floor_ ? last : partner;
        std::size_t first = last;
        while (first > floor_ && !is_space(first - 1) && !is_dash(first - 1) && !opens(first - 1))
            --first;
        while (first < last && (source(first) == "(" || source(first) == "["))
            ++first;
        if (first == last) return last;
        const bool sign_only =
            std::string_view{"([:,;"}.find(source(last - 1).back()) != std::string_view::npos;
        return sign_only && pieces_[last - 1].kind == Piece::Kind::literal ? last : first;
    }

    Pieces& pieces_;
    const JoinedValue& value_;
    std::size_t floor_ = 0; // words do not reach back over an earlier link
};

}

std::string read_address(const JoinedValue& value, std::size_t begin, std::size_t end,
                         std::string_view scheme, Diagnostics& diagnostics) {
    std::string uri{scheme};
    std::vector<std::size_t> offsets(scheme.size(), begin); // of each byte, in the value
    for (std::size_t i = begin; i < end; ++i) {
        if (value.is_fold(i)) continue;
        uri.push_back(value.text()[i]);
        offsets.push_back(i);
    }
    lower_scheme(uri);
    const std::size_t valid = valid_length(uri);
    if (valid < uri.size()) {
        UriInput in(uri.data() + valid, uri.data() + uri.size(), "");
        pegtl::parse<inline_text::character>(in);
        const auto length = static_cast<std::size_t>(in.current() - uri.data()) - valid;
        diagnostics.error(value.place(offsets[valid], length),
                          what_is_wrong(uri, valid, scheme.size()));
    } else if (!begins_with<pegtl::seq<inline_text::known_address, pegtl::eof>>(uri)) {
        diagnostics.error(value.place(begin, end - begin),
                          what_is_wrong(uri, valid, scheme.size()));
    }
    return uri;
}

Shown shown_address(std::string_view text, std::size_t begin, std::size_t end) {
    const std::string_view address = text.substr(begin, end - begin);
    UriInput in(address.data(), address.data() + address.size(), "");
    const bool web = pegtl::parse<inline_text::web_scheme>(in);
    if (!web) pegtl::parse<inline_text::known_scheme>(in);
    if (web) pegtl::parse<pegtl::two<'/'>>(in);
    const auto scheme = static_cast<std::size_t>(in.current() - address.data());
    if (scheme == address.size()) return {begin, end};
    if (!web) end = begin + std::min(address.find_first_of("?;"), address.size());
    if (web && address.back() == '/') --end;
    return begin + scheme < end ? Shown{begin + scheme, end} : Shown{begin, begin + address.size()};
}

std::vector<std::string> place_links(Pieces& pieces, const JoinedValue& value,
                                     Diagnostics& diagnostics) {
    std::vector<std::string> links;
    LinkWords words(pieces, value);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        Piece& piece = pieces[i];
        if (piece.kind != Piece::Kind::link) continue;
        links.push_back(read_address(value, piece.begin + 1, piece.end - 1, {}, diagnostics));
        if (words.place(i, links.size() - 1)) {
            piece.kind = Piece::Kind::dropped;
        } else {
            const Shown shown = shown_address(value.text(), piece.begin + 1, piece.end - 1);
            piece.begin = shown.begin;
            piece.end = shown.end;
            piece.link = links.size() - 1;
        }
    }
    return links;
}

}
