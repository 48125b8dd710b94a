#include "compiler/redlining/word_changes.hpp"

#include "compiler/base/ascii.hpp"

#include <algorithm>
#include <cstddef>

namespace quoin::redlining {

namespace {

constexpr std::string_view no_break_space_bytes = "\u00A0";

std::size_t white_at(std::string_view text, std::size_t at) { // its length; 0: none
    if (text[at] == ' ' || text[at] == '\t' || text[at] == '\n') return 1;
    return text.substr(at).starts_with(no_break_space_bytes) ? no_break_space_bytes.size() : 0;
}

bool is_sign_before(char c) {
    return c == '(' || c == '[' || c == '"';
}

bool is_sign_after(char c) {
    return c == ',' || c == '.' || c == ';' || c == ':' || c == '!' || c == '?' || c == ')' ||
           c == ']' || c == '"';
}

void add_word(std::string_view text, std::size_t begin, std::size_t end, std::vector<Word>& words) {
    const auto add = [&](std::size_t from, std::size_t to) {
        if (from < to) words.push_back({text.substr(from, to - from), from, to});
    };
    for (; begin < end && is_sign_before(text[begin]); ++begin)
        add(begin, begin + 1);
    std::size_t core = end;
    while (core > begin && is_sign_after(text[core - 1]))
        --core;
    add(begin, core);
    for (; core < end; ++core)
        add(core, core + 1);
}

// Shortest edit scripts by their furthest points, a round for each edit more; what each round began
// with is kept to find the way back.
class EditScript {
public:
    using Words = std::vector<Word>;
    // Of words [begin, …end) of both.
    EditScript(const Words& before, const Words& after, std::size_t begin, std::size_t before_end,
               std::size_t after_end)
        : before_(before), after_(after), begin_(begin), n_(before_end - begin),
          m_(after_end - begin) {}

    // Appends the fates of the words in order. False where it takes more edits than are tried.
    bool find(std::vector<Stretch>& stretches);

private:
    using Row = std::vector<std::ptrdiff_t>;
    static constexpr std::size_t most_edits = 1000;

    static std::size_t at(std::size_t d, std::ptrdiff_t k) { // of diagonal k in a row of d
        return static_cast<std::size_t>(k + static_cast<std::ptrdiff_t>(d));
    }
    bool same(std::ptrdiff_t x, std::ptrdiff_t y) const {
        return before_[begin_ + static_cast<std::size_t>(x)].text ==
               after_[begin_ + static_cast<std::size_t>(y)].text;
    }
    std::ptrdiff_t start(std::size_t d, std::ptrdiff_t k) const;
    bool downwards(std::size_t d, std::ptrdiff_t k) const;
    bool round(std::size_t d);
    void go_back(std::vector<Fate>& fates) const;

    const Words& before_;
    const Words& after_;
    std::size_t begin_, n_, m_;
    std::vector<Row> rows_; // of each round, the furthest x on diagonals -d to d
};

// Whether the best way to diagonal k with d edits inserts last.
bool EditScript::downwards(std::size_t d, std::ptrdiff_t k) const {
    const auto edge = static_cast<std::ptrdiff_t>(d);
    if (k == -edge) return true;
    if (k == edge) return false;
    const Row& row = rows_[d - 1];
    return row[at(d - 1, k - 1)] < row[at(d - 1, k + 1)];
}

std::ptrdiff_t EditScript::start(std::size_t d, std::ptrdiff_t k) const {
    if (d == 0) return 0;
    const Row& row = rows_[d - 1];
    return downwards(d, k) ? row[at(d - 1, k + 1)] : row[at(d - 1, k - 1)] + 1;
}

bool EditScript::round(std::size_t d) {
    const auto edge = static_cast<std::ptrdiff_t>(d);
    const auto n = static_cast<std::ptrdiff_t>(n_), m = static_cast<std::ptrdiff_t>(m_);
    Row row(2 * d + 1);
    bool there = false;
    for (std::ptrdiff_t k = -edge; k <= edge; k += 2) {
        std::ptrdiff_t x = start(d, k);
        while (x < n && x - k < m && x - k >= 0 && same(x, x - k))
            ++x;
        row[at(d, k)] = x;
        there = there || (x >= n && x - k >= m);
    }
    rows_.push_back(std::move(row));
    return there;
}

void EditScript::go_back(std::vector<Fate>& fates) const {
    auto x = static_cast<std::ptrdiff_t>(n_), y = static_cast<std::ptrdiff_t>(m_);
    for (std::size_t d = rows_.size() - 1; d > 0; --d) {
        const std::ptrdiff_t k = x - y;
        const std::ptrdiff_t from = start(d, k);
        for (; x > from; --x, --y)
            fates.push_back(Fate::kept);
        const bool down = downwards(d, k);
        fates.push_back(down ? Fate::inserted : Fate::deleted);
        (down ? y : x) -= 1;
    }
    fates.insert(fates.end(), static_cast<std::size_t>(x), Fate::kept);
    std::ranges::reverse(fates);
}

// Adds one word, to the last stretch if it goes on there.
void add_to(std::vector<Stretch>& stretches, Fate fate, std::size_t word) {
    if (!stretches.empty() && stretches.back().fate == fate && stretches.back().end == word)
        ++stretches.back().end;
    else
        stretches.push_back({fate, word, word + 1});
}

bool EditScript::find(std::vector<Stretch>& stretches) {
    for (std::size_t d = 0; !round(d); ++d)
        if (d == most_edits) return false;
    std::vector<Fate> fates;
    go_back(fates);
    std::size_t x = begin_, y = begin_;
    for (const Fate fate : fates) {
        add_to(stretches, fate, fate == Fate::deleted ? x : y);
        if (fate != Fate::inserted) ++x;
        if (fate != Fate::deleted) ++y;
    }
    return true;
}

// Between two kept stretches all that is deleted before all that is inserted.
void put_deleted_first(std::vector<Stretch>& stretches) {
    std::vector<Stretch> ordered;
    for (auto from = stretches.begin(); from != stretches.end();) {
        const auto kept = std::ranges::find(from, stretches.end(), Fate::kept, &Stretch::fate);
        for (const Fate fate : {Fate::deleted, Fate::inserted})
            for (auto each = from; each != kept; ++each)
                if (each->fate == fate)
                    for (std::size_t word = each->begin; word < each->end; ++word)
                        add_to(ordered, fate, word);
        if (kept == stretches.end()) break;
        ordered.push_back(*kept);
        from = kept + 1;
    }
    stretches = std::move(ordered);
}

void add_all(std::vector<Stretch>& stretches, Fate fate, std::size_t begin, std::size_t end) {
    if (begin < end) stretches.push_back({fate, begin, end});
}

}

std::vector<Word> words_of(std::string_view text) {
    std::vector<Word> words;
    std::size_t begin = 0;
    for (std::size_t i = 0; i < text.size();) {
        const std::size_t white = white_at(text, i);
        if (white > 0) {
            add_word(text, begin, i, words);
            begin = i + white;
        }
        i += std::max<std::size_t>(white, 1);
    }
    add_word(text, begin, text.size(), words);
    return words;
}

std::vector<Stretch> word_changes(const std::vector<Word>& before, const std::vector<Word>& after) {
    const auto same = [](const Word& a, const Word& b) { return a.text == b.text; };
    const auto first = std::ranges::mismatch(before, after, same);
    const auto alike = static_cast<std::size_t>(first.in1 - before.begin());
    std::size_t tail = 0;
    while (tail < std::min(before.size(), after.size()) - alike &&
           same(before[before.size() - 1 - tail], after[after.size() - 1 - tail]))
        ++tail;
    const std::size_t before_end = before.size() - tail, after_end = after.size() - tail;
    std::vector<Stretch> stretches;
    add_all(stretches, Fate::kept, 0, alike);
    if (!EditScript(before, after, alike, before_end, after_end).find(stretches)) {
        add_all(stretches, Fate::deleted, alike, before_end);
        add_all(stretches, Fate::inserted, alike, after_end);
    }
    for (std::size_t word = after_end; word < after.size(); ++word)
        add_to(stretches, Fate::kept, word);
    put_deleted_first(stretches);
    return stretches;
}

}
