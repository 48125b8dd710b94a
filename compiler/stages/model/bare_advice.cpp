#include "compiler/stages/model/bare_advice.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/stages/model/contact_links.hpp"
#include "compiler/stages/model/dates.hpp"
#include "compiler/stages/model/messages.hpp"
#include "compiler/stages/model/settle_blocks.hpp"
#include "compiler/trade/guessed_labels.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <utility>
#include <vector>

namespace quoin::model {
namespace {

struct Advice {
    std::string text;
    Edits mend;
    std::optional<std::string_view> label = {}; // that the line plainly wants
    std::size_t value = 0;                      // where in the line that label's value begins
};

// `**Ellery State College**`, as other markup has it, without the signs around it: what the writer
// means by them, a theme sets.
std::string_view unmarked(std::string_view text) {
    const std::string_view inner = trimmed(text, "*_");
    const bool around = !inner.empty() && text.front() == text.back() && inner.size() < text.size();
    return around && inner.find_first_of("*_") == inner.npos ? inner : text;
}

struct LabelledLine {
    std::string_view label;
    std::string text;

    std::string whole() const { return std::string(label) + ": " + text; }
};

Place line_start(const syntax::Node& node) {
    return {node.place.file, node.place.line, 1, 0};
}

Advice advise_label(const syntax::Node& node, std::string_view label) {
    const std::string text = node.value.joined(), value(unmarked(text));
    const Edit edit = value == text || node.value.slices.size() > 1
                          ? Edit{line_start(node), std::string(label) + ": "}
                          : Edit{node.value.place(), std::string(label) + ": " + value};
    return {fill<messages::bare_field>(in_quotes(text), label, value), {edit}, label};
}

// One line that says several things. The mend is left to the writer where a label is a guess.
Advice advise_lines(const syntax::Node& node, const std::vector<LabelledLine>& lines, bool sure) {
    const auto quoted = [](const LabelledLine& line) { return '\'' + line.whole() + '\''; };
    std::string all;
    for (const LabelledLine& line : lines)
        all += (all.empty() ? "" : "\n") + line.whole();
    return {fill<messages::bare_fields>(in_quotes(node.value.joined()),
                                        joined(lines, " and ", all_of_them, quoted)),
            sure && node.value.slices.size() == 1 ? Edits{{node.value.place(), all}} : Edits{}};
}

// `Role Lab assistant`, `role; Lab assistant`: a label whose colon was forgotten.
std::optional<Advice> advise_colon(const syntax::Node& node, const auto& fits) {
    const syntax::Slice& line = node.value.slices.front();
    const std::size_t end = std::min(line.text.find(' '), line.text.size());
    const std::string_view first = std::string_view{line.text}.substr(0, end);
    const std::string_view label = trimmed(first, ";,.");
    const trade::Word* word = trade::find_word(lower_case(label));
    const bool alone = end == line.text.size(); // its value is folded below
    if (!word || !fits(*word) || (alone && node.value.slices.size() == 1)) return std::nullopt;
    const Place after{line.place.file, line.place.line,
                      line.place.column + static_cast<std::uint32_t>(label.size()),
                      static_cast<std::uint32_t>(first.size() - label.size())};
    // `Name - Ottoline Brandt`
    const std::size_t value = line.text.find_first_not_of("- ", end);
    const bool dash = value != line.text.npos && line.text.find('-', end) < value;
    Place between = after;
    if (dash) between.length = static_cast<std::uint32_t>(value - label.size());
    return Advice{fill<messages::colon_forgotten>(label, word->label),
                  {{between, dash ? ": " : ":"}},
                  word->label,
                  std::min(value, line.text.size())};
}

bool reads_as_dates(const std::string& text) {
    return std::holds_alternative<DateRange>(read_dates(text));
}

// `Port Ellery, WA`
bool reads_as_place(std::string_view text) {
    constexpr std::size_t longest = 40, state = 4; // `, WA`
    return text.size() <= longest && text.size() > state &&
           text.find(", ") == text.size() - state && is_capital_letter(text.back()) &&
           is_capital_letter(text[text.size() - 2]) && !has_digit(text);
}

bool has_any(std::string_view text, const auto& words) {
    const std::string small = lower_case(text);
    return std::ranges::any_of(words,
                               [&](std::string_view word) { return has_phrase(small, word); });
}

// Common practice: words that schools, degrees and grades are known by.
constexpr std::array<std::string_view, 7> school_words{
    "college", "university", "school", "institute", "academy", "universidad", "polytechnic"};
constexpr std::array<std::string_view, 16> degree_words{
    "bachelor", "bachelors", "master", "masters", "associate", "doctor", "diploma", "b.s.",
    "b.a.",     "m.s.",      "m.a.",   "bs",      "ba",        "ged",    "aas",     "certificate"};

// What the text of a line of such an entry is by its form.
std::optional<std::string_view> label_by_form(const std::string& typed, trade::Holds holds) {
    const std::string text(unmarked(typed));
    if (reads_as_dates(text)) return holds == trade::Holds::education ? "graduation" : "dates";
    const trade::Word* place = trade::find_word("place");
    if (reads_as_place(text) && place->kinds.has(holds) && !has_any(text, school_words))
        return "place";
    return std::nullopt;
}

// The same by its words too.
std::optional<std::string_view> label_by_words(const std::string& text, trade::Holds holds) {
    if (const auto label = label_by_form(text, holds)) return label;
    if (holds != trade::Holds::education) return std::nullopt;
    if (has_any(text, std::array<std::string_view, 1>{"gpa"})) return "gpa";
    if (has_any(text, school_words)) return "school";
    if (has_any(text, degree_words)) return "degree";
    return std::nullopt;
}

// The labels that such an entry is called by and that it does not have yet.
std::vector<std::string_view> names_wanted(const BarePlace& place) {
    std::vector<std::string_view> wanted;
    for (const trade::Word& word : trade::vocabulary())
        if (word.kinds.has(place.holds) && trade::names_entry(word) && !place.stands(word.label))
            wanted.push_back(word.label);
    return wanted;
}

std::vector<std::string_view> split_at(std::string_view text, std::string_view sign) {
    std::vector<std::string_view> parts;
    for (const std::string_view part : pieces_of(text, sign)) {
        const bool state =
            sign == ", " && !parts.empty() &&
            reads_as_place(std::string_view{
                parts.back().data(), static_cast<std::size_t>(part.end() - parts.back().begin())});
        if (state)
            parts.back() = {parts.back().data(),
                            static_cast<std::size_t>(part.end() - parts.back().begin())};
        else if (!trimmed(part).empty())
            parts.push_back(trimmed(part));
    }
    return parts;
}

// A name and its place alone are an employer's: `Harrow Bay Boatworks, Anacortes, WA`.
std::string_view named_beside(const std::vector<std::string_view>& parts,
                              const std::vector<std::string_view>& wanted) {
    const auto employer = std::ranges::find(wanted, "employer");
    const bool placed = parts.size() == 2 && reads_as_place(parts.back());
    return placed && employer != wanted.end() ? *employer : wanted.front();
}

// `Deckhand, Ferry Company, Jun 2025 - Aug 2025`, which has dates at its end.
std::optional<Advice> advise_whole_entry(const syntax::Node& node, const BarePlace& place) {
    constexpr std::array<std::string_view, 7> signs{" | ", "\t",       " \u2022 ", " \u2014 ",
                                                    ", ",  " \u2013 ", " - "};
    constexpr std::size_t most_parts = 5;
    const std::string text = node.value.joined();
    for (const std::string_view sign : signs) {
        const auto parts = split_at(text, sign);
        if (parts.size() < 2 || parts.size() > most_parts) continue;
        auto wanted = names_wanted(place);
        std::vector<LabelledLine> lines;
        bool sure = false; // of one at least
        for (const std::string_view part : parts) {
            auto label = label_by_words(std::string(part), place.holds);
            sure = sure || label_by_form(std::string(part), place.holds);
            if (!label && !wanted.empty()) label = named_beside(parts, wanted);
            if (!label && place.holds == trade::Holds::experience) label = "note";
            if (!label) break;
            std::erase(wanted, *label);
            lines.push_back({*label, std::string(unmarked(part))});
        }
        if (sure && lines.size() == parts.size()) return advise_lines(node, lines, false);
    }
    return std::nullopt;
}

// `Benthic Ecology, GIS, Statistics` in education
std::optional<Advice> advise_courses(const syntax::Node& node, trade::Holds holds) {
    const std::string text = node.value.joined();
    const std::string_view sign = text.find(';') == std::string::npos ? ", " : "; ";
    const auto parts = pieces_of(text, sign);
    if (holds != trade::Holds::education || parts.size() < 3 || node.value.slices.size() > 1)
        return std::nullopt;
    std::string courses;
    for (const std::string_view part : parts)
        courses.append(courses.empty() ? "" : "; ").append(trimmed(part));
    return Advice{fill<messages::bare_field>(in_quotes(text), "courses", courses),
                  {{node.value.place(), "courses: " + courses}}};
}

// Above bullets an entry has lines that name it; a sentence is what was done.
bool reads_as_bullet(const std::string& text) {
    constexpr std::size_t most_words_of_a_name = 6;
    return text.back() == '.' || word_count(text) > most_words_of_a_name;
}

// What no résumé says, wherever it stands: `References available upon request`,
// `![me](headshot.jpg)`, as other markup has pictures.
std::optional<Advice> advise_to_take_out(const std::string& text) {
    constexpr std::array<std::string_view, 3> offers{
        "available upon request", "available on request", "references available"};
    if (has_any(text, offers))
        return Advice{fill<messages::references_offered>(in_quotes(text)), {}};
    if (!text.starts_with("![")) return std::nullopt;
    return Advice{fill<messages::has_no_place>(in_quotes(text), trade::has_no_place("photo")), {}};
}

// `Tools, multimeter, fish tape`, where a comma stands for the colon of the first word.
std::string labelled_group(const std::string& text) {
    const std::size_t comma = std::min(text.find(", "), text.find("; "));
    const bool label = comma != text.npos && is_capital_letter(text.front()) &&
                       text.find(' ') > comma && is_small_letter(text[comma + 2]);
    return label ? text.substr(0, comma) + ": " + text.substr(comma + 2) : "Label: " + text;
}

Advice advice_in_entry(const syntax::Node& node, const BarePlace& place) {
    const std::string text = node.value.joined();
    if (auto advice = advise_to_take_out(text)) return *std::move(advice);
    const auto fits = [&](const trade::Word& word) { return word.kinds.has(place.holds); };
    if (auto advice = advise_colon(node, fits)) return *std::move(advice);
    if (trade::has_groups(place.holds))
        return {fill<messages::bare_group>(in_quotes(text), labelled_group(text)), {}};
    if (goes_on(node, place.above))
        return {fill<messages::fold_not_indented>(in_quotes(text)), {{line_start(node), "  "}}};
    if (const auto label = label_by_form(text, place.holds); label && !place.stands(*label))
        return advise_label(node, *label);
    if (auto advice = advise_whole_entry(node, place)) return *std::move(advice);
    if (const auto label = label_by_words(text, place.holds); label && !place.stands(*label))
        return advise_label(node, *label);
    if (auto advice = advise_courses(node, place.holds)) return *std::move(advice);
    const auto wanted = names_wanted(place);
    if (wanted.empty() || reads_as_bullet(text))
        return {fill<messages::bare_bullet>(in_quotes(text), text), {{line_start(node), "- "}}};
    return {fill<messages::bare_in_entry>(in_quotes(text), wanted.front(), text, text),
            {},
            wanted.front()};
}

bool is_address_of_web(std::string_view text) {
    return text.find(' ') == std::string::npos && text.find('.') != std::string::npos;
}

// `Port Ellery WA`, its comma forgotten
bool reads_as_town(std::string_view text) {
    constexpr std::size_t most_words = 4;
    const std::size_t space = text.rfind(' ');
    return space != text.npos && text.size() == space + 3 && is_capital_letter(text[space + 1]) &&
           is_capital_letter(text[space + 2]) && word_count(text) <= most_words && !has_digit(text);
}

// And no sentence above it, as `Here is a page that you can use!`.
bool may_be_name(std::string_view text) {
    constexpr std::size_t most_words = 6;
    return !has_digit(text) && text.find_first_of("!?:;") == text.npos &&
           word_count(text) <= most_words;
}

// What a line of the heading surely is.
std::optional<std::string_view> contact_label(const std::string& text, bool has_name) {
    constexpr std::size_t longest_address = 60;
    if (email_uri(text)) return "email";
    if (phone_uri(text)) return "phone";
    if (is_address_of_web(text)) return "link";
    if (text.find(", ") != std::string::npos && text.size() < longest_address) return "address";
    if (has_name && reads_as_town(text)) return "address";
    if (!has_name && may_be_name(text)) return "name";
    return std::nullopt;
}

// `(360) 555-0142 | ottoline@ellerystate.example`
std::optional<Advice> advise_contacts(const syntax::Node& node) {
    constexpr std::array<std::string_view, 7> signs{"|",   "\u2022", "\u00B7", ";",
                                                    " / ", "\t",     " - "};
    const std::string text = node.value.joined();
    for (const std::string_view sign : signs) {
        std::vector<LabelledLine> lines;
        const auto parts = split_at(text, sign);
        for (const std::string_view part : parts)
            if (const auto label = contact_label(std::string(part), true))
                lines.push_back({*label, std::string(part)});
        if (parts.size() > 1 && lines.size() == parts.size())
            return advise_lines(node, lines, true);
    }
    return std::nullopt;
}

// `make it 1 page please`
std::optional<Advice> advise_pages(const syntax::Node& node) {
    constexpr std::size_t most_words = 8;
    const std::string text = lower_case(node.value.joined());
    if (!has_any(text, std::array<std::string_view, 2>{"page", "pages"})) return std::nullopt;
    if (word_count(text) > most_words || node.value.slices.size() > 1) return std::nullopt;
    const bool one = has_any(text, std::array<std::string_view, 2>{"1", "one"}),
               two = has_any(text, std::array<std::string_view, 2>{"2", "two"});
    if (one == two) return std::nullopt;
    const std::string_view count = one ? "1" : "2";
    return Advice{fill<messages::pages_wished>(in_quotes(node.value.joined()), count),
                  {{node.value.place(), "pages: " + std::string(count)}}};
}

// A sentence or two that says who one is, longer than any headline.
std::optional<Advice> advise_summary(const syntax::Node& node) {
    constexpr std::size_t least_words = 12;
    const std::string text = node.value.joined();
    if (word_count(text) < least_words) return std::nullopt;
    return Advice{fill<messages::bare_prose>(in_quotes(text)), {}};
}

Advice advice_in_heading(const syntax::Node& node, bool has_name) {
    const std::string text = node.value.joined();
    if (auto advice = advise_to_take_out(text)) return *std::move(advice);
    const auto fits = [](const trade::Word& word) {
        return word.heading || word.label == "section";
    };
    if (auto advice = advise_colon(node, fits)) return *std::move(advice);
    if (const auto label = contact_label(text, has_name)) return advise_label(node, *label);
    if (auto advice = advise_contacts(node)) return *std::move(advice);
    if (auto advice = advise_pages(node)) return *std::move(advice);
    if (auto advice = advise_summary(node)) return *std::move(advice);
    return {fill<messages::bare_in_heading>(in_quotes(text), text), {}};
}

void report(const syntax::Node& node, const Advice& advice, Diagnostics& diagnostics) {
    diagnostics.error(node.value.place(), advice.text, advice.mend);
}

void take_off_front(syntax::Slice& slice, std::size_t count) {
    slice.text.erase(0, count);
    slice.place.column += static_cast<std::uint32_t>(count);
    slice.place.length -= static_cast<std::uint32_t>(count);
}

}

std::optional<std::string_view> report_bare_line(const syntax::Node& node, const BarePlace& place,
                                                 Diagnostics& diagnostics) {
    const Advice advice = advice_in_entry(node, place);
    report(node, advice, diagnostics);
    return advice.label;
}

std::optional<syntax::Node> report_bare_line_in_heading(const syntax::Node& node, bool has_name,
                                                        Diagnostics& diagnostics) {
    const Advice advice = advice_in_heading(node, has_name);
    report(node, advice, diagnostics);
    if (!advice.label) return std::nullopt;
    syntax::Node meant = node;
    meant.kind = syntax::Node::Kind::field;
    meant.label = {std::string(*advice.label), node.value.place()};
    auto& slices = meant.value.slices;
    take_off_front(slices.front(), advice.value);
    if (slices.front().text.empty() && slices.size() > 1) slices.erase(slices.begin());
    for (syntax::Slice& slice : meant.value.slices)
        slice.text = std::string(unmarked(slice.text));
    return meant;
}

}
