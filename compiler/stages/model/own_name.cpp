// A family name is looked for, then the given name or its initial on either
// side of it.
#include "compiler/stages/model/own_name.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/utf8.hpp"

#include <algorithm>
#include <optional>

namespace quoin::model {
namespace {

using Range = std::pair<std::size_t, std::size_t>;

bool is_letter_byte(char c) {
    return is_ascii_letter(c) || static_cast<unsigned char>(c) >= 0x80;
}

bool ends_word(std::string_view text, std::size_t at) {
    return at >= text.size() || !is_letter_byte(text[at]);
}

struct Name {
    std::string_view given;  // the first word
    std::string_view family; // words from some other on

    std::string_view initial() const { return given.substr(0, first_character(given).length); }
};

// `O.`, `O. M.`, `OM` or `O.-M.` at `at`; its end, or `at` if there is none.
std::size_t initials_end(std::string_view text, std::size_t at) {
    std::size_t end = at;
    for (std::size_t i = at; i < text.size();) {
        const std::size_t letter = first_character(text.substr(i)).length;
        if (!is_letter_byte(text[i]) || is_small_letter(text[i])) break;
        if (i + letter < text.size() && is_letter_byte(text[i + letter]) &&
            !is_capital_letter(text[i + letter]))
            break;
        i += letter;
        const bool dotted = i < text.size() && text[i] == '.';
        if (dotted) ++i;
        end = i;
        if (dotted && i < text.size() && (text[i] == ' ' || text[i] == '-')) ++i;
    }
    return end;
}

// The end of the given name, or of initials that begin with its own, at `at`.
std::optional<std::size_t> given_end(std::string_view text, std::size_t at, const Name& name) {
    const std::string_view rest = text.substr(std::min(at, text.size()));
    if (!rest.starts_with(name.initial())) return std::nullopt;
    if (rest.starts_with(name.given) && ends_word(rest, name.given.size())) {
        const std::size_t end = at + name.given.size();
        const bool more = end < text.size() && text[end] == ' ';
        return more ? std::max(end, initials_end(text, end + 1) == end + 1
                                        ? end
                                        : initials_end(text, end + 1))
                    : end;
    }
    const std::size_t end = initials_end(text, at);
    return end > at ? std::optional(end) : std::nullopt;
}

// Brandt, O. M.
std::optional<Range> with_given_after(std::string_view text, std::size_t family, const Name& name) {
    std::size_t at = family + name.family.size();
    if (at < text.size() && text[at] == ',') ++at;
    if (at < text.size() && text[at] == ' ') ++at;
    const auto end = given_end(text, at, name);
    return end ? std::optional(Range{family, *end}) : std::nullopt;
}

// O. M. Brandt
std::optional<Range> with_given_before(std::string_view text, std::size_t family,
                                       const Name& name) {
    constexpr std::size_t longest = 40; // of what may stand between: a middle name, initials
    for (std::size_t back = std::min(family, longest); back > 1; --back) {
        const std::size_t begin = family - back;
        if (begin > 0 && !ends_word(text, begin - 1)) continue;
        const auto end = given_end(text, begin, name);
        if (end && (*end + 1 == family || *end == family)) return Range{begin, family};
    }
    return std::nullopt;
}

std::optional<Range> own_name_at(std::string_view text, std::size_t family, const Name& name) {
    const std::size_t end = family + name.family.size();
    if (!ends_word(text, end) || (family > 0 && !ends_word(text, family - 1))) return std::nullopt;
    if (const auto before = with_given_before(text, family, name)) return Range{before->first, end};
    return with_given_after(text, family, name);
}

// Each span's share of the range made strong, with places of their own where
// they have one.
void make_strong(Text& text, const Range& range) {
    std::vector<Span> spans;
    std::size_t begin = 0;
    for (const Span& span : text.spans) {
        const std::size_t size = span.text.size();
        const std::size_t from = std::clamp(range.first, begin, begin + size) - begin;
        const std::size_t to = std::clamp(range.second, begin, begin + size) - begin;
        const bool maps = span.place.length == size;
        const auto add = [&](std::size_t first, std::size_t last, bool strong) {
            if (first == last) return;
            Span part = span;
            part.text = span.text.substr(first, last - first);
            part.marks.strong = span.marks.strong || strong;
            if (maps) {
                part.place.column += static_cast<std::uint32_t>(first);
                part.place.length = static_cast<std::uint32_t>(last - first);
            }
            spans.push_back(std::move(part));
        };
        add(0, from, false);
        add(from, to, true);
        add(to, size, false);
        begin += size;
    }
    text.spans = std::move(spans);
}

void mark_in(Text& authors, std::string_view name) {
    const bool marked =
        std::ranges::any_of(authors.spans, [](const Span& span) { return span.marks.strong; });
    if (marked) return;
    for (const Range& range : own_names_in(authors.plain(), name))
        make_strong(authors, range);
}

}

std::vector<Range> own_names_in(std::string_view authors, std::string_view name) {
    std::vector<Range> found;
    const std::size_t given = name.find(' ');
    for (std::size_t at = given; at != std::string_view::npos && found.empty();
         at = name.find(' ', at + 1)) {
        const Name parted{name.substr(0, given), name.substr(at + 1)};
        if (parted.given.empty() || parted.family.empty()) continue;
        for (std::size_t family = authors.find(parted.family); family != std::string_view::npos;
             family = authors.find(parted.family, family + 1))
            if (const auto range = own_name_at(authors, family, parted)) found.push_back(*range);
    }
    return found;
}

void mark_own_name(Resume& resume) {
    const Field* name = resume.find(trade::FieldName::name);
    if (!name) return;
    const std::string own = std::get<Text>(name->value).plain();
    for (Section& section : resume.sections)
        for (Entry& entry : section.entries)
            for (Field& field : entry.fields)
                if (field.name == trade::FieldName::author)
                    mark_in(std::get<Text>(field.value), own);
}

}
