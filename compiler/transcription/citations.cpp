// Publications as lists of references have them (APA's and AMA's order, common practice):
// `Brandt, O., & Sund, T. (2024). Title. Venue, 12(3), 4–9.`, `Brandt O, Sund T. Title. Venue.
// 2024`.
#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/transcription/entry_fields.hpp"

#include <algorithm>
#include <array>

namespace quoin::transcription {

namespace {

constexpr std::size_t most_of_authors = 300; // bytes

// One or two capitals, each perhaps with a full stop: `A.`, `LK`, `J.-P.`
bool are_initials(std::string_view word) {
    const std::string_view bare = trimmed(word, ",;.");
    std::size_t capitals = 0;
    for (const char c : bare) {
        if (!is_capital_letter(c) && c != '.' && c != '-') return false;
        capitals += is_capital_letter(c);
    }
    return capitals > 0 && capitals < 4;
}

// Surnames with their initials, and nothing that is written small.
bool names_authors(std::string_view text) {
    constexpr std::array<std::string_view, 9> small = {"and", "de",  "van", "von", "al.",
                                                       "et",  "der", "la",  "with"};
    if (text.size() > most_of_authors) return false;
    std::size_t initials = 0;
    for (const std::string_view word : pieces_of(text, " ")) {
        if (word.empty() || word == "&" || is_one_of(word, small)) continue;
        if (is_small_letter(word.front()) || is_figure(word.front())) return false;
        initials += are_initials(word);
    }
    return initials > 0;
}

// Where the sentence that begins the text ends: after its stop; initials have none.
std::size_t sentence_end(std::string_view text) {
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] != '.' && text[i] != '?' && text[i] != '!') continue;
        if (i + 1 < text.size() && text[i + 1] != ' ') continue;
        const std::size_t space = text.rfind(' ', i);
        const std::string_view word = text.substr(space == text.npos ? 0 : space + 1,
                                                  i - (space == text.npos ? 0 : space + 1));
        if (text[i] == '.' && are_initials(word) && word.size() < 3) continue;
        return i + 1;
    }
    return text.size();
}

// A title may ask first and tell then: `Who signed on? A database of crews.`
std::size_t title_end(std::string_view text) {
    const std::size_t end = sentence_end(text);
    if (end >= text.size() || text[end - 1] == '.') return end;
    const std::size_t next = end + sentence_end(text.substr(end));
    return next < text.size() ? next : end;
}

bool opens_with_year(std::string_view text) {
    return text.size() >= 4 && all_figures(text.substr(0, 4)) &&
           (text.starts_with("19") || text.starts_with("20"));
}

// `2022` and `2022, March`, or that it is yet to come.
bool tells_when(std::string_view text) {
    constexpr std::array<std::string_view, 6> to_come = {
        "in press", "forthcoming", "submitted", "under review", "in preparation", "accepted"};
    return opens_with_year(text) || is_one_of(lower_case(text), to_come);
}

struct Citation {
    std::string_view authors, when, rest;
};

Citation parted(std::string_view text) {
    for (std::size_t open = text.find('('); open != text.npos; open = text.find('(', open + 1)) {
        const std::size_t close = text.find(')', open);
        if (close == text.npos) break;
        const std::string_view inside = text.substr(open + 1, close - open - 1);
        const std::string_view before = trimmed(text.substr(0, open), " ,");
        if (tells_when(inside) && names_authors(before))
            return {before, inside, trimmed(text.substr(close + 1), " .,:")};
    }
    if (text.find("\u201C") != text.npos || text.find('"') != text.npos) return {};
    for (std::size_t end = text.find(". "); end < most_of_authors; end = text.find(". ", end + 1)) {
        const std::string_view authors = text.substr(0, end), rest = text.substr(end + 2);
        const std::string_view next = rest.substr(0, rest.find(' '));
        const bool more = next == "and" || next == "&" || next.ends_with(',') ||
                          (are_initials(next) && next.size() > 1);
        if (!more && names_authors(authors) && authors.find(' ') != authors.npos)
            return {authors, {}, trimmed(rest)};
    }
    return {};
}

// The year that stands by itself after the title: `Venue. 2024;12(3):4-9.`
std::string_view year_in(std::string_view text) {
    for (std::size_t i = text.size(); i-- > 0;)
        if ((i == 0 || text[i - 1] == ' ' || text[i - 1] == '(') &&
            opens_with_year(text.substr(i)) &&
            (i + 4 == text.size() || !is_letter_or_figure(text[i + 4])) &&
            !text.substr(i + 4).starts_with("\u2013") && !text.substr(i + 4).starts_with("-"))
            return text.substr(i, 4);
    return {};
}

}

// `In L. Harrow (Ed.), Essays on Water (pp. 1–9). Port Ansel: Inlet Press.`: the name of the book
// or the journal, without who edited it; with its volume and its pages where they are figures.
std::string venue_of(std::string_view text) {
    for (const std::string_view editor : {"(Ed.), ", "(Eds.), ", "(ed.), ", "(eds.), "})
        if (const std::size_t at = text.find(editor); at != text.npos)
            text = text.substr(at + editor.size());
    if (text.starts_with("In ")) text = text.substr(3);
    if (const std::size_t at = text.find(": "); at != text.npos && may_be_town(text.substr(0, at)))
        text = text.substr(at + 2); // where a book came out, before who brought it out
    std::size_t end = sentence_end(text);
    for (std::size_t i = 0; i + 2 < end; ++i) {
        const std::string_view rest = text.substr(i);
        const bool pages = rest.starts_with(" (pp") || rest.starts_with(", pp");
        const bool volume = rest.starts_with(", vol") || rest.starts_with(", no.") ||
                            (is_figure(text[i + 1]) && text[i] == ' ' && i > 0);
        if (pages || volume) end = std::min(end, i);
    }
    while (end < text.size() && text[end - 1] != '.') { // `12, 44–71`
        const std::size_t next = std::min(text.find(' ', end + 1), text.size());
        const std::string_view word = text.substr(end, next - end);
        if (std::ranges::any_of(word, is_ascii_letter) || !has_digit(word)) break;
        end = next;
    }
    return std::string(trimmed(text.substr(0, end), " .,;:"));
}

bool add_citation(DraftEntry& entry) {
    std::string text;
    for (const std::string& row : entry.old)
        text.append(text.empty() ? "" : " ").append(row);
    const Citation found = parted(text);
    if (found.authors.empty() || found.rest.empty()) return false;
    const std::size_t end = title_end(found.rest);
    const std::string_view more = trimmed(found.rest.substr(end));
    if (found.when.empty() && more.empty()) return false;
    entry.add("author", std::string(found.authors));
    entry.add("publication", std::string(trimmed(found.rest.substr(0, end), " .,")));
    entry.add("venue", venue_of(more));
    const std::string_view year =
        opens_with_year(found.when) ? found.when.substr(0, 4) : year_in(more);
    if (found.when.empty() || opens_with_year(found.when)) entry.add("dates", std::string(year));
    entry.bullets.clear();
    entry.guesses = {"publication"};
    if (entry.find("venue")) entry.guesses.emplace_back("venue");
    return true;
}

}
