// Each pair of the table has what speaks for the slip and against it, in the words beside it, with
// a weight; the weights that hold are added up, as evidence that is independent adds up in
// logarithms. From `told` on a pair is a slip, and from `certain` on it may be mended unasked.
// Where the table tells nothing, context_odds.cpp may, and of those pairs the table's weights count
// with it.
#include "compiler/english/word_slips.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/english/context_odds.hpp"
#include "compiler/english/neighbours.hpp"
#include "compiler/english/word_classes.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>
#include <span>
#include <stdexcept>
#include <string>
#include <unordered_map>
#include <utility>

namespace quoin::english {
namespace {

constexpr int told = 5, certain = 6;
constexpr double told_by_context = 2.5; // log-odds: twelve to one
constexpr double table_share = 0.4;     // of those, in a weight of the table
constexpr int name_weight = -3;         // of a capital within a line: it may be a name
constexpr int both_weight = -6;         // who writes both words of a pair knows which is which
constexpr int never = -100;
constexpr std::size_t reach = 8; // words to either side that are near

enum class Where { before, before_that, after, after_that, near, opens, joined };

constexpr std::array<std::pair<std::string_view, Where>, 7> places{{
    {"before:", Where::before},
    {"before2:", Where::before_that},
    {"after:", Where::after},
    {"after2:", Where::after_that},
    {"near:", Where::near},
    {"opens:", Where::opens},
    {"joined:", Where::joined},
}};

using Words = std::span<const std::string_view>;

struct Range { // of the table's words
    std::size_t begin = 0, end = 0;
};

struct Evidence {
    Where where{};
    Range words;
    Kinds kinds = 0;
    int weight = 0;
};

struct SlipPair {
    Range typed;
    std::string_view meant;
    int prior = 0; // how seldom a résumé means the word itself
    std::vector<Evidence> evidence;
};

// All that the rows say, in few allocations: it is read for a page of one line, too.
class SlipTable {
public:
    SlipTable();

    std::span<const SlipPair> pairs_of(std::string_view first_typed) const {
        const auto found = by_first_.find(first_typed);
        if (found == by_first_.end()) return {};
        return std::span(pairs_).subspan(found->second.begin, found->second.size);
    }
    bool has(std::string_view first_typed) const { return by_first_.contains(first_typed); }
    Words in(const Range& range) const {
        return Words(words_).subspan(range.begin, range.end - range.begin);
    }

private:
    struct Alike {
        std::size_t begin = 0, size = 0; // of pairs
    };

    void add_pair(std::string_view key, std::string_view said);
    void read(std::string_view word, SlipPair& pair);
    void read_evidence(std::string_view word, Evidence& last);
    Range add_words(std::string_view text);

    std::vector<std::string_view> words_;
    std::unordered_map<std::string_view, Range> groups_; // `%farm`: words that speak alike
    std::vector<SlipPair> pairs_; // those of one first word side by side, as their lines are
    std::unordered_map<std::string_view, Alike> by_first_;
};

struct Spot { // of the typed words, in tokens
    std::size_t first = 0, last = 0;
};

std::optional<int> weight_in(std::string_view word) {
    if (word.size() < 2 || (word[0] != '+' && word[0] != '-')) return std::nullopt;
    int weight = 0;
    const auto read = std::from_chars(word.data() + 1, word.data() + word.size(), weight);
    if (read.ptr != word.data() + word.size()) return std::nullopt;
    return word[0] == '-' ? -weight : weight;
}

[[noreturn]] void refuse(std::string_view word) {
    throw std::logic_error("words/word_slips.txt: '" + std::string(word) + "' is out of place");
}

void each_word(std::string_view text, const auto& visit) {
    while (!text.empty()) {
        const std::size_t end = std::min(text.find(' '), text.size());
        if (end > 0) visit(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
}

// Groups come first in the order of bytes.
SlipTable::SlipTable() {
    each_listed(lines_of(List::word_slips), [&](std::string_view key, std::string_view said) {
        if (key.starts_with('%'))
            groups_[key] = add_words(said);
        else
            add_pair(key, said);
    });
}

void SlipTable::add_pair(std::string_view key, std::string_view said) {
    const std::size_t sign = key.find(" > ");
    if (sign == key.npos) refuse(key);
    SlipPair& pair =
        pairs_.emplace_back(SlipPair{add_words(key.substr(0, sign)), key.substr(sign + 3), 0, {}});
    each_word(said, [&](std::string_view word) { read(word, pair); });
    Alike& alike = by_first_[words_[pair.typed.begin]];
    if (alike.size++ == 0) alike.begin = pairs_.size() - 1;
}

void SlipTable::read(std::string_view word, SlipPair& pair) {
    const bool open = !pair.evidence.empty() && pair.evidence.back().weight == 0;
    const auto place = word.ends_with(':')
                           ? std::ranges::find(places, word, [](auto& row) { return row.first; })
                           : places.end();
    if (place != places.end())
        pair.evidence.push_back({place->second, {words_.size(), words_.size()}, 0, 0});
    else if (const auto weight = weight_in(word))
        (open ? pair.evidence.back().weight : pair.prior) += *weight;
    else if (open)
        read_evidence(word, pair.evidence.back());
    else
        refuse(word);
}

void SlipTable::read_evidence(std::string_view word, Evidence& last) {
    if (word[0] == '@') {
        const auto kind = kind_named(word.substr(1));
        if (!kind) refuse(word);
        last.kinds |= *kind;
        return;
    }
    const auto group = groups_.find(word);
    if (word[0] == '%' && group == groups_.end()) refuse(word);
    if (word[0] == '%')
        for (std::size_t i = group->second.begin; i < group->second.end; ++i)
            words_.push_back(std::string_view(words_[i]));
    else
        words_.push_back(word);
    last.words.end = words_.size();
}

Range SlipTable::add_words(std::string_view text) {
    const std::size_t begin = words_.size();
    each_word(text, [&](std::string_view word) { words_.push_back(word); });
    return {begin, words_.size()};
}

const SlipTable& slip_table() {
    static const SlipTable table;
    return table;
}

class SlipFinder {
public:
    SlipFinder(const Sentence& sentence, const WordContexts& contexts)
        : sentence_(sentence), kinds_(sentence.size()), odds_(sentence, contexts),
          headline_(is_headline()), shouted_(is_shouted()) {}

    std::vector<WordSlip> find() const {
        std::vector<WordSlip> slips;
        for (std::size_t i = 0; i < sentence_.size();)
            i = look_at(i, slips);
        return slips;
    }

private:
    // Where to look next.
    std::size_t look_at(std::size_t i, std::vector<WordSlip>& slips) const {
        const SlipPair* best = nullptr;
        int most = told - 1;
        for (const SlipPair& pair : table_.pairs_of(bare(i)))
            if (const int score = score_of(pair, i); score > most) {
                best = &pair;
                most = score;
            }
        if (!best) {
            tell_by_context(i, slips);
            return i + 1;
        }
        const Words typed = table_.in(best->typed);
        const std::size_t last = i + typed.size() - 1;
        std::string meant(best->meant);
        if (typed.size() == 1) meant += sentence_.word(i).substr(typed[0].size());
        slips.push_back(
            {sentence_.extent(i, last), as_typed(std::move(meant), i), most >= certain});
        return last + 1;
    }

    void tell_by_context(std::size_t i, std::vector<WordSlip>& slips) const {
        if (!may_be_slip(i, 0)) return;
        std::string_view best;
        double most = told_by_context;
        const auto of_table = [&](std::string_view meant) {
            return table_share * table_score(meant, i);
        };
        for (const LikelyWord& likely : odds_.above(told_by_context, i, of_table)) {
            if (likely.odds <= most || is_in_other_tense(likely.meant, i)) continue;
            best = likely.meant;
            most = likely.odds;
        }
        if (!best.empty())
            slips.push_back({sentence_.extent(i, i), as_typed(std::string(best), i), false, true});
    }

    // Of the verb that opens a bullet another form: its tense is judged by itself.
    bool is_in_other_tense(std::string_view meant, std::size_t i) const {
        return i == 0 && !sentence_.forms(i).none() &&
               verb_forms(meant, sentence_.lexicon()).verb == sentence_.forms(i).verb;
    }

    // What the table's rows have for the pair, and against it.
    double table_score(std::string_view meant, std::size_t i) const {
        int most = 0, least = 0;
        for (const SlipPair& pair : table_.pairs_of(sentence_.word(i))) {
            if (pair.meant != meant || table_.in(pair.typed).size() != 1) continue;
            const int score = score_of(pair, i);
            most = std::max(most, score);
            least = std::min(least, score);
        }
        return most + least;
    }

    int score_of(const SlipPair& pair, std::size_t i) const {
        const Words typed = table_.in(pair.typed);
        for (std::size_t k = 0; k < typed.size(); ++k)
            if ((k == 0 ? bare(i) : sentence_.word(i + k)) != typed[k] || !may_be_slip(i, k))
                return never;
        const Spot spot{i, i + typed.size() - 1};
        int score = pair.prior + (may_be_name(i) ? name_weight : 0);
        if (sentence_.classes(i) == 0 && has_meant(pair, i)) score += both_weight;
        for (const Evidence& one : pair.evidence)
            if (holds(one, spot)) score += one.weight;
        return score;
    }

    // The word, or without 's where it owns: manger's.
    std::string_view bare(std::size_t i) const {
        const std::string_view word = sentence_.word(i);
        if (!word.ends_with("'s") || table_.has(word)) return word;
        const std::string_view stem = word.substr(0, word.size() - 2);
        const bool owns =
            word_classes(stem, sentence_.lexicon()) == 0 && stem != "there" && stem != "here";
        return owns ? stem : word;
    }

    // The token `k` behind the one at `i`, as far as its capitals and what it stands in go.
    bool may_be_slip(std::size_t i, std::size_t k) const {
        const Token& token = sentence_.token(i + k);
        // LED, and the letter of blood group A
        const bool abbreviation =
            !shouted_ && (is_all_capitals(token) || (k > 0 && !headline_ && is_capital(token)));
        return !token.title && !abbreviation &&
               !(k == 0 && sentence_.is_word(i - 1, {"word", "words", "term"}));
    }

    // In the same sentence or the next.
    bool has_meant(const SlipPair& pair, std::size_t i) const {
        const std::size_t begin = i - std::min(i, 2 * reach);
        const std::size_t end = std::min(i + 2 * reach, sentence_.size());
        for (std::size_t k = begin; k < end; ++k)
            if (sentence_.word(k) == pair.meant) return true;
        return false;
    }

    bool holds(const Evidence& one, const Spot& spot) const {
        switch (one.where) {
        case Where::before:
            return is(one, spot.first - 1);
        case Where::before_that:
            return is(one, spot.first - 2);
        case Where::after:
            return is(one, spot.last + 1);
        case Where::after_that:
            return is(one, spot.last + 2);
        case Where::near:
            return is_near(one, spot);
        case Where::opens:
            return is(one, 0);
        case Where::joined:
            return is_joined(one, spot);
        }
        return false;
    }

    bool is(const Evidence& one, std::size_t i) const {
        return is_one_of(sentence_.word(i), table_.in(one.words)) ||
               (one.kinds != 0 && (kinds(i) & one.kinds) != 0);
    }

    Kinds kinds(std::size_t i) const {
        if (i >= kinds_.size()) return kinds_of(sentence_, i);
        if (!kinds_[i]) kinds_[i] = kinds_of(sentence_, i);
        return *kinds_[i];
    }

    bool is_near(const Evidence& one, const Spot& spot) const {
        const std::size_t begin = spot.first - std::min(spot.first, reach);
        const std::size_t end = std::min(spot.last + reach + 1, sentence_.size());
        for (std::size_t k = begin; k < end; ++k)
            if ((k < spot.first || k > spot.last) && is(one, k)) return true;
        return false;
    }

    // After a later `and`.
    bool is_joined(const Evidence& one, const Spot& spot) const {
        const std::size_t end = std::min(spot.last + 2 * reach, sentence_.size());
        for (std::size_t k = spot.last + 1; k < end; ++k)
            if (sentence_.is_word(k, {"and"}) && is(one, k + 1)) return true;
        return false;
    }

    bool may_be_name(std::size_t i) const {
        const bool opens = i == 0 || sentence_.token(i - 1).kind == TokenKind::stop;
        return !opens && !headline_ && is_capital(sentence_.token(i));
    }

    bool is_headline() const { // every word of an open class has its capital: Shift Manger
        for (std::size_t i = 0; i < sentence_.size(); ++i)
            if (sentence_.token(i).kind == TokenKind::word && sentence_.classes(i) == 0 &&
                !is_capital(sentence_.token(i)))
                return false;
        return true;
    }

    bool is_shouted() const { // SHIFT MANGER
        for (std::size_t i = 0; i < sentence_.size(); ++i)
            if (std::ranges::any_of(sentence_.token(i).text, is_small_letter)) return false;
        return true;
    }

    // With the capitals of what was typed.
    std::string as_typed(std::string meant, std::size_t i) const {
        if (shouted_ && is_all_capitals(sentence_.token(i))) {
            for (char& c : meant)
                c = is_small_letter(c) ? static_cast<char>(c - 'a' + 'A') : c;
            return meant;
        }
        return is_capital(sentence_.token(i)) ? capitalised(std::move(meant)) : meant;
    }

    const Sentence& sentence_;
    mutable std::vector<std::optional<Kinds>> kinds_; // of each token, as they are asked for
    const SlipTable& table_ = slip_table();
    ContextOdds odds_;
    bool headline_, shouted_;
};

}

std::vector<WordSlip> find_word_slips(const Sentence& sentence, const WordContexts& contexts) {
    return SlipFinder(sentence, contexts).find();
}

}
