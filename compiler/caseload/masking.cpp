#include "compiler/caseload/masking.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/utf8.hpp"

#include <algorithm>

namespace quoin::caseload {

namespace {

constexpr std::string_view ends_word = " \t\n,;:!?\"'()[]{}<>|";
constexpr std::string_view in_phone = "0123456789()+-. ";
constexpr std::size_t least_of_phone = 7, most_of_phone = 15; // figures; E.164 has 15 at most
constexpr std::size_t longest_phone = 40;                     // bytes

struct Shape { // of a run of figures and signs: `-000-000-0000`
    std::string groups;
    bool has_year = false; // a group like 2026
};

Shape shape_of(std::string_view run) {
    Shape shape;
    for (std::size_t at = 0; at < run.size();) {
        const std::size_t end = std::min(run.find_first_not_of("0123456789", at), run.size());
        const std::string_view group = run.substr(at, end - at);
        if (group.size() == 4 && (group.starts_with("19") || group.starts_with("20")))
            shape.has_year = true;
        shape.groups.append(group.size(), '0');
        at = std::min(run.find_first_of("0123456789", end), run.size());
        shape.groups += '-';
    }
    return shape;
}

// Three figures and four, at the end of seven and more: 555-0142, (360) 555-0142; or more figures
// than any date has: 3605550142, +44 20 7946 0123.
bool looks_like_phone(std::string_view run) {
    const auto figures = static_cast<std::size_t>(std::ranges::count_if(run, is_figure));
    if (figures < least_of_phone || figures > most_of_phone) return false;
    const Shape shape = shape_of(run);
    constexpr std::size_t of_whole_number = 10;
    return run.front() == '+' || ("-" + shape.groups).ends_with("-000-0000-") ||
           (figures >= of_whole_number && !shape.has_year);
}

// How much of the text from here a telephone number takes; 0: there is none.
std::size_t phone_at(std::string_view text) {
    if (!is_figure(text.front()) && text.front() != '(' && text.front() != '+') return 0;
    text = text.substr(0, longest_phone);
    std::size_t end = std::min(text.find_first_not_of(in_phone), text.size());
    while (end > 0 && !is_figure(text[end - 1]))
        --end;
    return end > 0 && looks_like_phone(text.substr(0, end)) ? end : 0;
}

// example.org/me, lin.example: a dot between letters.
bool is_link(std::string_view word) {
    for (std::size_t dot = word.find('.'); dot != word.npos; dot = word.find('.', dot + 1))
        if (dot > 0 && dot + 1 < word.size() && is_letter_or_figure(word[dot - 1]) &&
            is_ascii_letter(word[dot + 1]))
            return true;
    return word.find("//") != word.npos;
}

}

void Masking::hide_name(std::string_view name) {
    hides_names_ = true;
    const std::string small = folded(name);
    for (std::size_t at = 0; at < small.size();) {
        const std::size_t end = std::min(small.find_first_of(" -.,\u2019'", at), small.size());
        constexpr std::size_t least = 2; // an initial tells nothing
        if (end - at >= least) names_.insert(small.substr(at, end - at));
        at = end + 1;
    }
}

bool Masking::is_name(std::string_view word) const {
    const std::string small = folded(word);
    for (std::size_t at = 0; at < small.size();) {
        const std::size_t end = std::min(small.find_first_of("-.\u2019_/", at), small.size());
        if (names_.contains(std::string_view(small).substr(at, end - at))) return true;
        at = end + 1;
    }
    return false;
}

std::string Masking::masked(std::string_view text) const {
    std::string out;
    while (!text.empty()) {
        if (const std::size_t phone = phone_at(text)) {
            out += "[phone]";
            text.remove_prefix(phone);
            continue;
        }
        const std::size_t end = std::min(text.find_first_of(ends_word), text.size());
        if (end == 0) {
            out += text.front();
            text.remove_prefix(1);
            continue;
        }
        out += masked_word(text.substr(0, end));
        text.remove_prefix(end);
    }
    return out;
}

std::string_view Masking::masked_word(std::string_view word) const {
    if (word.find('@') != word.npos && word.size() > 1) return "[email]";
    if (hides_names_ && is_link(word)) return "[link]";
    return hides_names_ && is_name(word) ? "[name]" : word;
}

}
