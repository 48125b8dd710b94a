// Addresses of mail: their form, and what a reader would smile at in one.
#include "compiler/advice/contact_forms.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/base/utf8.hpp"
#include "grammar/contact.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <charconv>

namespace quoin::advice {

namespace {

constexpr std::size_t most_local_part = 64, most_domain = 255, most_address = 254; // octets

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

constexpr std::size_t telling_letters = 3;

// Three letters of a name's beginning are in it.
bool has_beginning(std::string_view letters, const std::vector<std::string>& names) {
    return std::ranges::any_of(names, [&](const std::string& name) {
        return letters.find(name.substr(0, telling_letters)) != std::string_view::npos;
    });
}

// Some of the name is in it, or it is too short to tell.
bool may_be_of_name(std::string_view letters, const std::vector<std::string>& names) {
    return letters.size() <= telling_letters || is_short_for_names(letters, names) ||
           has_beginning(letters, names);
}

// `turbobrody98`: what is left of a piece that has a whole name in it, and figures.
std::string word_beside_name(std::string_view local, const std::vector<std::string>& names) {
    constexpr std::size_t shortest = 4;
    constexpr std::array<std::string_view, 6> short_ones{"big", "lil", "mad", "bad", "hot", "fun"};
    if (!has_digit(local)) return {};
    for (const std::string& piece : parted(local, "._-0123456789"))
        for (const std::string& name : names) {
            const std::size_t at = piece.find(name);
            if (name.size() < shortest || at == piece.npos) continue;
            std::string rest = piece;
            rest.erase(at, name.size());
            const bool telling = rest.size() >= shortest || is_one_of(rest, short_ones);
            if (telling && !is_made_of_names(rest, names) && !is_short_for_names(rest, names))
                return rest;
        }
    return {};
}

// `diesel`, of `big-diesel-otto99`: two words beside what may be short for a name, and figures, and
// no name in full.
std::string words_beside_name(std::string_view local, const std::vector<std::string>& names) {
    constexpr std::size_t shortest = 3, whole = 4;
    if (!has_digit(local)) return {};
    const auto has_name = [&](std::string_view piece) {
        return std::ranges::any_of(names, [&](const std::string& name) {
            return name.size() >= whole && piece.find(name) != piece.npos;
        });
    };
    std::vector<std::string> others = parted(local, "._-0123456789");
    if (std::ranges::any_of(others, has_name)) return {};
    std::erase_if(others, [&](const std::string& piece) {
        return piece.size() < shortest || is_short_for_names(piece, names) ||
               has_beginning(piece, names);
    });
    return others.size() > 1 ? *std::ranges::max_element(others, {}, &std::string::size) : "";
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

}

std::string only(bool (*wanted)(char), std::string_view text) {
    std::string kept;
    std::ranges::copy_if(text, std::back_inserter(kept), wanted);
    return kept;
}

std::string plain_letters(std::string_view text) {
    if (all_ascii(text)) return lower_case(text);
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
    if (const std::string more = word_beside_name(local, names); !more.empty())
        return fill<messages::nickname>(more);
    if (const std::string more = words_beside_name(local, names); !more.empty())
        return fill<messages::nickname>(more);
    const bool own = may_be_of_name(only(is_ascii_letter, local), names) ||
                     is_own_domain(address.substr(address.rfind('@') + 1), names);
    if (!own) return fill<messages::nothing_of_name>(local);
    return std::nullopt;
}

}
