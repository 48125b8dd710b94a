#include "compiler/stages/model/guesses.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/stages/model/dates.hpp"
#include "compiler/stages/model/dates_meant.hpp"
#include "compiler/stages/model/messages.hpp"
#include "compiler/stages/model/settle_blocks.hpp"
#include "compiler/trade/guessed_labels.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <map>
#include <string>
#include <utility>
#include <variant>

namespace quoin::model {
namespace {

std::string title_of(std::string label) {
    std::ranges::replace(label, '-', ' ');
    return capitalised(std::move(label));
}

bool overlap(const Place& a, const Place& b) {
    const bool meets = a.column < b.column + b.length && b.column < a.column + a.length;
    return a.file == b.file && a.line == b.line && (meets || a.column == b.column);
}

bool overlap(const Edits& some, const Edits& others) {
    return std::ranges::any_of(some, [&](const Edit& one) {
        return std::ranges::any_of(
            others, [&](const Edit& other) { return overlap(one.place, other.place); });
    });
}

// From the line's start up to its value.
Place before_value(const syntax::Node& node) {
    const Place value = node.value.place();
    return {value.file, node.place.line, 1, value.column - 1};
}

// What is left of the line behind its value: the bracket of `skills = [R, Python]`.
Edits without_rest(const syntax::Node& node) {
    const syntax::Slice& value = node.value.slices.front();
    const std::uint32_t end = value.place.column + value.place.length;
    if (node.value.slices.size() > 1 || !node.tags.empty() || end > node.place.length) return {};
    return {{{value.place.file, value.place.line, end, node.place.length + 1 - end}, ""}};
}

bool is_guess(const syntax::Node& node) {
    return node.kind == syntax::Node::Kind::field && node.tags.empty() &&
           node.value.slices.size() == 1;
}

// `major gpa: 3.7` is `gpa: 3.7 (major)`.
void report_gpa(const syntax::Node& node, Diagnostics& diagnostics) {
    constexpr std::size_t suffix = 4; // ` gpa`
    const std::string which = lower_case(node.spelled.substr(0, node.spelled.size() - suffix));
    const std::string text = node.value.joined();
    Edits mend{{node.label.place, "gpa"}, {node.value.place(), text + " (" + which + ')'}};
    diagnostics.error(node.label.place,
                      fill<messages::gpa_of>(in_quotes(node.label.text), text, which),
                      node.value.slices.size() == 1 ? std::move(mend) : Edits{});
}

// `expected graduation: May 2027`, whose label says what its date does not.
bool says_expected(const syntax::Node& node, std::string_view meant) {
    constexpr std::array<std::string_view, 3> words{"expected", "anticipated", "projected"};
    const auto read = read_dates(node.value.joined());
    const auto* date = std::get_if<DateRange>(&read);
    const std::string& label = node.label.text;
    return meant == "graduation" && date && !date->expected &&
           std::ranges::any_of(words, [&](auto word) { return label.find(word) != label.npos; });
}

// Of the sentences of a description each is a bullet. What stands before a stop is no abbreviation
// if it is long and small.
Edits made_bullets(const syntax::Node& node) {
    constexpr std::size_t least_letters = 4;
    Edits edits{{before_value(node), "- "}};
    for (const syntax::Slice& slice : node.value.slices)
        for (std::size_t at = slice.text.find(". "); at != std::string::npos;
             at = slice.text.find(". ", at + 1)) {
            const std::size_t next = slice.text.find_first_not_of(' ', at + 1);
            const std::size_t word = slice.text.find_last_of(' ', at) + 1; // npos + 1 is 0
            if (at - word < least_letters || !is_capital_letter(slice.text[next]) ||
                !is_small_letter(slice.text[at - 1]))
                continue;
            const auto column = slice.place.column + static_cast<std::uint32_t>(at);
            edits.push_back({{slice.place.file, slice.place.line, column,
                              static_cast<std::uint32_t>(next - at)},
                             ".\n- "});
        }
    return edits;
}

// In the order of the field, with what parts them there: `77 Halyard Street, Port Ellery, WA`
std::string joined_pieces(std::span<const syntax::Node> pieces) {
    std::map<char, std::string> in_order;
    std::string_view label;
    for (const syntax::Node& node : pieces) {
        const auto piece = *trade::piece_of_label(node.label.text);
        label = piece.label;
        if (!trade::is_empty_value(node.value.joined()))
            in_order[piece.order] = node.value.joined();
    }
    std::string text;
    for (const auto& [order, piece] : in_order) {
        const bool close = label == "name" || order == '5'; // a ZIP code stands by its state
        text += (text.empty() ? "" : close ? " " : ", ") + piece;
    }
    return text;
}

// What a name is given with a colon after it: its dates, or more of it.
void report_name(const syntax::Node& node, std::string_view label, Diagnostics& diagnostics) {
    const std::string text = node.value.joined(), prefix = std::string(label) + ": ";
    const Place start{node.place.file, node.place.line, 1, 0};
    if (!std::holds_alternative<DateRange>(read_dates(text)))
        return diagnostics.error(
            node.label.place,
            fill<messages::bare_label>(in_quotes(node.spelled), label, node.spelled + ": " + text),
            {{start, prefix}});
    Place between = node.label.place;
    between.column += between.length;
    between.length = node.value.place().column - between.column;
    diagnostics.error(
        node.label.place,
        fill<messages::bare_dated>(in_quotes(node.spelled), label, node.spelled, "dates", text),
        {{start, prefix}, {between, "\ndates: "}});
}

}

void report_guess(const syntax::Node& node, std::string_view meant, Diagnostics& diagnostics) {
    if (says_expected(node, meant)) {
        const std::string text = node.value.joined() + " (expected)";
        const Edits mend{{node.label.place, std::string(meant)}, {node.value.place(), text}};
        return diagnostics.error(
            node.label.place,
            fill<messages::guessed_field>(in_quotes(node.label.text), meant, meant, text),
            node.value.slices.size() == 1 ? mend : Edits{});
    }
    diagnostics.error(node.label.place,
                      fill<messages::guessed_label>(in_quotes(node.label.text), meant),
                      {{node.label.place, std::string(meant)}});
}

void report_together(const Diagnostics& found, Diagnostics& diagnostics) {
    if (found.all().empty()) return;
    Diagnostic one = found.all().front();
    for (const Diagnostic& further : found.all()) {
        if (&further == &found.all().front()) continue;
        one.text = fill<messages::both>(one.text, further.text);
        if (!overlap(one.mend, further.mend))
            one.mend.insert(one.mend.end(), further.mend.begin(), further.mend.end());
    }
    diagnostics.error(one.place, std::move(one.text), std::move(one.mend));
}

bool report_other_meaning(const syntax::Node& node, std::optional<trade::Holds> holds, bool alone,
                          Diagnostics& diagnostics) {
    const std::string& label = node.label.text;
    const bool here = node.value.place().line == node.place.line;
    if (trade::means_bullets(label)) {
        diagnostics.error(node.label.place, fill<messages::guessed_bullets>(in_quotes(label)),
                          here ? made_bullets(node) : Edits{});
        return true;
    }
    if (const auto says = trade::has_no_place(label); !says.empty()) {
        diagnostics.error(node.label.place, fill<messages::has_no_place>(in_quotes(label), says));
        return true;
    }
    const bool in_entry = holds && *holds != trade::Holds::prose && !alone;
    if (!trade::means_section(label) || in_entry) return false;
    Edits mend;
    if (here && alone) {
        mend = without_rest(node);
        mend.push_back({before_value(node), "section: " + title_of(label) + "\n\n"});
    }
    diagnostics.error(node.label.place,
                      fill<messages::guessed_section>(in_quotes(label), title_of(label)),
                      std::move(mend));
    return true;
}

bool report_in_heading(const syntax::Node& node, bool alone, Diagnostics& diagnostics) {
    if (report_other_meaning(node, std::nullopt, alone, diagnostics)) return true;
    const auto meant = trade::meant_by(node.label.text);
    if (meant.empty()) return false;
    const trade::Word& word = *trade::find_word(meant.front());
    diagnostics.error(
        node.label.place,
        fill<messages::guessed_below>(in_quotes(node.label.text), meant.front(), kinds_with(word)));
    return true;
}

bool report_no_address(const syntax::Node& node, Diagnostics& diagnostics) {
    const std::string text = node.value.joined();
    if (text.find_first_of(".:<") != std::string::npos) return false;
    diagnostics.error(node.label.place,
                      fill<messages::guessed_address>(in_quotes(node.label.text)));
    return true;
}

bool report_own_label(const syntax::Node& node, trade::Holds holds, Diagnostics& diagnostics) {
    if (holds == trade::Holds::education && node.label.text.ends_with("-gpa")) {
        report_gpa(node, diagnostics);
        return true;
    }
    const auto label = label_of_bare(holds);
    const bool one_line = node.value.place().line == node.place.line;
    if (!label || !one_line || node.spelled.find(' ') == std::string::npos) return false;
    report_name(node, *label, diagnostics);
    return true;
}

std::string instead_of_label(const syntax::Node& node, trade::Holds holds) {
    const std::string line = capitalised(node.spelled) + ": " + node.value.joined();
    if (holds == trade::Holds::experience) return fill<messages::goes_into>("note: " + line);
    if (trade::has_bullets(holds)) return fill<messages::goes_into>("- " + line);
    return {};
}

bool report_empty_value(const syntax::Node& node, Diagnostics& diagnostics) {
    const trade::Word* word = trade::find_word(node.label.text);
    const bool is_field = !word || std::holds_alternative<trade::FieldName>(word->means);
    const bool calls = word && (trade::names_entry(*word) || word->label == "name");
    if (!is_guess(node) || !is_field || calls || !trade::is_empty_value(node.value.joined()))
        return false;
    diagnostics.error(
        node.label.place,
        fill<messages::says_nothing_here>(in_quotes(node.spelled + ": " + node.value.joined())),
        {{whole_line(node), ""}});
    return true;
}

std::size_t count_pieces(std::span<const syntax::Node> nodes, bool in_heading) {
    std::string_view label = in_heading ? "" : "address"; // of an entry, a place
    std::size_t count = 0;
    for (const syntax::Node& node : nodes) {
        const auto piece = is_guess(node) ? trade::piece_of_label(node.label.text) : std::nullopt;
        if (!piece || (!label.empty() && piece->label != label)) break;
        label = piece->label;
        ++count;
    }
    return count > 1 ? count : 0;
}

syntax::Node report_pieces(std::span<const syntax::Node> pieces, bool in_heading,
                           Diagnostics& diagnostics) {
    syntax::Node whole = pieces.front();
    const std::string_view of_heading = trade::piece_of_label(whole.label.text)->label;
    const std::string_view label = in_heading ? of_heading : "place";
    const std::string text = joined_pieces(pieces);
    Edits mend{{whole.label.place, std::string(label)}, {whole.value.place(), text}};
    for (const syntax::Node& further : pieces.subspan(1))
        mend.push_back({whole_line(further), ""});
    const auto quoted = [](const syntax::Node& node) { return in_quotes(node.spelled); };
    diagnostics.error(
        whole.label.place,
        fill<messages::pieces_of_one>(joined(pieces, " and ", all_of_them, quoted), label, text),
        std::move(mend));
    whole.label.text = whole.spelled = label;
    whole.value.slices.front().text = text;
    return whole;
}

bool are_range(const syntax::Node& from, const syntax::Node& to) {
    return is_guess(from) && is_guess(to) && trade::begins_range(from.label.text) &&
           trade::ends_range(to.label.text);
}

void report_range(const syntax::Node& from, const syntax::Node& to, trade::Holds holds,
                  Diagnostics& diagnostics) {
    const std::string_view label = trade::meant_in(holds, from.label.text).value_or("dates");
    const bool goes_on = trade::is_empty_value(to.value.joined()); // `end: ~`
    const std::string typed =
        from.value.joined() + " - " + (goes_on ? "present" : to.value.joined());
    const std::string dates = as_dates(typed).value_or(typed);
    Place whole = to.place; // with its line end
    ++whole.length;
    diagnostics.error(
        from.label.place,
        fill<messages::range_on_two_lines>(from.label.text, to.label.text, label, dates),
        goes_on ? Edits{}
                : Edits{{from.label.place, std::string(label)},
                        {from.value.place(), dates},
                        {whole, ""}});
}

}
