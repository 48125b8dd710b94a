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

struct Evidence {
    Where where{};
    std::vector<std::string_view> words;
    Kinds kinds = 0;
    int weight = 0;
};

struct SlipPair {
    std::vector<std::string_view> typed;
    std::string_view meant;
    int prior = 0; // how seldom a résumé means the word itself
    std::vector<Evidence> evidence;
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

// `%farm = hay barn cows`: words that speak alike.
using Groups = std::unordered_map<std::string_view, std::vector<std::string_view>>;

class PairReader {
public:
    PairReader(SlipPair& pair, const Groups& groups) : pair_(pair), groups_(groups) {}

    void read(std::string_view word) {
        const auto place =
            std::ranges::find(places, word, [](const auto& row) { return row.first; });
        if (place != places.end())
            pair_.evidence.push_back({place->second, {}, 0, 0});
        else if (const auto weight = weight_in(word))
            close(*weight);
        else
            add(word);
    }

private:
    bool open() const { return !pair_.evidence.empty() && pair_.evidence.back().weight == 0; }

    void close(int weight) { (open() ? pair_.evidence.back().weight : pair_.prior) += weight; }

    void add(std::string_view word) {
        if (!open()) refuse(word);
        Evidence& last = pair_.evidence.back();
        if (word[0] == '%') return add_group(last, word);
        if (word[0] != '@') return last.words.push_back(word);
        const auto kind = kind_named(word.substr(1));
        if (!kind) refuse(word);
        last.kinds |= *kind;
    }

    void add_group(Evidence& last, std::string_view name) {
        const auto group = groups_.find(name);
        if (group == groups_.end()) refuse(name);
        last.words.insert(last.words.end(), group->second.begin(), group->second.end());
    }

    SlipPair& pair_;
    const Groups& groups_;
};

using SlipTable = std::unordered_map<std::string_view, std::vector<SlipPair>>; // by the first word

SlipTable read_slip_table() {
    SlipTable table;
    Groups groups; // which come first in the order of bytes
    each_listed(lines_of(List::word_slips), [&](std::string_view key, std::string_view said) {
        if (key.starts_with('%')) {
            groups[key] = pieces_of(said, " ");
            return;
        }
        const std::size_t sign = key.find(" > ");
        if (sign == key.npos) refuse(key);
        SlipPair pair{pieces_of(key.substr(0, sign), " "), key.substr(sign + 3), 0, {}};
        PairReader reader(pair, groups);
        for (const std::string_view word : pieces_of(said, " "))
            if (!word.empty()) reader.read(word);
        table[pair.typed.front()].push_back(std::move(pair));
    });
    return table;
}

const SlipTable& slip_table() {
    static const SlipTable table = read_slip_table();
    return table;
}

class SlipFinder {
public:
    SlipFinder(const Sentence& sentence, const WordContexts& contexts)
        : sentence_(sentence), odds_(sentence, contexts), headline_(is_headline()),
          shouted_(is_shouted()) {}

    std::vector<WordSlip> find() const {
        std::vector<WordSlip> slips;
        for (std::size_t i = 0; i < sentence_.size();)
            i = look_at(i, slips);
        return slips;
    }

private:
    // Where to look next.
    std::size_t look_at(std::size_t i, std::vector<WordSlip>& slips) const {
        const auto found = slip_table().find(bare(i));
        const SlipPair* best = nullptr;
        int most = told - 1;
        if (found != slip_table().end())
            for (const SlipPair& pair : found->second)
                if (const int score = score_of(pair, i); score > most) {
                    best = &pair;
                    most = score;
                }
        if (!best) {
            tell_by_context(i, slips);
            return i + 1;
        }
        const std::size_t last = i + best->typed.size() - 1;
        std::string meant(best->meant);
        if (best->typed.size() == 1) meant += sentence_.word(i).substr(best->typed[0].size());
        slips.push_back(
            {sentence_.extent(i, last), as_typed(std::move(meant), i), most >= certain});
        return last + 1;
    }

    void tell_by_context(std::size_t i, std::vector<WordSlip>& slips) const {
        if (!may_be_slip(i, 0)) return;
        std::string_view best;
        double most = told_by_context;
        for (const LikelyWord& likely : odds_.at(i)) {
            const double odds = likely.odds + table_share * table_score(likely.meant, i);
            if (odds <= most || is_in_other_tense(likely.meant, i)) continue;
            best = likely.meant;
            most = odds;
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
        const auto found = slip_table().find(sentence_.word(i));
        if (found == slip_table().end()) return 0;
        int most = 0, least = 0;
        for (const SlipPair& pair : found->second) {
            if (pair.meant != meant || pair.typed.size() != 1) continue;
            most = std::max(most, score_of(pair, i));
            least = std::min(least, score_of(pair, i));
        }
        return most + least;
    }

    int score_of(const SlipPair& pair, std::size_t i) const {
        for (std::size_t k = 0; k < pair.typed.size(); ++k)
            if ((k == 0 ? bare(i) : sentence_.word(i + k)) != pair.typed[k] || !may_be_slip(i, k))
                return never;
        const Spot spot{i, i + pair.typed.size() - 1};
        int score = pair.prior + (may_be_name(i) ? name_weight : 0);
        if (sentence_.classes(i) == 0 && has_meant(pair, i)) score += both_weight;
        for (const Evidence& one : pair.evidence)
            if (holds(one, spot)) score += one.weight;
        return score;
    }

    // The word, or without 's where it owns: manger's.
    std::string_view bare(std::size_t i) const {
        const std::string_view word = sentence_.word(i);
        if (!word.ends_with("'s") || slip_table().contains(word)) return word;
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
        return std::ranges::find(one.words, sentence_.word(i)) != one.words.end() ||
               (one.kinds != 0 && (kinds_of(sentence_, i) & one.kinds) != 0);
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
    ContextOdds odds_;
    bool headline_, shouted_;
};

}

std::vector<WordSlip> find_word_slips(const Sentence& sentence, const WordContexts& contexts) {
    return SlipFinder(sentence, contexts).find();
}

}
