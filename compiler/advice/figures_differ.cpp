// What is counted goes by its noun and the verb beside it: of `900 tickets closed at a campus desk`
// a bullet tells that has closed tickets, whatever else it says.
#include "compiler/advice/figures_differ.hpp"

#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/content_stems.hpp"
#include "compiler/advice/degree_claims.hpp"
#include "compiler/advice/hours_differ.hpp"
#include "compiler/advice/names_differ.hpp"
#include "compiler/advice/study_differs.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/advice/wholes_differ.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/english/stems.hpp"
#include "compiler/english/tokens.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>
#include <string>
#include <string_view>

namespace quoin::advice {

namespace {

using english::TokenKind;

struct ToldAmount {
    double value = 0;
    char kind = ' ';      // %, $ or none
    Stems of;             // what is counted, and what was done with it: the words behind the figure
    std::size_t at = 0;   // bytes
    std::size_t size = 0; // bytes
    bool rate = false;    // a day, per term
};

std::optional<ToldAmount> amount_in(std::string_view word) {
    ToldAmount amount;
    if (word.starts_with('$')) {
        amount.kind = '$';
        word.remove_prefix(1);
    }
    std::string plain(word);
    std::erase(plain, ',');
    const auto end = std::from_chars(plain.data(), plain.data() + plain.size(), amount.value);
    const std::string_view rest(end.ptr,
                                static_cast<std::size_t>(plain.data() + plain.size() - end.ptr));
    if (end.ec != std::errc{} || (!rest.empty() && rest != "%")) return std::nullopt;
    if (rest == "%") amount.kind = '%';
    return amount;
}

class ToldAmounts {
public:
    ToldAmounts(std::string_view text, const english::Stemmer& stemmer)
        : tokens_(english::read_tokens(text, {})), stemmer_(stemmer) {}

    // Not years, nor measures of time.
    std::vector<ToldAmount> read() const {
        std::vector<ToldAmount> amounts;
        for (std::size_t i = 0; i < tokens_.size(); ++i) {
            auto amount = figure_at(i);
            if (!amount || is_whole(i)) continue;
            if (word(i + 1) == "percent") amount->kind = '%';
            const std::size_t first = behind_whole(i + 1);
            if (word(first).starts_with("year") || word(first).starts_with("month")) continue;
            amount->of = words_behind(first);
            amount->rate = is_rate(first);
            if (amount->kind == ' ' && amount->of.empty()) continue;
            amounts.push_back(std::move(*amount));
        }
        return amounts;
    }

    struct Change {
        ToldAmount from, to;
    };

    // The first `from A to B`, whatever stands behind A; years are when, and no change.
    std::optional<Change> change() const {
        constexpr std::size_t near = 5;
        for (std::size_t i = 0; i < tokens_.size(); ++i) {
            const auto from = word(i) == "from" ? figure_at(i + 1) : std::nullopt;
            for (std::size_t k = i + 2; from && k < i + near; ++k)
                if (const auto to = word(k) == "to" ? figure_at(k + 1) : std::nullopt;
                    to && to->kind == from->kind && !are_years(word(i + 1), word(k + 1)))
                    return Change{*from, *to};
        }
        return std::nullopt;
    }

private:
    std::optional<ToldAmount> figure_at(std::size_t i) const {
        const bool figure = i < tokens_.size() && tokens_[i].kind == TokenKind::figure;
        auto amount = figure ? amount_in(tokens_[i].lower) : std::nullopt;
        if (!amount) return std::nullopt;
        amount->at = tokens_[i].extent.offset;
        amount->size = tokens_[i].extent.length;
        return amount;
    }

    std::string_view word(std::size_t i) const {
        return i < tokens_.size() ? std::string_view(tokens_[i].lower) : std::string_view{};
    }
    bool is_word(std::size_t i) const {
        return i < tokens_.size() && tokens_[i].kind == TokenKind::word;
    }

    bool is_whole(std::size_t i) const {
        return i > 1 && word(i - 1) == "of" && tokens_[i - 2].kind == TokenKind::figure;
    }

    // `2,600 of 6,000 apprenticeship hours`
    std::size_t behind_whole(std::size_t i) const {
        const bool whole =
            word(i) == "of" && i + 1 < tokens_.size() && tokens_[i + 1].kind == TokenKind::figure;
        return whole ? i + 2 : i;
    }

    Stems words_behind(std::size_t i) const {
        constexpr std::size_t most = 3;
        Stems stems;
        for (; is_word(i) && !is_little(word(i)) && stems.size() < most; ++i)
            stems.insert(stemmer_.stem(std::string(word(i))));
        return stems;
    }

    bool is_rate(std::size_t i) const {
        constexpr std::array<std::string_view, 5> rates{"a", "an", "per", "each", "every"};
        for (std::size_t k = i; k < i + 4 && is_word(k); ++k)
            if (is_one_of(word(k), rates) && is_time(word(k + 1))) return true;
        return false;
    }

    static bool is_time(std::string_view word) {
        constexpr std::array<std::string_view, 12> times{"hour",  "day",      "night", "shift",
                                                         "week",  "month",    "term",  "year",
                                                         "class", "semester", "visit", "season"};
        return is_one_of(word, times);
    }

    english::Tokens tokens_;
    const english::Stemmer& stemmer_;
};

// `over 40`, or the sum of several.
bool is_rounded(std::string_view lower) {
    constexpr std::array<std::string_view, 26> words{
        "over",     "more than", "nearly",     "about",      "almost",    "up to",   "around",
        "some",     "at least",  "at most",    "as many as", "total",     "across",  "both",
        "combined", "in all",    "altogether", "average",    "averaging", "between", "each",
        "under",    "below",     "less than",  "fewer than", "within"};
    return lower.find('+') != lower.npos ||
           std::ranges::any_of(words, [&](std::string_view one) { return has_phrase(lower, one); });
}

// What a figure of the summary counts, to be found in bullets.
struct ClaimedAmount {
    ToldAmount amount;
    Stems all;  // of its clause, if it is the only figure there
    Stems near; // of what is counted and what was done with it
};

// The one amount of a bullet that counts the same as `claimed`; none if any agrees with it.
std::optional<ToldAmount> other_amount(const ClaimedAmount& claimed,
                                       const std::vector<ToldAmount>& told) {
    std::optional<ToldAmount> other;
    for (const ToldAmount& one : told) {
        const bool same = claimed.amount.kind == ' ' ? shared(one.of, claimed.amount.of) > 0 : true;
        if (one.kind != claimed.amount.kind || one.rate != claimed.amount.rate || !same) continue;
        if (other || one.value == claimed.amount.value) return std::nullopt;
        other = one;
    }
    return other;
}

class Comparison {
public:
    Comparison(const ProofContext& context, std::vector<Finding>& findings)
        : context_(context), findings_(findings) {
        for (const WordedBullet& bullet : context.bullets) {
            told_.push_back(stems_of(bullet.text, stemmer_));
            amounts_.push_back(ToldAmounts(bullet.text, stemmer_).read());
        }
    }

    void look_at(const TextInResume& part) {
        const std::string& text = part.plain;
        for (std::size_t begin = 0; begin < text.size();) {
            std::size_t end = begin;
            while (end < text.size() && !parts_clauses(text, end))
                ++end;
            look_at_clause(std::string_view(text).substr(begin, end - begin), begin, part.text);
            begin = end + 1;
        }
    }

private:
    static bool parts_clauses(std::string_view text, std::size_t i) {
        const bool last = i + 1 == text.size() || text[i + 1] == ' ';
        return text[i] == ';' || ((text[i] == '.' || text[i] == ',') && last);
    }

    void look_at_clause(std::string_view clause, std::size_t offset, const model::Text& text) {
        const auto amounts = ToldAmounts(clause, stemmer_).read();
        look_at_change(clause, offset, text);
        if (is_rounded(lower_case(clause))) return;
        const Stems all = amounts.size() == 1 ? stems_of(clause, stemmer_) : Stems{};
        for (const ToldAmount& amount : amounts)
            look_for({amount, all, near(clause, amount)}, clause, offset, text);
    }

    // The one bullet that tells the same with another figure.
    void look_for(const ClaimedAmount& claimed, std::string_view clause, std::size_t offset,
                  const model::Text& text) {
        const ToldAmount& amount = claimed.amount;
        const WordedBullet* found = nullptr;
        std::optional<ToldAmount> other;
        for (std::size_t b = 0; b < told_.size(); ++b) {
            const WordedBullet& bullet = context_.bullets[b];
            if (!tells_of(claimed, told_[b])) continue;
            const auto& told = amounts_[b];
            if (std::ranges::none_of(told, [&](auto& one) { return one.kind == amount.kind; }))
                continue;
            if (found) return; // they may be parts of it
            found = &bullet;
            other = other_amount(claimed, told);
        }
        if (found && other) tell(text, clause, offset, amount, *found, *other);
        if (!found) look_for_noun(amount, clause, offset, text);
    }

    // `46 agents`, of which one bullet alone tells, and has 26.
    void look_for_noun(const ToldAmount& amount, std::string_view clause, std::size_t offset,
                       const model::Text& text) {
        if (amount.kind != ' ' || amount.of.size() != 1) return;
        const WordedBullet* found = nullptr;
        const ToldAmount* other = nullptr;
        for (std::size_t b = 0; b < amounts_.size(); ++b)
            for (const ToldAmount& told : amounts_[b]) {
                if (told.of != amount.of) continue;
                const std::string& lower = context_.bullets[b].part.lower;
                const std::string_view before(lower.data(), told.at);
                if (found || told.rate != amount.rate || is_rounded(before)) return;
                found = &context_.bullets[b];
                other = &told;
            }
        if (found && other->value != amount.value)
            tell(text, clause, offset, amount, *found, *other);
    }

    // `from 6.1% to 2.3%` here, and `from 6.1% to 3.2%` in the bullet that tells of the same.
    void look_at_change(std::string_view clause, std::size_t offset, const model::Text& text) {
        const auto claimed = ToldAmounts(clause, stemmer_).change();
        if (!claimed) return;
        const Stems said = stems_of(clause, stemmer_);
        const std::size_t least = claimed->from.kind == ' ' ? 2 : 1; // a bare figure tells less
        for (std::size_t b = 0; b < told_.size(); ++b) {
            if (shared(said, told_[b]) < least) continue;
            const WordedBullet& bullet = context_.bullets[b];
            const auto told = ToldAmounts(bullet.text, stemmer_).change();
            if (!told || told->from.kind != claimed->from.kind) continue;
            const bool from = told->from.value == claimed->from.value;
            const bool to = told->to.value == claimed->to.value;
            if (from == to) continue; // both the same, or another change
            tell(text, clause, offset, from ? claimed->to : claimed->from, bullet,
                 from ? told->to : told->from);
        }
    }

    // All of the clause, or what is counted and what was done with it.
    static bool tells_of(const ClaimedAmount& claimed, const Stems& told) {
        const auto has_all = [&](const Stems& some, std::size_t least) {
            return some.size() >= least && shared(some, told) == some.size();
        };
        const std::size_t least_near =
            claimed.amount.kind == ' ' ? 2 : 3; // a bare share tells less
        return has_all(claimed.all, 2) || has_all(claimed.near, least_near);
    }

    // The words behind the figure, and what was done with it: `closed 900 tickets`, `Editor of 9
    // issues`; of a share and of dollars what changed by it, `Grew online sales 64%`.
    Stems near(std::string_view clause, const ToldAmount& amount) const {
        auto before = words_in(clause.substr(0, amount.at));
        if (amount.kind != ' ') return words_changed(before);
        Stems stems = amount.of;
        const bool agent = before.size() > 1 && before.back().word == "of";
        if (agent) before.pop_back();
        if (before.empty()) return stems;
        const std::string word = lower_case(before.back().word);
        if (agent && !is_agent(word)) return stems;
        if (!is_little(word)) stems.insert(stemmer_.stem(agent ? deed_of(word) : word));
        return stems;
    }

    static bool is_agent(std::string_view word) { // editor, coordinator
        return word.size() > 5 && (word.ends_with("or") || word.ends_with("er"));
    }
    static std::string deed_of(std::string word) { // edit, coordinat
        word.resize(word.size() - 2);
        return word;
    }

    Stems words_changed(const std::vector<WordAt>& before) const {
        constexpr std::size_t most = 4;
        Stems stems;
        for (std::size_t i = before.size(); i-- > 0 && before.size() - i <= most;) {
            const std::string word = lower_case(before[i].word);
            if (!is_little(word)) stems.insert(stemmer_.stem(word));
        }
        return stems;
    }

    void tell(const model::Text& text, std::string_view clause, std::size_t offset,
              const ToldAmount& claimed, const WordedBullet& bullet, const ToldAmount& other) {
        report<messages::figures_differ>(findings_, text.place(offset + claimed.at, claimed.size),
                                         in_quotes(clause.substr(claimed.at, claimed.size)),
                                         in_quotes(bullet.text.substr(other.at, other.size)),
                                         bullet.bullet->text.place(0, 1).line);
    }

    const ProofContext& context_;
    std::vector<Finding>& findings_;
    english::Stemmer stemmer_;
    std::vector<Stems> told_; // by each bullet
    std::vector<std::vector<ToldAmount>> amounts_;
};

}

void figures_differ(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::size_t longest = 2000; // bytes; of more no summary is made
    wholes_differ(context, findings);
    names_differ(context, findings);
    hours_differ(context, findings);
    study_differs(context, findings);
    if (context.bullets.size() > most_bullets) return;
    std::optional<Comparison> comparison;
    for (const TextInResume& part : context.texts) {
        if (!is_claim(part) || !has_digit(part.plain) || part.plain.size() > longest) continue;
        if (!comparison) comparison.emplace(context, findings);
        comparison->look_at(part);
    }
}

}
