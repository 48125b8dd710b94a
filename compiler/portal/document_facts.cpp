#include "compiler/portal/document_facts.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/portal/markup.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <span>

namespace quoin::portal {

namespace {

constexpr std::string_view blanks = " \t\r";

template<typename Take>
void each_line(std::string_view text, const Take& take) {
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        take(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
}

std::vector<std::string_view> fields_of(std::string_view line) {
    std::vector<std::string_view> fields;
    for (line = trimmed(line, blanks); !line.empty(); line = trimmed(line, blanks)) {
        const std::size_t end = std::min(line.find_first_of(blanks), line.size());
        fields.push_back(line.substr(0, end));
        line.remove_prefix(end);
    }
    return fields;
}

// A title may hold a line that looks like a fact, but it stands before the facts: they win.
void take_fact(std::string_view key, std::string_view value, DocumentFacts& facts) {
    if (key == "Title" && facts.title.empty()) facts.title = clean_text(value, false);
    if (key == "Pages") std::from_chars(value.data(), value.data() + value.size(), facts.pages);
    if (key == "Tagged") facts.tagged = value == "yes";
    if (key == "Form") facts.form = value != "none";
    if (key == "JavaScript") facts.script = value == "yes";
    if (key == "Encrypted") {
        facts.encrypted = value.starts_with("yes");
        facts.copying_forbidden = value.find("copy:no") != std::string_view::npos;
    }
}

constexpr std::array<std::string_view, 11> font_types = {
    "CID Type 0C (OT)", "CID Type 0C",  "CID Type 0", "CID TrueType (OT)",
    "CID TrueType",     "Type 1C (OT)", "Type 1C",    "Type 1",
    "TrueType (OT)",    "TrueType",     "Type 3"};

std::string_view type_at_end(std::string_view text) {
    const auto type =
        std::ranges::find_if(font_types, [&](std::string_view one) { return text.ends_with(one); });
    return type == font_types.end() ? std::string_view{} : *type;
}

bool is_yes_or_no(std::string_view field) {
    return field == "yes" || field == "no";
}

// From the right, for a long name pushes the columns along: object and generation or `[none]`,
// three words of yes or no, the encoding, the type.
std::optional<FontFact> read_font(std::string_view line) {
    const std::vector<std::string_view> fields = fields_of(line);
    const std::size_t id = !fields.empty() && fields.back() == "[none]" ? 1 : 2;
    if (fields.size() < id + 5) return std::nullopt;
    const std::size_t flags = fields.size() - id - 3;
    if (!std::ranges::all_of(std::span(fields).subspan(flags, 3), is_yes_or_no))
        return std::nullopt;
    FontFact font;
    font.embedded = fields[flags] == "yes";
    font.unicode = fields[flags + 2] == "yes";
    font.encoding = clean_text(fields[flags - 1], false);
    const auto before = trimmed(
        line.substr(0, static_cast<std::size_t>(fields[flags - 1].data() - line.data())), blanks);
    font.type = type_at_end(before);
    font.name =
        clean_text(trimmed(before.substr(0, before.size() - font.type.size()), blanks), false);
    return font;
}

}

DocumentFacts read_facts(std::string_view pdfinfo) {
    DocumentFacts facts;
    each_line(pdfinfo, [&](std::string_view line) {
        const std::size_t colon = line.find(':');
        if (colon != std::string_view::npos)
            take_fact(line.substr(0, colon), trimmed(line.substr(colon + 1), blanks), facts);
    });
    return facts;
}

std::vector<FontFact> read_fonts(std::string_view pdffonts) {
    std::vector<FontFact> fonts;
    bool in_table = false;
    each_line(pdffonts, [&](std::string_view line) {
        if (in_table) {
            if (auto font = read_font(line)) fonts.push_back(std::move(*font));
        } else {
            in_table = line.starts_with("----");
        }
    });
    return fonts;
}

int count_images(std::string_view pdfimages) {
    int count = 0;
    each_line(pdfimages, [&](std::string_view line) {
        const auto fields = fields_of(line);
        if (fields.size() > 2 && fields[2] == "image") ++count;
    });
    return count;
}

std::string structure_text(std::string_view info) {
    std::string text;
    each_line(info, [&](std::string_view line) {
        const std::string_view inside = trimmed(line, blanks);
        if (inside.size() < 2 || inside.front() != '"') return;
        text +=
            clean_text(inside.substr(1, inside.size() - (inside.ends_with('"') ? 2 : 1)), false);
        text += '\n';
    });
    return text;
}

}
