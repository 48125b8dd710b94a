// Which marks and which quotes belong together. Both keep a stack of what is open, so a text takes
// linear time however many are left open.
#include "compiler/stages/model/text_pieces.hpp"

#include "compiler/stages/model/messages.hpp"
#include "grammar/inline.hpp"
#include "grammar/messages.hpp"

#include <array>

namespace quoin::model {
namespace {

struct Conditions {
    bool opens = false;
    bool closes = false;
};

bool is_gap(Neighbour neighbour) {
    return neighbour == Neighbour::edge || neighbour == Neighbour::space;
}

// The conditions of the markup, and that a mark opens before and closes after a word: `2 * 3`.
// After the hyphen of `pre-/post-test` none opens; before that of `/Vibrio/-free` one may close.
Conditions mark_conditions(std::string_view text, std::size_t begin, std::size_t end) {
    const Neighbour before = neighbour_before(text, begin);
    const Neighbour after = neighbour_after(text, end);
    const bool only_closing = after == Neighbour::closing && text[end] != '.'; // `*.NET*` opens
    return {.opens = (is_gap(before) || before == Neighbour::opening ||
                      before == Neighbour::quote || before == Neighbour::dash) &&
                     !is_gap(after) && !only_closing,
            .closes = (is_gap(after) || after == Neighbour::closing || after == Neighbour::quote ||
                       after == Neighbour::dash || after == Neighbour::hyphen) &&
                      !is_gap(before)};
}

std::size_t index_of(char mark) {
    return mark == '*' ? 0 : mark == '/' ? 1 : 2;
}

class MarkPairs {
public:
    MarkPairs(Pieces& pieces, const JoinedValue& value, Diagnostics& diagnostics)
        : pieces_(pieces), value_(value), diagnostics_(diagnostics) {}

    void run(std::size_t first, std::size_t last) { // a run of marks without a space between
        const std::string_view text = value_.text();
        const Conditions may = mark_conditions(text, pieces_[first].begin, pieces_[last - 1].end);
        for (std::size_t i = first; i < last; ++i) {
            if (i + 1 < last && sign(i + 1) == sign(i)) {
                i = doubled(i, last, may);
            } else if (may.closes && open_[index_of(sign(i))] > 0) {
                close(i);
            } else if (may.opens) {
                stack_.push_back(i);
                ++open_[index_of(sign(i))];
            } else {
                pieces_[i].kind = Piece::Kind::literal;
            }
        }
    }

    void finish() {
        while (!stack_.empty())
            leave_open();
    }

private:
    char sign(std::size_t i) const { return value_.text()[pieces_[i].begin]; }

    template<typename Rule>
    void report(std::size_t begin, std::size_t end) {
        const std::string_view found = std::string_view{value_.text()}.substr(begin, end - begin);
        diagnostics_.warning(value_.place(begin, end - begin),
                             worded<grammar::message<Rule>>(found));
    }

    // `//` and `__` are plain; `**` looks like a mark of other markups and is reported.
    std::size_t doubled(std::size_t i, std::size_t last, const Conditions& may) {
        const std::size_t begin = i;
        while (i + 1 < last && sign(i + 1) == sign(begin))
            ++i;
        for (std::size_t k = begin; k <= i; ++k)
            pieces_[k].kind = Piece::Kind::literal;
        if (may.opens && sign(begin) == '*')
            report<grammar::inline_text::doubled_mark>(pieces_[begin].begin, pieces_[i].end);
        return i;
    }

    void leave_open() {
        Piece& piece = pieces_[stack_.back()];
        --open_[index_of(sign(stack_.back()))];
        stack_.pop_back();
        piece.kind = Piece::Kind::literal;
        report<grammar::inline_text::open_mark>(piece.begin, piece.end);
    }

    void close(std::size_t closing) { // what was opened inside and not closed stays as typed
        while (sign(stack_.back()) != sign(closing))
            leave_open();
        const std::size_t opening = stack_.back();
        stack_.pop_back();
        --open_[index_of(sign(closing))];
        if (sign(closing) == '/') warn_of_path(pieces_[opening].begin, pieces_[closing].end);
        pieces_[opening].kind = pieces_[closing].kind = Piece::Kind::dropped;
        pieces_[opening].partner = closing;
        pieces_[closing].partner = opening;
    }

    // `/etc/passwd … w/`: the first word goes on with a slash, or the last is `w` or `c`.
    void warn_of_path(std::size_t begin, std::size_t end) {
        constexpr std::size_t longest_word = 64;
        const std::string_view text = std::string_view{value_.text()}.substr(begin, end - begin);
        const std::string_view first = text.substr(1, std::min(text.find(' '), longest_word));
        const bool path = first.find('/') < first.size() && first.find('/') + 2 < text.size();
        const std::string_view last = text.size() > 4 ? text.substr(text.size() - 3) : "";
        if (path || last == " w/" || last == " c/")
            diagnostics_.warning(value_.place(begin, end - begin),
                                 fill<messages::path_in_italics>(in_quotes(text)));
    }

    Pieces& pieces_;
    const JoinedValue& value_;
    Diagnostics& diagnostics_;
    std::vector<std::size_t> stack_;
    std::array<std::size_t, 3> open_{};
};

void set_marks(Pieces& pieces, std::string_view text) {
    std::array<int, 3> depth{};
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (pieces[i].kind == Piece::Kind::dropped)
            depth[index_of(text[pieces[i].begin])] += pieces[i].partner > i ? 1 : -1;
        pieces[i].marks = {
            .strong = depth[0] > 0, .emphasis = depth[1] > 0, .underline = depth[2] > 0};
    }
}

bool is_quote(const Piece& piece) {
    return piece.kind == Piece::Kind::double_quote || piece.kind == Piece::Kind::single_quote;
}

// Straight signs after a figure are feet and inches, and stay: they are what a reader searches for.
class QuotePairs {
public:
    QuotePairs(Pieces& pieces, std::string_view text) : pieces_(pieces), text_(text) {}

    void run(std::size_t first, std::size_t last) { // of quotes, and the marks among them
        before_ = neighbour_before(text_, pieces_[first].begin);
        const Neighbour after = neighbour_after(text_, pieces_[last - 1].end);
        may_.opens = (is_gap(before_) || before_ == Neighbour::opening ||
                      before_ == Neighbour::dash || before_ == Neighbour::hyphen) &&
                     !is_gap(after);
        may_.closes = (is_gap(after) || after == Neighbour::closing || after == Neighbour::dash ||
                       after == Neighbour::hyphen) &&
                      !is_gap(before_);
        for (std::size_t i = first; i < last; ++i) {
            if (pieces_[i].kind == Piece::Kind::double_quote) double_quote(i);
            if (pieces_[i].kind == Piece::Kind::single_quote) single_quote(i);
        }
    }

private:
    void pair(std::vector<std::size_t>& open, std::size_t closing) {
        pieces_[open.back()].partner = closing;
        pieces_[closing].partner = open.back();
        open.pop_back();
    }

    void double_quote(std::size_t i) {
        if (may_.opens && !(may_.closes && !doubles_.empty())) {
            pieces_[i].text = "“";
            doubles_.push_back(i);
        } else if (!doubles_.empty()) {
            while (!singles_.empty() && singles_.back() > doubles_.back())
                singles_.pop_back();
            pieces_[doubles_.back()].text = "“";
            pieces_[i].text = "”";
            pair(doubles_, i);
        } else if (!is_gap(before_) && before_ != Neighbour::digit) {
            pieces_[i].text = "”";
        }
    }

    void single_quote(std::size_t i) {
        const Neighbour left = neighbour_before(text_, pieces_[i].begin);
        const Neighbour right = neighbour_after(text_, pieces_[i].end);
        const bool after_word = left == Neighbour::letter || left == Neighbour::digit;
        if (left == Neighbour::digit && right == Neighbour::digit) return;
        pieces_[i].text = "’"; // unless it turns out to open a quotation
        if (after_word && right == Neighbour::letter) return;
        if (may_.opens) {
            singles_.push_back(i);
        } else if (may_.closes && !singles_.empty()) {
            pieces_[singles_.back()].text = "‘";
            pair(singles_, i);
        } else if (left == Neighbour::digit) {
            pieces_[i].text = {};
        }
    }

    Pieces& pieces_;
    std::string_view text_;
    Neighbour before_{};
    Conditions may_;
    std::vector<std::size_t> doubles_; // open quotations
    std::vector<std::size_t> singles_; // those that may be
};

}

void pair_marks(Pieces& pieces, const JoinedValue& value, Diagnostics& diagnostics) {
    MarkPairs pairs(pieces, value, diagnostics);
    for (std::size_t i = 0; i < pieces.size();) {
        std::size_t last = i;
        while (last < pieces.size() && pieces[last].kind == Piece::Kind::mark)
            ++last;
        if (last > i) pairs.run(i, last);
        i = last > i ? last : i + 1;
    }
    pairs.finish();
    set_marks(pieces, value.text());
}

void pair_quotes(Pieces& pieces, std::string_view text) {
    QuotePairs pairs(pieces, text);
    for (std::size_t i = 0; i < pieces.size();) {
        std::size_t last = i;
        bool any = false;
        for (; last < pieces.size(); ++last) {
            if (!is_quote(pieces[last]) && pieces[last].kind != Piece::Kind::dropped) break;
            any = any || is_quote(pieces[last]);
        }
        if (any) pairs.run(i, last);
        i = last > i ? last : i + 1;
    }
}

}
