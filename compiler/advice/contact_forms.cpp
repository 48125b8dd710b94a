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

constexpr std::size_t most_local_part = 64, most_domain = 255, most_address = 254; // octets
constexpr std::size_t most_link = 40;                                              // characters

// Numbers that mean something else to some readers.
constexpr std::array<std::string_view, 5> second_meanings{"420", "69", "666", "1337", "8008"};

struct Letter {
    char32_t code;
    std::string_view plain;
};
// Letters whose mark is no accent that can be taken off.
constexpr std::array<Letter, 11> marked_letters{{{U'ø', "o"},
                                                 {U'Ø', "o"},
                                                 {U'ł', "l"},
                                                 {U'Ł', "l"},
                                                 {U'đ', "d"},
                                                 {U'Đ', "d"},
                                                 {U'þ', "th"},
                                                 {U'Þ', "th"},
                                                 {U'ß', "ss"},
                                                 {U'æ', "ae"},
                                                 {U'Æ', "ae"}}};

// "Brid O'Halyard" as "brid", "ohalyard"; "Marisol Núñez-Quay" as "marisol", "nunez", "quay".
std::vector<std::string> name_parts(std::string_view name) {
    std::string plain = plain_letters(name);
    std::erase(plain, '\'');
    return parted(plain, " -.,\t()");
}

// Whether steps lead through all of `piece`; `step` marks the places that a name reaches from one
// where its first letter stands.
bool leads_through(std::string_view piece, const std::vector<std::string>& names, auto&& step) {
    if (piece.size() > most_local_part) return false;
    std::vector<bool> reached(piece.size() + 1);
    reached[0] = true;
    for (std::size_t at = 0; at < piece.size(); ++at)
        for (const std::string& name : names)
            if (reached[at] && piece[at] == name.front()) step(at, name, reached);
    return reached[piece.size()];
}

// Whether all of `piece` is made of names and initials.
bool is_made_of_names(std::string_view piece, const std::vector<std::string>& names) {
    return piece.size() <= 1 ||
           leads_through(piece, names, [&](std::size_t at, const auto& name, auto& reached) {
               reached[at + 1] = true;
               if (piece.substr(at).starts_with(name)) reached[at + name.size()] = true;
           });
}

// Whether all of `piece` is made of letters of names in their order, each name from its first
// letter on: "hdez" of Hernández, "mj" of María José.
bool is_short_for_names(std::string_view piece, const std::vector<std::string>& names) {
    return leads_through(piece, names, [&](std::size_t end, const auto& name, auto& reached) {
        for (std::size_t i = 0; i < name.size() && end < piece.size(); ++i)
            if (name[i] == piece[end]) reached[++end] = true;
    });
}

// Some of the name is in it: three letters of a part's beginning, or it is too short to tell.
bool may_be_of_name(std::string_view letters, const std::vector<std::string>& names) {
    constexpr std::size_t telling = 3;
    if (letters.size() <= telling || is_short_for_names(letters, names)) return true;
    return std::ranges::any_of(names, [&](const std::string& name) {
        return letters.find(name.substr(0, telling)) != std::string_view::npos;
    });
}

// `hello@ottolinebrandt.example`: the name stands behind the @.
bool is_own_domain(std::string_view domain, const std::vector<std::string>& names) {
    constexpr std::size_t telling = 4;
    const std::string lower = lower_case(domain.substr(0, domain.rfind('.')));
    return std::ranges::any_of(names, [&](const std::string& name) {
        return name.size() >= telling && lower.find(name) != std::string::npos;
    });
}

std::vector<std::string> figure_runs(std::string text) {
    std::ranges::replace_if(
        text, [](char c) { return !is_figure(c); }, ' ');
    return parted(text, " ");
}

std::optional<std::string> figures_fault(std::string_view local, bool issued) {
    constexpr int first_birth = 1930, last_birth = 2012;
    constexpr std::size_t long_run = 5;
    for (const std::string& run : figure_runs(std::string(local))) {
        int number = 0;
        std::from_chars(run.data(), run.data() + run.size(), number);
        if (run.size() == 4 && number >= first_birth && number <= last_birth && !issued)
            return fill<messages::year_of_birth>(run);
        if (run.size() >= long_run && !issued) return fill<messages::long_number>(run);
        if (is_one_of(run, second_meanings) && !issued) return fill<messages::second_meaning>(run);
    }
    return std::nullopt;
}

// `sk8r`: a figure between two letters stands for letters.
bool has_figure_for_letters(std::string_view piece) {
    for (std::size_t at = 1; at + 1 < piece.size(); ++at)
        if (is_figure(piece[at]) && is_ascii_letter(piece[at - 1]) &&
            is_ascii_letter(piece[at + 1]))
            return true;
    return false;
}

std::optional<std::string> nickname_in(std::string_view letters,
                                       const std::vector<std::string>& names) {
    if (is_made_of_names(letters, names)) return std::nullopt;
    for (const std::string_view nickname : listed(List::nicknames))
        if (letters.find(nickname) != std::string_view::npos && !is_one_of(nickname, names))
            return std::string(nickname);
    return std::nullopt;
}

std::string only(bool (*wanted)(char), std::string_view text) {
    std::string kept;
    std::ranges::copy_if(text, std::back_inserter(kept), wanted);
    return kept;
}

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

std::string plain_letters(std::string_view text) {
    std::string result;
    while (!text.empty()) {
        const char32_t code = take_character(text).code;
        const auto marked = std::ranges::find(marked_letters, code, &Letter::code);
        if (marked != marked_letters.end()) {
            result += marked->plain;
            continue;
        }
        std::array<utf8proc_int32_t, 8> parts{};
        const auto count =
            utf8proc_decompose_char(static_cast<utf8proc_int32_t>(code == U'’' ? U'\'' : code),
                                    parts.data(), parts.size(), UTF8PROC_DECOMPOSE, nullptr);
        if (count > 0 && parts[0] > 0 && parts[0] < 0x80) result += static_cast<char>(parts[0]);
    }
    return lower_case(result);
}

bool is_addr_spec(std::string_view address) {
    tao::pegtl::memory_input in(address.data(), address.data() + address.size(), "");
    if (!tao::pegtl::parse<grammar::contact::addr_spec>(in)) return false;
    const std::size_t at = address.rfind('@');
    return at <= most_local_part && address.size() - at - 1 <= most_domain &&
           address.size() <= most_address;
}

namespace {

bool is_of_several(std::string_view piece) { // holt.family, theholtfamily
    return is_one_of(piece, List::shared_addresses) || piece.ends_with("family") ||
           piece.ends_with("household");
}

}

std::optional<std::string> unprofessional_part(std::string_view address, std::string_view name,
                                               bool issued) {
    std::string local = lower_case(address.substr(0, address.rfind('@')));
    local = local.substr(0, local.find('+'));
    const std::vector<std::string> names = name_parts(name);
    if (names.empty()) return std::nullopt;
    for (const std::string& piece : parted(local, "._-0123456789"))
        if (is_of_several(piece) && !is_made_of_names(piece, names))
            return fill<messages::shared_address>(piece);
    for (const std::string& piece : parted(local, "._-"))
        if (const auto nickname = nickname_in(only(is_ascii_letter, piece), names))
            return fill<messages::nickname>(*nickname);
    constexpr std::array<std::string_view, 6> little{"the", "of", "my", "is", "im", "your"};
    for (const std::string& piece : parted(local, "._-")) // willa_the_killa
        if (!issued && is_one_of(piece, little) && !is_made_of_names(piece, names))
            return fill<messages::nickname>(piece);
    if (const auto fault = figures_fault(local, issued)) return fault;
    if (issued) return std::nullopt;
    for (const std::string& piece : parted(local, "._-"))
        if (has_figure_for_letters(piece) && !is_made_of_names(only(is_ascii_letter, piece), names))
            return fill<messages::figures_for_letters>(piece);
    const bool own = may_be_of_name(only(is_ascii_letter, local), names) ||
                     is_own_domain(address.substr(address.rfind('@') + 1), names);
    if (!own) return fill<messages::nothing_of_name>(local);
    return std::nullopt;
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
