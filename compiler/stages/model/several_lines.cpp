#include "compiler/stages/model/several_lines.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/stages/model/dates_meant.hpp"
#include "compiler/stages/model/settle_blocks.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <optional>
#include <string>
#include <utility>

namespace quoin::model {
namespace {

using Parts = std::vector<std::string_view>;

// What in such an entry is neither its name nor its place nor its dates.
std::optional<std::string_view> label_of_rest(trade::Holds holds) {
    switch (holds) {
    case trade::Holds::experience:
        return "note";
    case trade::Holds::honors:
        return "by";
    case trade::Holds::credentials:
        return "issuer";
    default:
        return std::nullopt;
    }
}

// How much of a text's front is dates, as where they stand in a column of their own; a year alone
// may be part of a name, unless blanks part it from what follows.
std::size_t dates_in_front(std::string_view text, const LocalDates& local) {
    constexpr std::size_t most_words = 8;
    constexpr std::string_view blanks = " \t";
    std::size_t found = 0, words = 0;
    for (std::size_t at = text.find_first_of(blanks); at != text.npos && words < most_words;) {
        const std::size_t next = text.find_first_not_of(blanks, at);
        if (next == text.npos) break;
        const bool apart = ++words > 1 || next > at + 1 || text[at] == '\t';
        if (apart && is_word_byte(text[next]) && as_dates(text.substr(0, at), local)) found = at;
        at = text.find_first_of(blanks, next);
    }
    return found;
}

// Where the dates begin that stand in parentheses at the end: `Tutor (2023-2024)`
std::size_t dates_in_parentheses(std::string_view text, const LocalDates& local) {
    const std::size_t open = text.rfind('(');
    if (open == text.npos || open == 0 || !text.ends_with(')')) return text.npos;
    const bool dates = as_dates(text.substr(open + 1, text.size() - open - 2), local).has_value();
    return dates ? open : text.npos;
}

// Empty where the sign parts nothing; without a sign the dates alone stand apart.
Parts parts_of(std::string_view text, std::string_view sign, const LocalDates& local) {
    Parts parts;
    const std::size_t front = dates_in_front(text, local), end = dates_in_parentheses(text, local);
    if (front > 0) parts.push_back(text.substr(0, front));
    const std::string_view rest = trimmed(text.substr(front, std::min(end, text.size()) - front));
    const Parts split = sign.empty() ? Parts{rest} : split_at(rest, sign);
    if (!sign.empty() && split.size() < 2) return {};
    std::ranges::copy(split, std::back_inserter(parts));
    if (end != text.npos) parts.push_back(trimmed(text.substr(end), "() "));
    return parts;
}

// A name and its place alone are an employer's: `Harrow Bay Boatworks, Anacortes, WA`. What begins
// small is no name of one.
std::string_view name_label(std::string_view part, const Parts& parts, const Parts& wanted) {
    if (!is_one_of(std::string_view{"employer"}, wanted)) return wanted.front();
    const auto is_small = [](std::string_view one) { return is_small_letter(one.front()); };
    const bool placed = parts.size() == 2 && reads_as_place(parts.back());
    const bool role_follows = !is_small(part) && std::ranges::any_of(parts, is_small);
    return placed || role_follows ? "employer" : wanted.front();
}

class EntryLines { // of one way to part the text
public:
    EntryLines(const Parts& parts, const BarePlace& place)
        : parts_(parts), holds_(place.holds), dates_(place.dates), wanted_(names_wanted(place)) {}

    std::vector<LabelledLine> read() {
        for (const std::string_view part : parts_)
            if (!take(part)) return {};
        return std::move(lines_);
    }

private:
    bool take(std::string_view part) {
        const Parts placed = split_at(part, ", "); // `Ellery State College, Port Ellery, WA`
        const bool takes_place = trade::find_word("place")->kinds.has(holds_);
        if (takes_place && placed.size() == 2 && reads_as_place(placed.back()))
            return take(placed.front()) && take(placed.back());
        if (auto line = line_by_words(part, holds_, dates_)) {
            add(line->label, line->text);
            return true;
        }
        if (wanted_.empty()) {
            const auto rest = label_of_rest(holds_);
            if (rest) add(*rest, unmarked(part));
            return rest.has_value();
        }
        name(part);
        return true;
    }

    // `Server @ Gull's Nest Cafe` is both.
    void name(std::string_view part) {
        const std::string_view label = name_label(part, parts_, wanted_);
        const std::size_t at = label == "role" ? part.find(" @ ") : part.npos;
        if (at == part.npos) return add(label, unmarked(part));
        add("role", part.substr(0, at));
        add("employer", part.substr(at + 3));
    }

    void add(std::string_view label, std::string_view text) {
        std::erase(wanted_, label);
        lines_.push_back({label, std::string(text)});
    }

    const Parts& parts_;
    trade::Holds holds_;
    const LocalDates& dates_;
    Parts wanted_;
    std::vector<LabelledLine> lines_;
};

// One part at least is what it is by its form, or a column of its own.
bool is_sure(const Parts& parts, std::string_view text, const BarePlace& place) {
    return parts_columns(text) || std::ranges::any_of(parts, [&place](std::string_view part) {
               return line_by_form(part, place.holds, place.dates).has_value();
           });
}

std::vector<LabelledLine> lines_said(std::string_view text, const BarePlace& place) {
    constexpr std::array<std::string_view, 10> signs{
        "\t", "   ", "...", " | ", " \u2022 ", " \u2014 ", ", ", " \u2013 ", " - ", ""};
    constexpr std::size_t most_parts = 5;
    for (const std::string_view sign : signs) {
        const Parts parts = parts_of(text, sign, place.dates);
        if (parts.size() < 2 || parts.size() > most_parts || !is_sure(parts, text, place)) continue;
        if (auto lines = EntryLines(parts, place).read(); !lines.empty()) return lines;
    }
    const Parts whole{text}; // `Cook @ Marlowe Cafe`
    return text.find(" @ ") == text.npos ? std::vector<LabelledLine>{}
                                         : EntryLines(whole, place).read();
}

bool names_entry(const LabelledLine& line) {
    const trade::Word* word = trade::find_word(line.label);
    return word && trade::names_entry(*word);
}

// Whether what the line says of an entry it cannot say of the one that it stands in.
bool is_of_another(const std::vector<LabelledLine>& lines, const BarePlace& place) {
    const auto stands = [&place](const LabelledLine& line) { return place.stands(line.label); };
    const bool named =
        names_wanted(place).empty() || (place.stands("dates") && place.stands("role"));
    return (named && (lines.empty() || std::ranges::any_of(lines, stands))) ||
           std::ranges::any_of(
               lines, [&](const LabelledLine& line) { return names_entry(line) && stands(line); });
}

}

std::vector<std::string_view> names_wanted(const BarePlace& place) {
    Parts wanted;
    for (const trade::Word& word : trade::vocabulary())
        if (word.kinds.has(place.holds) && trade::names_entry(word) && !place.stands(word.label))
            wanted.push_back(word.label);
    const auto first = std::ranges::find(wanted, label_of_bare(place.holds).value_or(""));
    if (first != wanted.end()) std::rotate(wanted.begin(), first, first + 1);
    return wanted;
}

SeveralLines several_lines(std::string_view text, const BarePlace& place) {
    SeveralLines said{lines_said(text, place), false};
    if (!is_of_another(said.lines, place)) return said;
    const auto nothing_stands = [](std::string_view) { return false; };
    auto lines = lines_said(text, {place.holds, nullptr, nothing_stands, place.dates});
    return std::ranges::any_of(lines, names_entry) ? SeveralLines{std::move(lines), true} : said;
}

}
