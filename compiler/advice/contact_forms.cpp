// The forms of contact details, and what each says.
#include "compiler/advice/contact_forms.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/phrases.hpp"

#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/stages/model/contact_links.hpp"
#include "grammar/contact.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cstdlib>
#include <memory>
#include <utility>

namespace quoin::advice {

namespace {

constexpr std::size_t most_link = 40; // characters

// --- telephone

// `(360) 555-0142 (cell)`, `Mobile: 360-555-0142`: words beside the number, and no letters in it.
std::string_view without_words(std::string_view number) {
    const auto is_word = [](char c) { return is_ascii_letter(c) || c == ' ' || c == '/'; };
    const std::size_t open = number.rfind('(');
    if (open != std::string_view::npos && number.ends_with(')') &&
        !has_digit(number.substr(open)) &&
        std::ranges::all_of(number.substr(open + 1, number.size() - open - 2), is_word))
        number = number.substr(0, open);
    const std::size_t colon = number.find(':');
    if (colon != std::string_view::npos && std::ranges::all_of(number.substr(0, colon), is_word))
        number = number.substr(colon + 1);
    return trimmed(number, " ");
}

// Of an international number; only those of North America can be judged.
std::optional<std::string> north_american_fault(std::string_view figures) {
    if (figures.front() != '1') return std::nullopt;
    if (figures.size() != 11) return fill<messages::not_ten_figures>();
    if (model::is_north_american(figures.substr(1))) return std::nullopt;
    return fill<messages::wrong_area_code>();
}

std::string_view without_extension(std::string_view number) {
    const std::string lower = lower_case(number);
    return number.substr(0, std::min({lower.find('x'), lower.find("ext"), lower.find('#'),
                                      lower.find(','), lower.size()}));
}

// Of a number that no telephone network takes.
std::string figures_wrong(std::string_view number) {
    const std::string figures = only(is_figure, without_extension(number));
    if (figures.size() == 7) return fill<messages::no_area_code>();
    if (number.starts_with('+')) return fill<messages::wrong_international>();
    if (figures.size() == 10) return fill<messages::wrong_area_code>();
    return fill<messages::wrong_figures>(counted(figures.size(), "figure", "figures"));
}

// --- links

bool has_tracking(std::string_view address) {
    const std::size_t query = address.find('?');
    if (query == std::string_view::npos) return false;
    const std::string_view rest = address.substr(query + 1);
    for (const std::string& pair : parted(rest.substr(0, rest.find('#')), "&;")) {
        const std::string key = lower_case(pair.substr(0, pair.find('=')));
        if (key.starts_with("utm_") || is_one_of(key, List::tracking)) return true;
    }
    return false;
}

bool is_random(std::string_view part) {
    constexpr std::size_t least = 8, least_figures = 9, least_switches = 3;
    if (part.size() < least || !has_digit(part)) return false;
    std::size_t switches = 0, letters = 0;
    for (std::size_t at = 0; at < part.size(); ++at) {
        if (!is_figure(part[at])) ++letters;
        if (at > 0 && is_figure(part[at]) != is_figure(part[at - 1])) ++switches;
    }
    if (letters == 0) return part.size() >= least_figures;
    return switches >= least_switches || (is_figure(part[0]) && letters * 2 < part.size());
}

std::optional<std::string> random_tail(std::string_view address) {
    std::string_view path = address.substr(0, address.find_first_of("?#"));
    while (path.ends_with('/'))
        path.remove_suffix(1);
    const std::size_t slash = path.rfind('/');
    if (slash == std::string_view::npos || path.substr(0, slash + 1).ends_with("://"))
        return std::nullopt;
    for (const std::string& part : parted(path.substr(slash + 1), "-_."))
        if (is_random(part)) return part;
    return std::nullopt;
}

// --- postal addresses

bool opens_with(std::string_view part, std::string_view word) {
    return part.starts_with(word) &&
           (part.size() == word.size() || part[word.size()] == ' ' || part[word.size()] == '.');
}

bool is_zip(std::string_view word) {
    const bool five = word.size() == 5 && all_figures(word);
    return five || (word.size() == 10 && word[5] == '-' && only(is_figure, word).size() == 9);
}

// Lower case, and a dash between figures is the hyphen that was typed.
std::string plain_address(std::string_view address) {
    std::string plain = replaced(lower_case(address), no_break_space, " ");
    for (const std::string_view dash : {"\u2013", "\u2011"})
        plain = replaced(std::move(plain), dash, "-");
    return replaced(std::move(plain), "\u00BD", "");
}

std::vector<std::string> address_parts(std::string_view plain) {
    std::vector<std::string> parts = parted(plain, ",;");
    for (std::string& part : parts)
        part.erase(0, std::min(part.find_first_not_of(' '), part.size()));
    return parts;
}

bool is_box(std::string part) {
    std::erase_if(part, [](char c) { return c == '.' || c == ' '; });
    return part.starts_with("pobox");
}

// "1420", "1420-b", "1420b", "one"
bool is_house_number(std::string_view word) {
    if (number_named(word)) return true;
    const std::size_t end = std::min(word.find_first_not_of("0123456789"), word.size());
    const std::string_view rest = word.substr(end);
    if (end == 0 || rest.size() > 2) return false;
    const std::string_view letter = rest.starts_with('-') ? rest.substr(1) : rest;
    return rest.empty() || (letter.size() == 1 && is_ascii_letter(letter[0]));
}

// "one spindrift lane": a number in words is one of a house before the name of a street alone.
bool names_street(const std::vector<std::string>& words) {
    constexpr std::array<std::string_view, 22> kinds{
        "lane",  "ln", "street",  "st",    "avenue",  "ave",    "road",      "rd",
        "drive", "dr", "court",   "ct",    "way",     "circle", "boulevard", "blvd",
        "place", "pl", "terrace", "plaza", "highway", "hwy"};
    if (words.size() < 3) return false;
    std::string last = words.back();
    while (last.ends_with('.'))
        last.pop_back();
    return is_one_of(last, kinds);
}

bool is_street(const std::string& part) {
    const std::vector<std::string> words = parted(part, " ");
    if (words.size() < 2 || !is_house_number(words[0])) return false;
    return is_figure(words[0][0]) ? is_ascii_letter(words[1][0]) : names_street(words);
}

}

std::optional<std::string> phone_fault(std::string_view typed) {
    if (!has_digit(typed)) return fill<messages::no_figures>();
    const std::string_view number = without_words(typed);
    if (const auto uri = model::phone_uri(number)) {
        const auto fault = north_american_fault(only(is_figure, uri->substr(0, uri->find(';'))));
        return fault ? std::optional(fill<messages::undialled>(*fault)) : std::nullopt;
    }
    if (std::ranges::any_of(without_extension(number), is_ascii_letter))
        return fill<messages::letters_in_phone>();
    return fill<messages::undialled>(figures_wrong(number));
}

// A plan has 8 to 12 figures within its country (E.164 allows 15 with the country's own).
bool is_national_phone(std::string_view number) {
    constexpr std::size_t least = 8, most = 12;
    const std::size_t figures = only(is_figure, number).size();
    return number.find_first_not_of("0123456789()-./ ") == std::string_view::npos &&
           figures >= least && figures <= most;
}

std::string phone_pattern(std::string_view number) {
    std::string pattern;
    for (char c : without_extension(number)) {
        if (is_figure(c)) c = '0';
        if (static_cast<unsigned char>(c) >= 0x80) c = ' '; // a space that does not break
        if (c != ' ' || (!pattern.empty() && pattern.back() != ' ')) pattern += c;
    }
    while (pattern.ends_with(' '))
        pattern.pop_back();
    // how figures are grouped differs from country to country
    return pattern.starts_with('+') ? "+" : pattern;
}

std::vector<PhoneAt> phones_in(std::string_view text) {
    constexpr std::string_view signs = "0123456789()+.- ";
    constexpr std::size_t most = 24;
    std::vector<PhoneAt> found;
    std::size_t at = 0;
    while (at < text.size()) {
        std::size_t end = std::min(text.find_first_not_of(signs, at), text.size());
        std::size_t begin = at;
        at = end + 1;
        while (begin < end && !is_figure(text[begin]) && text[begin] != '(' && text[begin] != '+')
            ++begin;
        while (end > begin && !is_figure(text[end - 1]))
            --end;
        const std::string_view piece = text.substr(begin, end - begin);
        const bool grouped = piece.find_first_of("()+.- ") != std::string_view::npos;
        if (piece.size() > most || !grouped || only(is_figure, piece).size() < 10) continue;
        if (!phone_fault(piece)) found.push_back({begin, end - begin});
    }
    return found;
}

std::optional<std::string> link_fault(std::string_view shown) {
    const std::string lower = lower_case(shown);
    if (has_tracking(shown)) return fill<messages::tracking_link>();
    if (lower.starts_with("https://www.") || lower.starts_with("http://www."))
        return fill<messages::idle_beginning>(lower.substr(0, lower.find('.') + 1));
    if (const auto tail = random_tail(shown)) return fill<messages::random_tail>(*tail);
    const std::size_t length = characters_in(shown);
    if (length > most_link) return fill<messages::long_link>(length, most_link);
    return std::nullopt;
}

bool has_street(std::string_view address) {
    return std::ranges::any_of(address_parts(plain_address(address)), is_street);
}

std::vector<std::string> address_details(std::string_view address) {
    std::vector<std::string> found;
    const std::string plain = plain_address(address);
    for (const std::string& part : address_parts(plain)) {
        if (is_box(part)) found.emplace_back("a post-office box");
        if (has_phrase(part, "hall") && has_digit(part)) found.emplace_back("a room");
        for (const std::string_view word : {"apt", "apartment", "unit", "suite", "ste", "#"})
            if (opens_with(part, word) && has_digit(part)) found.emplace_back("an apartment");
    }
    if (has_street(address)) found.emplace_back("a street");
    const std::vector<std::string> words = parted(plain, " ,");
    if (!words.empty() && words.size() > 1 && is_zip(words.back()))
        found.emplace_back("a ZIP code");
    return found;
}

}
