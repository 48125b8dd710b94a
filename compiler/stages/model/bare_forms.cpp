#include "compiler/stages/model/bare_forms.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/stages/model/dates_meant.hpp"
#include "compiler/trade/schools.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <array>

namespace quoin::model {
namespace {

// Arrows, dingbats and pictures, and what chooses how one looks.
bool is_picture(char32_t code) {
    return (code >= 0x2190 && code <= 0x2BFF) || (code >= 0x1F000 && code <= 0x1FAFF) ||
           code == 0xFE0F || code == 0x200D || code == 0x20E3;
}

std::string_view last_character(std::string_view text) {
    std::size_t begin = text.size() - 1;
    while (begin > 0 && continues_character(text[begin]))
        --begin;
    return text.substr(begin);
}

// At either end
std::string_view without_pictures(std::string_view text) {
    while (!text.empty() && is_picture(first_character(text).code))
        text = trimmed(text.substr(first_character(text).length));
    while (!text.empty() && is_picture(first_character(last_character(text)).code))
        text = trimmed(text.substr(0, text.size() - last_character(text).size()));
    return text;
}

// Common practice: words that schools, degrees, grades and distinctions are known by.
constexpr std::array<std::string_view, 11> school_words{
    "college",     "university",  "school",     "institute",  "academy", "universidad",
    "polytechnic", "universität", "université", "hochschule", "école"};
constexpr std::array<std::string_view, 3> gpa_words{"gpa", "grade point average", "average"};
constexpr std::array<std::string_view, 16> degree_words{
    "bachelor", "bachelors", "master", "masters", "associate", "doctor", "diploma", "b.s.",
    "b.a.",     "m.s.",      "m.a.",   "bs",      "ba",        "ged",    "aas",     "certificate"};
constexpr std::array<std::string_view, 8> honors_words{
    "dean's list", "deans list", "president's list", "honor roll",
    "cum laude",   "honors",     "honor society",    "valedictorian"};

// `gpa 3.4`, `3.4 GPA`, `Average 1,7` without its word; but `Major GPA 3.5 / 4.00` whole
std::optional<std::string> gpa_of(std::string_view text) {
    constexpr std::string_view of = "of ";
    const std::string small = lower_case(text);
    for (const std::string_view word : gpa_words) {
        if (find_phrase(small, word) == small.npos) continue;
        const bool opens = small.starts_with(word), closes = small.ends_with(word);
        if (word == gpa_words.back() && (!opens || !has_digit(text))) continue;
        if (opens) text.remove_prefix(word.size());
        if (closes && !opens) text.remove_suffix(word.size());
        text = trimmed(text, " :=-\t");
        return std::string(opens && text.starts_with(of) ? text.substr(of.size()) : text);
    }
    return std::nullopt;
}

// `Dean's List,Fall 2024`
std::string with_spaces_behind_commas(std::string_view text) {
    std::string spaced;
    for (std::size_t i = 0; i < text.size(); ++i) {
        spaced += text[i];
        if (text[i] == ',' && i + 1 < text.size() && is_ascii_letter(text[i + 1])) spaced += ' ';
    }
    return spaced;
}

}

std::string_view unmarked(std::string_view text) {
    text = without_pictures(text);
    const std::string_view inner = trimmed(text, "*_");
    const bool around = !inner.empty() && text.front() == text.back() && inner.size() < text.size();
    return around && inner.find_first_of("*_") == inner.npos ? inner : text;
}

bool parts_columns(std::string_view text) {
    return text.find('\t') != text.npos || text.find("   ") != text.npos ||
           text.find("....") != text.npos;
}

bool reads_as_place(std::string_view text) {
    constexpr std::size_t longest = 40, state = 4; // `, WA`
    return text.size() <= longest && text.size() > state &&
           text.find(", ") == text.size() - state && is_capital_letter(text.back()) &&
           is_capital_letter(text[text.size() - 2]) && !has_digit(text) && !parts_columns(text);
}

std::optional<LabelledLine> line_by_form(std::string_view typed, trade::Holds holds,
                                         const LocalDates& local) {
    const std::string_view text = unmarked(typed);
    const auto stands = [holds](std::string_view label) {
        return trade::find_word(label)->kinds.has(holds);
    };
    if (auto dates = stands("dates") ? as_dates(text, local) : std::nullopt) {
        const bool ends = holds == trade::Holds::education && !is_span_of_dates(*dates, local);
        return LabelledLine{ends ? "graduation" : "dates", *std::move(dates)};
    }
    if (stands("place") && reads_as_place(text) && !has_any(text, school_words))
        return LabelledLine{"place", std::string(text)};
    return std::nullopt;
}

std::optional<LabelledLine> line_by_words(std::string_view typed, trade::Holds holds,
                                          const LocalDates& local) {
    if (auto line = line_by_form(typed, holds, local)) return line;
    if (holds != trade::Holds::education) return std::nullopt;
    const std::string_view text = unmarked(typed);
    const std::string value(text);
    if (auto gpa = gpa_of(text)) return LabelledLine{"gpa", *std::move(gpa)};
    if (has_any(text, honors_words))
        return LabelledLine{"honors", with_spaces_behind_commas(value)};
    if (has_any(text, school_words) || trade::is_before_college(text, {}))
        return LabelledLine{"school", value};
    if (has_any(text, degree_words)) return LabelledLine{"degree", value};
    return std::nullopt;
}

std::vector<std::string_view> split_at(std::string_view text, std::string_view sign) {
    std::vector<std::string_view> parts;
    for (const std::string_view part : pieces_of(text, sign)) {
        const std::string_view bare = trimmed(part, sign == "..." ? " \t." : " \t");
        const auto with_last = [&] {
            const char* const begin = parts.back().data();
            return std::string_view{begin,
                                    static_cast<std::size_t>(bare.data() + bare.size() - begin)};
        };
        if (sign == ", " && !parts.empty() && reads_as_place(with_last()))
            parts.back() = with_last();
        else if (!bare.empty())
            parts.push_back(bare);
    }
    return parts;
}

}
