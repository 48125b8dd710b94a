#include "compiler/postings/people.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/english/nouns.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/trade/spoken_languages.hpp"

#include <algorithm>
#include <vector>

namespace quoin::postings {

namespace {

constexpr std::string_view signs_around = ".,:;!?()\"|";

struct TypedWord { // what stands between two blanks
    std::string_view word;
    std::string_view after; // signs
    bool of = false;        // a possessive, whose ending is cut off
    bool opens = false;     // nothing, or a sign that ends something, stands before it
    bool name = false;
};

std::string_view without_possessive(std::string_view word) {
    if (word.ends_with("'s")) return word.substr(0, word.size() - 2);
    return word.ends_with("s'") ? word.substr(0, word.size() - 1) : word;
}

std::vector<TypedWord> pieces_in(std::string_view text) {
    std::vector<TypedWord> pieces;
    bool opens = true;
    for (const std::string_view whole : pieces_of(text, " ")) {
        const std::size_t begin = std::min(whole.find_first_not_of(signs_around), whole.size());
        const std::size_t last = whole.find_last_not_of(signs_around);
        TypedWord piece;
        if (last != whole.npos) {
            piece.word = without_possessive(whole.substr(begin, last + 1 - begin));
            piece.of = begin + piece.word.size() != last + 1;
            piece.after = whole.substr(last + 1);
        }
        piece.opens = opens || begin > 0;
        piece.name = is_shaped_as_name(piece.word);
        opens = piece.word.empty() || piece.after.find_first_of(".!?;:") != whole.npos;
        pieces.push_back(piece);
    }
    return pieces;
}

bool is_role(std::string_view word) {
    return english::is_person_noun(lower_case(word), english::Lexicon{});
}

class PeopleReader {
public:
    PeopleReader(std::set<std::string>& names, const english::WordList& words)
        : names_(names), words_(words) {}

    void read(std::string_view text, bool after_label) {
        pieces_ = pieces_in(text);
        for (std::size_t i = 0; i < pieces_.size();)
            i = pieces_[i].name ? read_run(i, after_label && i == 0) : i + 1;
        read_addresses(text);
    }

private:
    // Names that no sign parts, without the role before them and the word that opens their
    // sentence.
    std::size_t read_run(std::size_t first, bool labelled) {
        std::size_t end = first + 1;
        while (end < pieces_.size() && pieces_[end].name && pieces_[end - 1].after.empty() &&
               !pieces_[end - 1].of && !pieces_[end].opens)
            ++end;
        constexpr std::size_t most = 4;
        while (first + 1 < end && !strange(first) &&
               (is_title(first) || pieces_[first].opens || is_role(pieces_[first].word)))
            ++first;
        if (end - first > most) return end;
        const bool any = std::ranges::any_of(pieces_.begin() + at(first), pieces_.begin() + at(end),
                                             [&](const TypedWord& p) { return strange(p); });
        if (any ? labelled || is_named(first) || is_led_to(first) || does_something(first, end) ||
                      joins(first)
                : end - first == 1 && is_named(first))
            add(first, end);
        return end;
    }

    static std::ptrdiff_t at(std::size_t i) { return static_cast<std::ptrdiff_t>(i); }

    bool strange(const TypedWord& piece) const {
        return piece.name && is_strange(piece.word, words_);
    }
    bool strange(std::size_t i) const { return strange(pieces_[i]); }

    void add(std::size_t first, std::size_t end) {
        for (std::size_t i = first; i < end; ++i)
            names_.insert(lower_case(pieces_[i].word));
    }

    std::string lower(std::size_t i) const {
        return i < pieces_.size() ? lower_case(pieces_[i].word) : std::string{};
    }

    // The word that stands `back` before, where no sign parts it; but a colon may.
    std::string word_before(std::size_t i, std::size_t back) const {
        if (i < back) return {};
        for (std::size_t k = i - back; k < i; ++k)
            if (!pieces_[k].after.empty() && pieces_[k].after != ":" &&
                !is_one_of(lower(k), List::titles_of_people))
                return {};
        return lower(i - back);
    }

    bool is_title(std::size_t i) const { return is_one_of(lower(i), List::titles_of_people); }

    // Ms. Pearl, is named Pearl, ask for Pearl, call Marge: whatever else the word means.
    bool is_named(std::size_t i) const {
        const std::string last = word_before(i, 1), other = word_before(i, 2);
        return is_one_of(last, List::titles_of_people) ||
               (last == "named" && (other == "is" || other == "was" || is_role(other))) ||
               (last == "for" && other == "ask") ||
               (is_one_of(last, List::verbs_of_contact) &&
                words_.class_of(pieces_[i].word) != english::WordList::is_none);
    }

    // By what stands before: call Tolliver, next to Tolliver, his daughter Isolde, our mate, Dana.
    bool is_led_to(std::size_t i) const {
        const std::string last = word_before(i, 1), other = word_before(i, 2);
        if (is_one_of(last, List::verbs_of_contact) ||
            is_one_of(other + ' ' + last, List::words_before_people))
            return true;
        if (is_one_of(last, List::kin_and_chiefs) || is_role(last)) return true;
        return i > 0 && pieces_[i - 1].after == "," && is_our_person(i - 1);
    }

    // Our lead hand, the lab's director
    bool is_our_person(std::size_t i) const {
        constexpr std::string_view owners[] = {"our", "your", "his", "her", "their", "my", "the"};
        constexpr std::size_t looked_at = 5;
        if (!is_role(pieces_[i].word)) return false;
        for (std::size_t k = i; k-- > 0 && i - k < looked_at && pieces_[k].after.empty();)
            if (is_one_of(lower(k), owners) || pieces_[k].of) return true;
        return false;
    }

    // By what stands after: Dana's crew, Dana teaches, Dana, who; Dana, our lead hand.
    bool does_something(std::size_t first, std::size_t end) const {
        const TypedWord& last = pieces_[end - 1];
        if (last.of) return !is_one_of(lower(end - 1), List::names_of_finders);
        if (last.after == ",") return is_set_beside(end);
        if (!last.after.empty()) return false;
        const std::string next = lower(end), other = lower(end + 1);
        if (next == "in")
            return is_one_of(other == "the" ? lower(end + 2) : other, List::rooms_of_people);
        if (is_one_of(next, List::verbs_of_anything)) // Intune manages laptops
            return end - first > 1 || words_.class_of(last.word) != english::WordList::is_none;
        return is_one_of(next, List::verbs_of_people) ||
               (is_one_of(next, List::words_before_verbs_of_people) &&
                is_one_of(other, List::verbs_of_people));
    }

    bool is_set_beside(std::size_t i) const {
        constexpr std::string_view openings[] = {"our", "your",  "the", "his",
                                                 "her", "their", "a",   "an"};
        constexpr std::size_t looked_at = 5;
        const std::string next = lower(i);
        if (next == "who" || next == "whose") return true;
        if (i >= pieces_.size() || (!pieces_[i].name && !is_one_of(next, openings))) return false;
        const bool titled = pieces_[i].name;
        for (std::size_t k = i; k < std::min(i + looked_at, pieces_.size()); ++k) {
            if (is_role(pieces_[k].word) && (!titled || pieces_[k].name)) return true;
            if (!pieces_[k].after.empty()) return false;
        }
        return false;
    }

    // Priyanka and Desmond, of whom the one is known
    bool joins(std::size_t first) const {
        constexpr std::string_view joints[] = {"and", "or", "&"};
        const std::size_t before = is_one_of(word_before(first, 1), joints) ? first - 2 : first - 1;
        return first > 1 && pieces_[before].name && names_.contains(lower(before)) &&
               (pieces_[before].after.empty() || pieces_[before].after == ",");
    }

    // solveig@littledippers.example
    void read_addresses(std::string_view text) {
        for (std::size_t sign = text.find('@'); sign != text.npos;
             sign = text.find('@', sign + 1)) {
            const std::size_t blank = text.find_last_of(" (:<", sign);
            const std::size_t begin = blank == text.npos ? 0 : blank + 1;
            constexpr std::size_t shortest = 3;
            for (const std::string& name : parted(text.substr(begin, sign - begin), "._-")) {
                const std::string typed = capitalised(lower_case(name));
                if (name.size() >= shortest && is_shaped_as_name(typed) &&
                    is_strange(typed, words_))
                    names_.insert(lower_case(name));
            }
        }
    }

    std::set<std::string>& names_;
    const english::WordList& words_;
    std::vector<TypedWord> pieces_;
};

// About Halyard, WHY HALYARD
void add_employer(std::string_view heading, std::set<std::string>& names) {
    const std::string lower = lower_case(heading);
    for (const std::string_view opening : {"about ", "why ", "life at ", "working at ", "join "}) {
        if (!lower.starts_with(opening)) continue;
        for (const std::string_view whole : pieces_of(heading.substr(opening.size()), " ")) {
            const std::string_view word = trimmed(whole, signs_around);
            if (!is_capitalised(word) || is_one_of(lower_case(word), List::words_about)) return;
            names.insert(lower_case(word));
        }
    }
}

}

bool is_shaped_as_name(std::string_view word) {
    if (word.size() < 2 || !is_capital_letter(word.front())) return false;
    bool small = false;
    for (std::size_t i = 1; i < word.size(); ++i) {
        const char c = word[i];
        if (is_figure(c) || c == '/' || c == '&' || c == '+' || c == '@' || c == '.') return false;
        const bool part = word[i - 1] == '-' || word[i - 1] == '\'' || word.starts_with("Mc");
        if (is_capital_letter(c) && !part) return false;
        small = small || is_small_letter(c);
    }
    return small;
}

bool is_given_name(std::string_view word) {
    return is_one_of(lower_case(word), List::given_names);
}

bool is_strange(std::string_view word, const english::WordList& words) {
    const std::string lower = lower_case(word);
    if (is_one_of(lower, List::given_names)) return true;
    return words.class_of(lower) == english::WordList::is_none &&
           !is_one_of(lower, List::names_of_things) && !trade::is_spoken_language(lower);
}

std::set<std::string> people_in(std::span<const Statement> statements,
                                const english::WordList& words) {
    std::set<std::string> names;
    PeopleReader reader(names, words);
    bool label = false; // `Reports to` above
    for (const Statement& statement : statements) {
        if (statement.heading) add_employer(statement.text, names);
        reader.read(statement.text, label);
        label = statement.heading &&
                is_one_of(trimmed(lower_case(statement.text), ": "), List::labels_of_people);
    }
    return names;
}

}
