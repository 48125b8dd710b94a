#include "compiler/stages/model/bare_advice.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/stages/model/contact_links.hpp"
#include "compiler/stages/model/lines_to_go.hpp"
#include "compiler/stages/model/messages.hpp"
#include "compiler/stages/model/settle_blocks.hpp"
#include "compiler/stages/model/several_lines.hpp"
#include "compiler/stages/syntax/line_words.hpp"
#include "compiler/trade/guessed_labels.hpp"
#include "compiler/trade/section_titles.hpp"
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
    std::vector<std::string_view> labels = {}; // that the line plainly wants
    std::size_t value = 0;                     // where in the line the value of one begins
};

Place line_start(const syntax::Node& node) {
    return {node.place.file, node.place.line, 1, 0};
}

// From the line's start to the end of its text
Place up_to_end(const syntax::Node& node) {
    const Place text = node.value.place();
    return {text.file, text.line, 1, text.column + text.length - 1};
}

Advice advise_label(const syntax::Node& node, const LabelledLine& line) {
    const std::string text = node.value.joined();
    const Edit edit = line.text == text || node.value.slices.size() > 1
                          ? Edit{line_start(node), std::string(line.label) + ": "}
                          : Edit{up_to_end(node), line.whole()};
    // what says several things, and which of them cannot be told, is the writer's to part
    const bool sure = split_at(text, ", ").size() < 3 || line.label == "honors";
    return {fill<messages::bare_field>(in_quotes(text), line.label, line.text),
            sure ? Edits{edit} : Edits{},
            {line.label}};
}

// One line that says several things. The mend is left to the writer where a label is a guess.
Advice advise_lines(const syntax::Node& node, const std::vector<LabelledLine>& lines, bool sure,
                    bool opens_entry = false) {
    const auto quoted = [](const LabelledLine& line) { return '\'' + line.whole() + '\''; };
    std::string all;
    std::vector<std::string_view> labels;
    for (const LabelledLine& line : lines) {
        all += (all.empty() ? "" : "\n") + line.whole();
        labels.push_back(line.label);
    }
    const std::string typed = in_quotes(node.value.joined()),
                      right = joined(lines, " and ", all_of_them, quoted);
    return {opens_entry ? fill<messages::bare_fields_below>(typed, right)
                        : fill<messages::bare_fields>(typed, right),
            sure && node.value.slices.size() == 1 ? Edits{{node.value.place(), all}} : Edits{},
            std::move(labels)};
}

// The label that stands here by that name, typed whole or guessed; none if none does.
using LabelHere = std::function<std::optional<std::string_view>(std::string_view folded)>;

Place part_of_line(const syntax::Slice& line, std::size_t begin, std::size_t end) {
    return {line.place.file, line.place.line, line.place.column + static_cast<std::uint32_t>(begin),
            static_cast<std::uint32_t>(end - begin)};
}

// Where the value begins behind a label that no sign parts from it; npos if it is no label's: a
// preposition goes on with a name, `School of Nursing`, but in `Minor in Chemistry`.
std::size_t value_behind(std::string_view label, std::string_view text, std::size_t end) {
    constexpr std::array<std::string_view, 10> leading{"of", "for", "at", "with", "and",
                                                       "to", "on",  "by", "in",   "&"};
    constexpr std::array<std::pair<std::string_view, std::string_view>, 4> taken_along{
        {{"minor", "in"}, {"major", "in"}, {"graduation", "in"}, {"gpa", "of"}}};
    const std::size_t value = std::min(text.find_first_not_of("- \t", end), text.size());
    const std::string_view word = text.substr(value, text.find(' ', value) - value);
    if (!is_one_of(word, leading)) return value;
    if (!is_one_of(std::pair{label, word}, taken_along)) return text.npos;
    return std::min(text.find_first_not_of(' ', value + word.size()), text.size());
}

// `Role Lab assistant`, `role; Lab assistant`, `Name - Ottoline Brandt`: a label whose colon was
// forgotten.
std::optional<Advice> advise_colon(const syntax::Node& node, const LabelHere& label_here) {
    const syntax::Slice& line = node.value.slices.front();
    const std::size_t end = std::min(line.text.find_first_of(" \t"), line.text.size());
    const std::string_view typed = trimmed(std::string_view{line.text}.substr(0, end), ";,.");
    const std::string small = lower_case(typed);
    const bool alone = end == line.text.size(); // its value is folded below
    if (!trade::find_word(small) || !label_here(small) || (alone && node.value.slices.size() == 1))
        return std::nullopt;
    const std::string_view label = trade::find_word(small)->label;
    const std::size_t value = value_behind(label, line.text, end);
    if (value == line.text.npos) return std::nullopt;
    const bool blank_alone = value <= end + 1 && !line.text.substr(0, end + 1).ends_with('\t');
    return Advice{
        fill<messages::colon_forgotten>(typed, label),
        {{part_of_line(line, typed.size(), blank_alone ? end : value), blank_alone ? ":" : ": "}},
        {label},
        value};
}

// `E mail - ottoline@ellerystate.example`, `Relevant Coursework - Ecology`
std::optional<Advice> advise_dash(const syntax::Node& node, const LabelHere& label_here) {
    constexpr std::array<std::string_view, 6> signs{" - ", " \u2013 ", " \u2014 ",
                                                    "\t",  "- ",       "; "};
    const syntax::Slice& line = node.value.slices.front();
    for (const std::string_view sign : signs) {
        const std::size_t at = line.text.find(sign);
        if (at == 0 || at == line.text.npos) continue;
        const std::string_view typed = trimmed(std::string_view{line.text}.substr(0, at));
        const auto label = label_here(syntax::folded_label(typed));
        const std::size_t value = line.text.find_first_not_of(" \t", at + sign.size());
        if (!label || value == line.text.npos) continue;
        return Advice{fill<messages::colon_forgotten>(typed, *label),
                      {{part_of_line(line, 0, value), std::string(*label) + ": "}},
                      {*label},
                      value};
    }
    return std::nullopt;
}

// `SKILLS - diesel, hydraulics`
std::optional<Advice> advise_section(const syntax::Node& node) {
    const std::string& text = node.value.slices.front().text;
    const std::size_t at = std::min(text.find(" - "), text.find(" \u2013 "));
    const std::string_view title = trimmed(std::string_view{text}.substr(0, at));
    if (at == text.npos || !is_capital_letter(text.front()) || !trade::is_section_title(title))
        return std::nullopt;
    return Advice{fill<messages::guessed_section>(in_quotes(title), title), {}};
}

// A question of a form, with what is said there of dates.
std::optional<Advice> advise_form(const syntax::Node& node, const BarePlace* place) {
    const std::string text = node.value.joined();
    const auto answer = answer_in_form(text);
    if (!answer) return std::nullopt;
    if (auto line = place ? line_by_form(*answer, place->holds, place->dates) : std::nullopt;
        line && !place->stands(line->label))
        return Advice{fill<messages::answers_form_with>(in_quotes(text), line->label, line->text),
                      {{node.value.place(), line->whole()}},
                      {line->label}};
    return Advice{fill<messages::question_of_form>(in_quotes(text)), {}};
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

std::optional<Advice> advise_to_take_out(const syntax::Node& node) {
    auto line = line_to_go(node.value.joined());
    if (!line) return std::nullopt;
    const bool mends = line->surely && node.value.slices.size() == 1;
    return Advice{std::move(line->says), mends ? Edits{{whole_line(node), ""}} : Edits{}};
}

// `Tools, multimeter, fish tape`, where a comma stands for the colon of the first word.
std::string labelled_group(const std::string& text) {
    const std::size_t comma = std::min(text.find(", "), text.find("; "));
    const bool label = comma != text.npos && is_capital_letter(text.front()) &&
                       text.find(' ') > comma && is_small_letter(text[comma + 2]);
    return label ? text.substr(0, comma) + ": " + text.substr(comma + 2) : "Label: " + text;
}

// `Software - Excel, Word`, `Other ..... driving` among groups that have labels
std::optional<Advice> advise_group(const syntax::Node& node) {
    constexpr std::array<std::string_view, 5> signs{" - ", " \u2013 ", " \u2014 ", "...", "\t"};
    constexpr std::size_t most_words = 4;
    const syntax::Slice& line = node.value.slices.front();
    for (const std::string_view sign : signs) {
        const std::size_t at = line.text.find(sign);
        if (at == 0 || at == line.text.npos) continue;
        const std::string_view label = trimmed(std::string_view{line.text}.substr(0, at), " .");
        const std::size_t value = line.text.find_first_not_of(" .\t", at + sign.size());
        if (value == line.text.npos || word_count(label) > most_words ||
            label.find_first_of(",;(") != label.npos)
            continue;
        return Advice{fill<messages::colon_forgotten>(label, label),
                      {{part_of_line(line, label.size(), value), ": "}}};
    }
    return std::nullopt;
}

LabelHere labels_of_entry(const BarePlace& place) {
    return [&place](std::string_view folded) -> std::optional<std::string_view> {
        const trade::Word* word = trade::find_word(folded);
        if (word && word->kinds.has(place.holds)) return word->label;
        const auto meant = trade::meant_in(place.holds, folded);
        return meant && !place.stands(*meant) ? meant : std::nullopt;
    };
}

// `SKILLS - diesel`; but `Software - Excel` among skills
bool is_title_in_capitals(std::string_view text) {
    return std::ranges::none_of(text.substr(0, text.find(' ')), is_small_letter);
}

// What stands in any section, whatever it holds.
std::optional<Advice> advise_anywhere(const syntax::Node& node, const BarePlace& place) {
    if (auto advice = advise_to_take_out(node)) return advice;
    if (auto advice = advise_form(node, &place)) return advice;
    if (auto advice = advise_dash(node, labels_of_entry(place))) return advice;
    if (auto advice = advise_colon(node, labels_of_entry(place))) return advice;
    const std::string& text = node.value.slices.front().text;
    if (trade::has_groups(place.holds) && !is_title_in_capitals(text)) return advise_group(node);
    return advise_section(node);
}

// Below a bullet too: `1997 - 2014  Skipper, Marigold Ann`, which no bullet goes on with.
bool begins_entry(std::string_view text, const std::vector<LabelledLine>& lines) {
    const bool dated =
        std::ranges::any_of(lines, [](const LabelledLine& line) { return line.label == "dates"; });
    return dated && lines.size() > 1 && !is_small_letter(text.front());
}

Advice advice_in_entry(const syntax::Node& node, const BarePlace& place) {
    const std::string text = node.value.joined();
    if (auto advice = advise_anywhere(node, place)) return *std::move(advice);
    if (trade::has_groups(place.holds))
        return {fill<messages::bare_group>(in_quotes(text), labelled_group(text)), {}};
    const auto [lines, opens_entry] = several_lines(text, place);
    if (goes_on(node, place.above) && !begins_entry(text, lines))
        return {fill<messages::fold_not_indented>(in_quotes(text)), {{line_start(node), "  "}}};
    const auto free = [&](const std::optional<LabelledLine>& line) {
        return line && !place.stands(line->label);
    };
    const auto by_words = line_by_words(text, place.holds, place.dates);
    const bool tells =
        by_words && (by_words->label == "honors" || line_by_form(text, place.holds, place.dates));
    if (tells && free(by_words)) return advise_label(node, *by_words);
    if (!lines.empty()) return advise_lines(node, lines, false, opens_entry);
    if (free(by_words)) return advise_label(node, *by_words);
    if (auto advice = advise_courses(node, place.holds)) return *std::move(advice);
    const auto wanted = names_wanted(place);
    if (wanted.empty() || reads_as_bullet(text))
        return {fill<messages::bare_bullet>(in_quotes(text), text), {{line_start(node), "- "}}};
    return {fill<messages::bare_in_entry>(in_quotes(text), wanted.front(), text, text),
            {},
            {wanted.front()}};
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

// `OTTOLINE BRANDT, CNA`, with the letters of a licence; but `Port Ellery, WA`
bool ends_in_licence(std::string_view text) {
    constexpr std::size_t least = 3, most = 5;
    const std::size_t comma = text.rfind(", ");
    if (comma == text.npos) return false;
    const std::string_view letters = text.substr(comma + 2);
    return letters.size() >= least && letters.size() <= most &&
           std::ranges::all_of(letters, is_capital_letter);
}

// What a line of the heading surely is.
std::optional<std::string_view> contact_label(const std::string& text, bool has_name) {
    constexpr std::size_t longest_address = 60;
    if (email_uri(text)) return "email";
    if (phone_uri(text)) return "phone";
    if (is_address_of_web(text)) return "link";
    if (!has_name && ends_in_licence(text) && may_be_name(text)) return "name";
    if (text.find(", ") != std::string::npos && text.size() < longest_address) return "address";
    if (has_name && reads_as_town(text)) return "address";
    if (!has_name && may_be_name(text)) return "name";
    return std::nullopt;
}

// `(360) 555-0142 | ottoline@ellerystate.example`
std::optional<Advice> advise_contacts(const syntax::Node& node) {
    constexpr std::array<std::string_view, 9> signs{"|",  "\u2022", "\u00B7", ";",   " / ",
                                                    "\t", " - ",    ", ",     " or "};
    const std::string text = node.value.joined();
    for (const std::string_view sign : signs) {
        std::vector<LabelledLine> lines;
        const auto parts = split_at(text, sign);
        for (const std::string_view part : parts)
            if (const auto label = contact_label(std::string(unmarked(part)), true))
                lines.push_back({*label, std::string(unmarked(part))});
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

// `Ph. 555-0138`, `Cell phone 360 555 0142`: a label without a colon before what it surely is of.
std::optional<Advice> advise_contact(const syntax::Node& node) {
    constexpr std::string_view of_numbers = "0123456789 ()+-./";
    const syntax::Slice& line = node.value.slices.front();
    for (std::size_t at = line.text.find(' '); at != line.text.npos;
         at = line.text.find(' ', at + 1)) {
        const std::string_view typed = std::string_view{line.text}.substr(0, at);
        const std::string_view value = std::string_view{line.text}.substr(at + 1);
        const auto label = trade::meant_in_heading(syntax::folded_label(trimmed(typed, ".,;")));
        const bool number = label == "phone" && has_digit(value) &&
                            value.find_first_not_of(of_numbers) == value.npos;
        if (!number && (label != "email" || value.find('@') == value.npos)) continue;
        return Advice{fill<messages::colon_forgotten>(typed, *label),
                      {{part_of_line(line, 0, at + 1), std::string(*label) + ": "}},
                      {*label},
                      at + 1};
    }
    return std::nullopt;
}

std::optional<std::string_view> label_of_heading(std::string_view folded) {
    const trade::Word* word = trade::find_word(folded);
    if (word && (word->heading || word->label == "section")) return word->label;
    return trade::meant_in_heading(folded);
}

std::optional<Advice> advise_by_label(const syntax::Node& node) {
    if (auto advice = advise_to_take_out(node)) return advice;
    if (auto advice = advise_form(node, nullptr)) return advice;
    if (auto advice = advise_dash(node, label_of_heading)) return advice;
    if (auto advice = advise_colon(node, label_of_heading)) return advice;
    if (auto advice = advise_section(node)) return advice;
    return advise_contact(node);
}

Advice advice_in_heading(const syntax::Node& node, bool has_name) {
    const std::string text = node.value.joined(), bare(unmarked(text));
    if (auto advice = advise_by_label(node)) return *std::move(advice);
    if (text.starts_with("\U0001F4CD")) return advise_label(node, {"address", bare}); // a pin
    if (const auto label = contact_label(bare, has_name)) return advise_label(node, {*label, bare});
    if (auto advice = advise_contacts(node)) return *std::move(advice);
    if (auto advice = advise_pages(node)) return *std::move(advice);
    if (auto advice = advise_summary(node)) return *std::move(advice);
    return {fill<messages::bare_in_heading>(in_quotes(text), text), {}};
}

void report(const syntax::Node& node, const Advice& advice, Diagnostics& diagnostics) {
    diagnostics.error(node.value.place(), advice.text, advice.mend);
}

}

std::vector<std::string_view> report_bare_line(const syntax::Node& node, const BarePlace& place,
                                               Diagnostics& diagnostics) {
    const Advice advice = advice_in_entry(node, place);
    report(node, advice, diagnostics);
    return advice.labels;
}

bool report_contacts(const syntax::Node& node, Diagnostics& diagnostics) {
    const auto advice = advise_contacts(node);
    if (!advice) return false;
    const Place value = node.value.place();
    Edits mend = advice->mend;
    for (Edit& edit : mend) // the label goes with it
        edit.place = {value.file, value.line, 1, value.column + value.length - 1};
    diagnostics.error(node.label.place, advice->text,
                      value.line == node.place.line ? mend : Edits{});
    return true;
}

bool report_several(const syntax::Node& node, const BarePlace& place, Diagnostics& diagnostics) {
    const std::string text = node.value.joined();
    if (text.find(" | ") == text.npos && text.find('\t') == text.npos) return false;
    const auto said = several_lines(text, place);
    if (said.lines.size() < 2 || said.opens_entry || said.lines.front().label != node.label.text)
        return false;
    report(node, advise_lines(node, said.lines, false), diagnostics);
    return true;
}

std::optional<syntax::Node> report_bare_line_in_heading(const syntax::Node& node, bool has_name,
                                                        Diagnostics& diagnostics) {
    const Advice advice = advice_in_heading(node, has_name);
    report(node, advice, diagnostics);
    if (advice.labels.size() != 1) return std::nullopt;
    syntax::Node meant = node;
    meant.kind = syntax::Node::Kind::field;
    meant.label = {std::string(advice.labels.front()), node.value.place()};
    auto& slices = meant.value.slices;
    syntax::take_off_front(slices.front(), advice.value);
    if (slices.front().text.empty() && slices.size() > 1) slices.erase(slices.begin());
    for (syntax::Slice& slice : meant.value.slices)
        slice.text = std::string(unmarked(slice.text));
    return meant;
}

}
