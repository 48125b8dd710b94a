// Signs that forms mangle are written in ASCII; letters keep their accents.
#include "compiler/stages/plain/plain.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/numbers.hpp"
#include "compiler/base/utf8.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <vector>

namespace quoin::plain {

namespace {

struct Substitute {
    char32_t sign = 0;
    std::string_view ascii;
};

constexpr std::array<Substitute, 22> substitutes = {{
    {U'\u00A0', " "},   // no-break space
    {U'\u00AD', ""},    // soft hyphen
    {U'\u00B7', "|"},   // middle dot
    {U'\u2002', " "},   // en space
    {U'\u2003', " "},   // em space
    {U'\u2009', " "},   // thin space
    {U'\u200B', ""},    // zero width space
    {U'\u2010', "-"},   // hyphen
    {U'\u2011', "-"},   // no-break hyphen
    {U'\u2012', "-"},   // figure dash
    {U'\u2013', "-"},   // en dash
    {U'\u2014', "-"},   // em dash
    {U'\u2018', "'"},   // quotation marks
    {U'\u2019', "'"},   //
    {U'\u201C', "\""},  //
    {U'\u201D', "\""},  //
    {U'\u2022', "-"},   // bullet
    {U'\u2026', "..."}, // ellipsis
    {U'\u202F', " "},   // narrow no-break space
    {U'\u2032', "'"},   // prime
    {U'\u2033', "\""},  // double prime
    {U'\u2212', "-"},   // minus
}};

std::string in_ascii_signs(std::string_view text) {
    std::string result;
    while (!text.empty()) {
        const Character character = take_character(text);
        const auto* found = std::ranges::find(substitutes, character.code, &Substitute::sign);
        result += found == substitutes.end() ? character.bytes : found->ascii;
    }
    return result;
}

std::size_t list_depth(const composition::Composition& composition, std::uint32_t element) {
    std::size_t depth = 0;
    for (; element != 0; element = composition.elements[element].parent)
        if (composition.elements[element].type == composition::StructureType::l) ++depth;
    return depth;
}

bool shows_address(std::string_view words, std::string_view uri) {
    for (const std::string_view scheme : {"https://", "http://", "mailto:", "tel:"})
        if (uri.starts_with(scheme)) uri.remove_prefix(scheme.size());
    if (uri.ends_with('/')) uri.remove_suffix(1);
    return words.find(uri) != std::string_view::npos;
}

// A telephone number stands there in the writer's own form.
std::string address_after(const composition::Element& element, std::string_view words) {
    if (element.type != composition::StructureType::link || element.uri.starts_with("tel:") ||
        shows_address(words, element.uri))
        return {};
    return " (" + element.uri + ")";
}

std::string line_of(const composition::Composition& composition,
                    const composition::Paragraph& paragraph) {
    std::string line;
    for (std::size_t run = paragraph.label_runs; run < paragraph.runs.size();) {
        const std::uint32_t element = paragraph.runs[run].element;
        std::string words;
        for (; run < paragraph.runs.size() && paragraph.runs[run].element == element; ++run)
            words += run == paragraph.fill_run ? " · " : paragraph.runs[run].text;
        line += in_ascii_signs(words) + address_after(composition.elements[element], words);
    }
    return line;
}

bool is_parted(const composition::Paragraph& paragraph, const composition::Paragraph& before) {
    return paragraph.gap == theme::GapName::section || paragraph.gap == theme::GapName::entry ||
           (paragraph.gap == theme::GapName::heading && before.style != theme::StyleName::section);
}

// Before an item of a list: its number, or a hyphen for whatever sign the theme has; before what
// more there is of one, nothing.
std::string sign_of(const composition::Paragraph& paragraph) {
    if (paragraph.label_runs == 0) return {};
    const std::string& label = paragraph.runs.front().text;
    return is_figure(label.front()) ? label : "- ";
}

using Paragraphs = std::vector<const composition::Paragraph*>;

// What stands between two blank lines, under the first title: the entries of the page in order.
std::vector<Paragraphs> entries_of(const composition::Composition& composition) {
    std::vector<Paragraphs> entries;
    bool titled = false;
    const composition::Paragraph* before = nullptr;
    for (const composition::Paragraph& paragraph : composition.paragraphs) {
        const bool title = paragraph.style == theme::StyleName::section;
        titled = titled || title;
        const bool after_title = before && before->style == theme::StyleName::section;
        if (titled && !title) {
            if (entries.empty() || after_title || is_parted(paragraph, *before))
                entries.emplace_back();
            entries.back().push_back(&paragraph);
        }
        before = &paragraph;
    }
    return entries;
}

std::string text_of(const composition::Composition& composition, const Paragraphs& paragraphs) {
    std::string text;
    const composition::Paragraph* before = nullptr;
    for (const composition::Paragraph* paragraph : paragraphs) {
        if (before && is_parted(*paragraph, *before)) text += '\n';
        if (const std::size_t depth = list_depth(composition, paragraph->element); depth > 0)
            text += std::string(2 * (depth - 1), ' ') + sign_of(*paragraph);
        text += line_of(composition, *paragraph) + '\n';
        before = paragraph;
    }
    return text;
}

}

std::string plain_text(const composition::Composition& composition) {
    Paragraphs all;
    for (const composition::Paragraph& paragraph : composition.paragraphs)
        all.push_back(&paragraph);
    return text_of(composition, all);
}

std::optional<std::string> entry_text(const composition::Composition& composition,
                                      const std::string& which) {
    const auto entries = entries_of(composition);
    if (const auto number = number_from<std::size_t>(which)) {
        if (*number < 1 || *number > entries.size()) return std::nullopt;
        return text_of(composition, entries[*number - 1]);
    }
    for (const Paragraphs& entry : entries) {
        std::string text = text_of(composition, entry);
        if (lower_case(text).find(lower_case(which)) != std::string::npos) return text;
    }
    return std::nullopt;
}

}
