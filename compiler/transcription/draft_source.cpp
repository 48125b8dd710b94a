#include "compiler/transcription/draft_source.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/stages/model/build.hpp"
#include "compiler/trade/section_titles.hpp"
#include "compiler/trade/vocabulary.hpp"
#include "compiler/transcription/messages.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <set>

namespace quoin::transcription {

namespace {

constexpr std::size_t line_width = 96; // columns

enum class Beside { edge, sign, word }; // what stands beside a sign: a space or nothing, …

Beside beside(std::string_view text, std::size_t at) {
    if (at >= text.size() || text[at] == ' ') return Beside::edge;
    const bool word = is_letter_or_figure(text[at]) || static_cast<unsigned char>(text[at]) >= 0x80;
    return word ? Beside::word : Beside::sign;
}

// Where a mark of emphasis could open or close: not within a word, and not by itself.
bool could_mark(std::string_view text, std::size_t at) {
    const Beside before = at == 0 ? Beside::edge : beside(text, at - 1);
    const Beside after = beside(text, at + 1);
    return !(before == Beside::word && after == Beside::word) &&
           !(before == Beside::edge && after == Beside::edge);
}

// At spaces, each further line with `indent` before it.
std::string folded_lines(const std::string& text, std::string_view indent) {
    std::string result;
    std::size_t column = 0;
    for (const std::string_view word : pieces_of(text, " ")) {
        const std::size_t wide = characters_in(word);
        if (column > 0 && column + 1 + wide > line_width) {
            result.append("\n").append(indent);
            column = indent.size();
        } else if (column > 0) {
            result += ' ';
            ++column;
        }
        result += word;
        column += wide;
    }
    return result + "\n";
}

// A comment of which a line holds a title and nothing else reads as one that was typed for a title.
bool reads_as_title(std::string_view line) {
    constexpr std::string_view around = " \t#*=_:-[]<>|~\"";
    const std::string small = lower_case(trimmed(line, around));
    return small.starts_with("section") || trade::is_section_title(trimmed(line, around));
}

std::string comment(const std::string& text) {
    std::string result;
    const std::string folded = folded_lines("# " + text, "# ");
    for (std::string_view line : pieces_of(folded, "\n"))
        if (!line.empty())
            result.append(reads_as_title(line) ? "# … " : "# ").append(line.substr(2)) += '\n';
    return result;
}

bool is_plain_label(std::string_view label) {
    constexpr std::array<std::string_view, 7> plain = {"phone",   "email",      "link", "dates",
                                                       "expires", "graduation", "name"};
    return is_one_of(label, plain);
}

std::string field_lines(const DraftField& field) {
    const std::string value = is_plain_label(field.label) ? field.value : in_markup(field.value);
    return folded_lines(field.label.empty() ? value : field.label + ": " + value, "  ");
}

std::string entry_lines(const DraftEntry& entry) {
    std::string text;
    if (!entry.guesses.empty()) {
        const std::string labels = joined(entry.guesses, " and ");
        text += comment(entry.heads.empty() ? fill<messages::guessed>(labels)
                                            : fill<messages::guessed_from>(labels, entry.heads));
    }
    for (const std::string& remark : entry.remarks)
        text += comment(remark);
    for (const DraftField& field : entry.fields)
        text += field_lines(field);
    for (const DraftBullet& bullet : entry.bullets)
        text += folded_lines((bullet.level > 1 ? "-- " : "- ") + in_markup(bullet.text), "  ");
    return text;
}

// Where the title alone, or a label of the writer's own, would have it read otherwise.
bool must_say_holds(const DraftSection& section) {
    if (trade::usual_holds(section.title) != section.holds) return true;
    if (!trade::has_groups(section.holds)) return false;
    return std::ranges::any_of(section.entries, [](const DraftEntry& entry) {
        return std::ranges::any_of(entry.fields, [](const DraftField& field) {
            return field.label.empty() || trade::find_word(lower_case(field.label)) != nullptr;
        });
    });
}

std::string section_lines(const DraftSection& section) {
    std::string text = "\nsection: " + in_markup(section.title) + "\n";
    if (must_say_holds(section))
        text += "holds: " + std::string(trade::name_of(section.holds)) + "\n";
    if (section.guessed) text += comment(fill<messages::guessed_section>());
    for (const DraftEntry& entry : section.entries)
        text += (entry.further ? "" : "\n") + entry_lines(entry);
    if (!section.after.empty()) text += "\n";
    for (const std::string& remark : section.after)
        text += comment(remark);
    return text;
}

// A line and those folded into it.
std::string commented_out(std::string_view source, const std::set<std::uint32_t>& lines) {
    std::string result;
    std::uint32_t number = 0;
    bool out = false;
    for (const std::string_view line : pieces_of(source, "\n")) {
        ++number;
        const bool folds = line.starts_with(' ');
        const bool starts = lines.contains(number);
        const bool was = out;
        out = (folds && out) || (starts && !line.starts_with('#'));
        if (out && !(folds && was))
            result += comment(fill<messages::cannot_be_said>(trimmed(line)));
        else if (out)
            result += comment(std::string(trimmed(line)));
        else
            result += std::string(line) + "\n";
    }
    return result;
}

std::set<std::uint32_t> all_lines(const std::string& source) {
    std::set<std::uint32_t> lines;
    for (std::uint32_t i = 1; i <= std::ranges::count(source, '\n') + 1; ++i)
        lines.insert(i);
    return lines;
}

// A heading has a name, at least one that is to come.
std::string with_name(std::string source) {
    std::size_t at = 0;
    for (const std::string_view line : pieces_of(source, "\n")) {
        if (line.starts_with("name:")) return source;
        if (line.starts_with("section:")) break;
        at += line.size() + 1;
    }
    return source.insert(std::min(at, source.size()),
                         fmt::format("name: {}\n", trade::name_to_come));
}

// None if it can be read.
std::optional<std::set<std::uint32_t>> lines_at_fault(const std::string& source,
                                                      const std::string& words) {
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.add("draft", source, diagnostics);
    if (file && model::build_resume(sources, *file, words, diagnostics)) return std::nullopt;
    std::set<std::uint32_t> lines;
    for (const Diagnostic& one : diagnostics.all())
        if (one.severity == Severity::error && one.place.line > 0) lines.insert(one.place.line);
    return lines;
}

}

std::string in_markup(std::string_view text) {
    std::string result;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        const bool mark = (c == '*' || c == '_' || c == '/') && could_mark(text, i);
        if (mark || c == '\\' || c == '<' || c == '{') result += '\\';
        result += c;
    }
    return result;
}

std::string source_of(const Draft& draft) {
    std::string text;
    for (const std::string& remark : draft.remarks)
        text += comment(remark);
    text += entry_lines(draft.heading);
    for (const DraftSection& section : draft.sections)
        text += section_lines(section);
    return text;
}

std::string source_that_reads(std::string source, const std::string& words) {
    constexpr int most_rounds = 12;
    for (int round = 0; round < most_rounds; ++round) {
        const auto faults = lines_at_fault(source, words);
        if (!faults) return source;
        source = with_name(commented_out(source, *faults));
    }
    return with_name(commented_out(source, all_lines(source)));
}

}
