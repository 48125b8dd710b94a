// The comma before the last of a list. `a, b and c` may be a list or two clauses, and only what is
// surely a list is counted.
#include "compiler/advice/consistency.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace quoin::advice {

namespace {

struct Conjunction {
    bool serial = false;
    std::size_t offset = 0;
};

class Lists {
public:
    Lists(std::string_view text, const english::Language& language)
        : text_(text), language_(language) {}

    std::vector<Conjunction> conjunctions() const {
        std::vector<Conjunction> found;
        for (const std::string_view word : {" and ", " or "})
            for (std::size_t at = text_.find(word); at != std::string_view::npos;
                 at = text_.find(word, at + 1)) {
                if (at == 0) continue;
                const std::size_t next = at + word.size();
                if (text_[at - 1] == ',' ? ends_serial_list(at - 1) : ends_plain_list(at, next))
                    found.push_back({text_[at - 1] == ',', at});
            }
        return found;
    }

private:
    // The last before `end`, and no further back than an item of a list is long.
    std::size_t last_comma(std::size_t end) const {
        constexpr std::size_t longest = 60;
        const std::size_t begin = end > longest ? end - longest : 0;
        const std::size_t at = text_.substr(begin, end - begin).rfind(", ");
        return at == std::string_view::npos ? at : begin + at;
    }

    std::string_view between(std::size_t comma, std::size_t end) const {
        return text_.substr(comma + 2, end - comma - 2);
    }

    static bool is_item(std::string_view text, std::size_t most_words) {
        const std::size_t words = words_in(text).size();
        return words > 0 && words <= most_words &&
               text.find_first_of(";:.()") == std::string_view::npos;
    }

    bool ends_serial_list(std::size_t comma_before_and) const {
        constexpr std::size_t most_words = 3;
        const std::size_t comma = last_comma(comma_before_and);
        return comma != std::string_view::npos && comma + 2 < comma_before_and &&
               is_item(between(comma, comma_before_and), most_words);
    }

    // The item before `and` is one word, no verb and no state; or it is two, and both it and what
    // comes after are plurals: red fish, blue crabs and old clams.
    bool ends_plain_list(std::size_t at, std::size_t next) const {
        constexpr std::size_t most_words = 2;
        const std::size_t comma = last_comma(at);
        if (comma == std::string_view::npos || comma + 2 >= at) return false;
        const auto item = words_in(between(comma, at));
        if (item.empty() || !is_item(between(comma, at), most_words)) return false;
        const auto after = words_in(text_.substr(next, longest_word));
        if (after.empty() || has_capital(item) || is_aside(item.front().word)) return false;
        const bool plurals =
            item.back().word.ends_with('s') && after.size() > 1 && after[1].word.ends_with('s');
        const bool among_plurals = text_[comma - 1] == 's' && after.front().word.ends_with('s');
        if (item.size() == 2 && !plurals && !among_plurals) return false;
        if (opens_with_verbs(comma, item, after.front().word)) return true;
        if (are_gerunds(comma, item.front().word, after.front().word)) return true;
        if (follows_preposition(comma) && item.size() == 1) return !goes_on(next);
        if (may_be_verb(item.front().word, after.front().word)) return false;
        if (follows_fragment(comma, item.back().word, after.front().word)) return false;
        return !opens_with_adverbial(comma) && !goes_on(next);
    }

    static bool has_capital(const std::vector<WordAt>& words) { // WA, of Port Ellery, WA
        return std::ranges::any_of(words, [](const WordAt& word) {
            return word.word.size() == 2 && is_capitalised(word.word);
        });
    }

    static bool is_aside(std::string_view word) { // no item begins so
        return is_one_of(word, List::openings_of_asides);
    }

    // Sorted and weighed are verbs; staff and lunch may be, and so are if a verb follows.
    bool may_be_verb(std::string_view word, std::string_view following) const {
        const auto base = language_.base_of(word), next = language_.base_of(following);
        if (word.ends_with("ly") || (base && word.ends_with("ing"))) return true;
        const std::string small = lower_case(word);
        if (base && *base != small && !small.ends_with('s')) return true; // a past
        return base && next && (*base == small || opens_in_third_person());
    }

    // sweeping, painting and moving staging
    bool are_gerunds(std::size_t comma, std::string_view item, std::string_view after) const {
        const std::size_t begin = comma > longest_word ? comma - longest_word : 0;
        const auto before = words_in(text_.substr(begin, comma - begin));
        const auto is_gerund = [&](std::string_view word) {
            return word.ends_with("ing") && language_.base_of(word).has_value();
        };
        return !before.empty() && is_gerund(before.back().word) && is_gerund(item) &&
               is_gerund(after);
    }

    // in reading, spelling and grammar: right behind it no verb stands
    bool follows_preposition(std::size_t comma) const {
        constexpr std::array<std::string_view, 7> prepositions{"in",    "of",   "for",  "on",
                                                               "about", "with", "among"};
        const std::size_t begin = comma > longest_word ? comma - longest_word : 0;
        const auto before = words_in(text_.substr(begin, comma - begin));
        return before.size() > 2 && is_one_of(before[before.size() - 2].word, prepositions) &&
               language_.in_use(lower_case(before.back().word));
    }

    // History student, archives and exhibits: a pair of another kind than what stands before it.
    bool follows_fragment(std::size_t comma, std::string_view item, std::string_view after) const {
        const std::size_t begin = comma > longest_word ? comma - longest_word : 0;
        const auto before = words_in(text_.substr(begin, comma - begin));
        const auto plural = [](std::string_view word) {
            return word.ends_with('s') && !word.ends_with("ss");
        };
        const bool listed = text_.substr(begin, comma - begin).find(", ") != text_.npos;
        return !listed && !before.empty() && !plural(before.back().word) && plural(item) &&
               plural(after);
    }

    // Greeted, seated and sorted filers: three verbs in one form, the first of them alone.
    bool opens_with_verbs(std::size_t comma, const std::vector<WordAt>& item,
                          std::string_view last) const {
        if (item.size() != 1 || text_.substr(0, comma).find(' ') != std::string_view::npos)
            return false;
        const auto is_past = [&](std::string_view word) {
            const auto past = language_.past_of(word);
            return past && *past == lower_case(word);
        };
        return is_past(text_.substr(0, comma)) && is_past(item.front().word) && is_past(last);
    }

    bool opens_in_third_person() const { // Counts eels, sorts and weighs crabs
        const auto words = words_in(text_.substr(0, longest_word));
        if (words.empty() || !words.front().word.ends_with('s')) return false;
        return language_.base_of(words.front().word).has_value();
    }

    // At the lab, eels and crabs
    bool opens_with_adverbial(std::size_t comma) const {
        constexpr std::size_t longest = 80; // of an adverbial
        const std::size_t from = comma > longest ? comma - longest : 0;
        const std::size_t stop = text_.substr(from, comma - from).find_last_of(";:.(");
        if (stop == std::string_view::npos && from > 0) return false;
        const std::size_t begin = stop == std::string_view::npos ? 0 : from + stop + 1;
        const std::string_view clause = text_.substr(begin, comma - begin);
        const auto words = words_in(clause);
        if (words.empty() || clause.find(", ") != std::string_view::npos) return false;
        return is_one_of(lower_case(words.front().word), List::openings_of_adverbials);
    }

    // nets, crab and lobster pots, and buoys
    bool goes_on(std::size_t next) const {
        constexpr std::size_t near = 40;
        const std::string_view rest = text_.substr(next, near);
        for (const std::string_view more : {", and ", ", or "})
            if (const std::size_t at = rest.find(more); at != std::string_view::npos) {
                const auto words = words_in(rest.substr(at + more.size()));
                const auto past =
                    words.empty() ? std::nullopt : language_.past_of(words.front().word);
                if (!past || *past != words.front().word) return true;
            }
        return false;
    }

    static constexpr std::size_t longest_word = 40;
    std::string_view text_;
    const english::Language& language_;
};

}

void serial_comma(const ProofContext& context, std::vector<Finding>& findings) {
    std::vector<std::pair<Place, bool>> all;
    for (const TextInResume& part : context.texts) {
        if (!is_wording(part) || part.in_heading) continue; // a headline is of fragments
        const std::string& text = part.plain;
        for (const Conjunction& each : Lists(text, context.language).conjunctions())
            all.emplace_back(part.text.place(each.offset + 1, 3), each.serial);
    }
    const auto serial = static_cast<std::size_t>(
        std::ranges::count_if(all, [](const auto& each) { return each.second; }));
    if (serial == 0 || serial == all.size()) return;
    const bool usual = serial * 2 >= all.size();
    std::vector<Place> odd;
    for (const auto& [place, has] : all)
        if (has != usual) odd.push_back(place);
    const std::string lines = (odd.size() == 1 ? "line " : "lines ") + lines_listed(odd);
    if (usual)
        report<messages::comma_lacking>(findings, odd.front(), lines);
    else
        report<messages::comma_beside>(findings, odd.front(), lines);
}

}
