// Lines with neither label nor dash: what they are where a section's kind has a use for them.
// What to write where it has none is said in bare_advice.cpp.
#include "compiler/stages/model/settle_blocks.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/suggest.hpp"
#include "compiler/stages/model/bare_forms.hpp"
#include "compiler/stages/model/lines_to_go.hpp"
#include "compiler/stages/syntax/line_words.hpp"
#include "compiler/trade/guessed_labels.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>

namespace quoin::model {

namespace {

// `Ellery State College, Marine Technology certificate, will be`
bool is_broken_off(const syntax::Node& bare) {
    constexpr std::size_t least_words = 6;
    const std::string text = bare.value.joined();
    return !is_small_letter(text.front()) && is_ascii_letter(text.back()) &&
           word_count(text) >= least_words;
}

}

// The label that a bare line of such a section goes without; none: it needs one.
std::optional<std::string_view> label_of_bare(trade::Holds holds) {
    switch (holds) {
    case trade::Holds::skills:
    case trade::Holds::languages:
        return "";
    case trade::Holds::prose:
        return "text";
    case trade::Holds::activities:
        return "activity";
    case trade::Holds::honors:
        return "award";
    case trade::Holds::credentials:
        return "credential";
    case trade::Holds::publications:
        return "publication";
    case trade::Holds::other:
        return "title";
    default:
        return std::nullopt;
    }
}

// A line that has lost its indentation goes on with the one above.
bool goes_on(const syntax::Node& node, const syntax::Node* above) {
    const std::string& text = node.value.slices.front().text;
    const bool begins_small = is_small_letter(text.front()) || text.front() == '&';
    if (!above || above->kind == syntax::Node::Kind::bullet) return above != nullptr;
    return begins_small && (above->kind != syntax::Node::Kind::bare || is_broken_off(*above));
}

syntax::Block unfolded(Nodes block, const Sources& sources) {
    syntax::Block lines;
    for (syntax::Node node : block) {
        if (node.kind != syntax::Node::Kind::bare || node.value.slices.size() == 1 ||
            syntax::is_label_or_guess(
                syntax::folded_label(trimmed(node.value.slices.front().text, " ,;:.-")))) {
            lines.push_back(std::move(node));
            continue;
        }
        std::vector<syntax::Slice> slices = std::exchange(node.value.slices, {});
        const auto tags = std::exchange(node.tags, {});
        for (syntax::Slice& slice : slices) {
            const bool own = &slice == slices.data() || is_capital_letter(slice.text.front()) ||
                             is_figure(slice.text.front());
            if (own) {
                const std::string_view line = sources.file(slice.place.file).line(slice.place.line);
                node.place = {slice.place.file, slice.place.line, 1,
                              static_cast<std::uint32_t>(line.size())};
                lines.push_back(node);
            }
            lines.back().value.slices.push_back(std::move(slice));
        }
        lines.back().tags = tags;
    }
    return lines;
}

namespace {

using Kind = syntax::Node::Kind;

Place start_of(const syntax::Node& node) {
    return {node.place.file, node.place.line, 1, 0};
}

void give_label(syntax::Node& node, std::string_view label) {
    node.kind = Kind::field;
    node.spelled = label;
    node.label = {std::string(label), start_of(node)};
}

bool is_comment_node(const syntax::Node& node) {
    return node.kind == Kind::comment;
}

const syntax::Node* last_line_of(const syntax::Block& block) { // null if there is none
    const auto last = std::find_if_not(block.rbegin(), block.rend(), is_comment_node);
    return last == block.rend() ? nullptr : &*last;
}

// Each bare line opens an entry of its own, with the labelled lines below it.
std::vector<syntax::Block> entries_of(syntax::Block block, std::string_view label) {
    std::vector<syntax::Block> blocks(1);
    for (syntax::Node& node : block) {
        const bool columns = node.kind == Kind::bare && parts_columns(node.value.joined());
        if (node.kind == Kind::bare && !columns && !goes_on(node, last_line_of(blocks.back()))) {
            if (!std::ranges::all_of(blocks.back(), is_comment_node)) blocks.emplace_back();
            give_label(node, label);
        }
        blocks.back().push_back(std::move(node));
    }
    return blocks;
}

// Paragraphs that had dashes stay apart.
bool had_dash(const syntax::Node& node) {
    return node.place.column == 1 && node.value.place().column > 1;
}

// Lines of a paragraph need no indentation.
syntax::Block paragraphs_of(syntax::Block block) {
    syntax::Block joined;
    for (syntax::Node& node : block) {
        const bool further = node.kind == Kind::bare && !joined.empty() && !had_dash(node) &&
                             joined.back().kind == Kind::field && joined.back().tags.empty() &&
                             joined.back().label.text == "text";
        if (further) {
            std::ranges::move(node.value.slices, std::back_inserter(joined.back().value.slices));
            joined.back().tags = std::move(node.tags);
            continue;
        }
        if (node.kind == Kind::bare) give_label(node, "text");
        joined.push_back(std::move(node));
    }
    return joined;
}

// Where every group has a label, a line without one has lost its indentation or its label.
bool is_group(const syntax::Node& node) {
    return node.kind == Kind::field && !trade::find_word(node.label.text);
}

bool has_labelled_group(const syntax::Block& block) {
    return std::ranges::any_of(block, is_group);
}

// From the first character of the line to the end of the first slice, as one slice without a label.
void take_label_off(syntax::Node& node, const Sources& sources) {
    syntax::Slice whole{{}, node.label.place};
    syntax::Slice& first = node.value.slices.front();
    const bool same_line = first.place.line == whole.place.line;
    const std::uint32_t end =
        same_line ? first.place.column + first.place.length : node.place.length + 1;
    whole.place.length = end - whole.place.column;
    whole.text = sources.file(whole.place.file)
                     .line(whole.place.line)
                     .substr(whole.place.column - 1, whole.place.length);
    if (same_line)
        first = std::move(whole);
    else
        node.value.slices.insert(node.value.slices.begin(), std::move(whole));
    node.kind = Kind::bare;
    node.label = {};
}

// A sentence with a colon in it; but a label that is known, guessed or near to one is a label.
bool is_sentence(const syntax::Node& node) {
    constexpr std::array<std::string_view, 1> own{"text"};
    const std::string& label = node.label.text;
    return node.kind == Kind::field && !trade::find_word(label) && !nearest(label, own) &&
           trade::meant_by(label).empty() && !trade::means_bullets(label) &&
           !trade::means_section(label);
}

// `- Software: R, QGIS` among groups
void take_out_dash(syntax::Node& node, bool in_groups) {
    syntax::Slice& first = node.value.slices.front();
    const std::size_t colon = first.text.find(": ");
    constexpr std::size_t longest_label = 60;
    node.kind = Kind::bare;
    if (!in_groups || colon == 0 || colon == std::string::npos || colon > longest_label) return;
    node.kind = Kind::field;
    node.spelled = first.text.substr(0, colon);
    node.label = {lower_case(node.spelled), first.place};
    node.label.place.length = static_cast<std::uint32_t>(colon);
    const std::size_t value = first.text.find_first_not_of(' ', colon + 1);
    syntax::take_off_front(first, value);
}

// In a list, a dash before a line says nothing, but below the labelled lines of an entry.
void pass_over_dashes(syntax::Block& block, trade::Holds holds) {
    if (trade::has_bullets(holds)) return;
    std::erase_if(block, [](const syntax::Node& node) { // one of tags alone, which was reported
        return node.kind == Kind::bullet && node.value.slices.empty();
    });
    bool labelled = false;
    for (syntax::Node& node : block) {
        labelled = labelled || (node.kind == Kind::field && !trade::has_groups(holds));
        if (node.kind == Kind::bullet && !labelled) take_out_dash(node, trade::has_groups(holds));
    }
}

// `- page 1 of 1 -`, which is no bullet.
void take_out_lines(syntax::Block& block, Diagnostics& diagnostics) {
    std::erase_if(block, [&](const syntax::Node& node) {
        if (node.kind == Kind::field || node.kind == Kind::comment || node.value.slices.size() != 1)
            return false;
        const auto line = line_to_go(node.value.slices.front().text);
        if (!line || !line->surely) return false;
        diagnostics.error(node.value.place(), line->says, {{whole_line(node), ""}});
        return true;
    });
}

}

std::vector<syntax::Block> with_labels(std::vector<syntax::Block> blocks, trade::Holds holds) {
    const auto label = label_of_bare(holds);
    if (!label) return blocks;
    if (trade::has_groups(holds) && std::ranges::any_of(blocks, has_labelled_group)) return blocks;
    std::vector<syntax::Block> settled;
    for (syntax::Block& block : blocks) {
        if (holds == trade::Holds::prose) {
            settled.push_back(paragraphs_of(std::move(block)));
        } else if (trade::has_groups(holds)) {
            for (syntax::Node& node : block)
                if (node.kind == Kind::bare) give_label(node, *label);
            settled.push_back(std::move(block));
        } else {
            std::ranges::move(entries_of(std::move(block), *label), std::back_inserter(settled));
        }
    }
    return settled;
}

std::vector<syntax::Block> settled_blocks(std::span<const Nodes> blocks, trade::Holds holds,
                                          const Sources& sources, Diagnostics& diagnostics) {
    std::vector<syntax::Block> settled;
    for (const Nodes block : blocks) {
        settled.push_back(label_of_bare(holds) ? syntax::Block(block.begin(), block.end())
                                               : unfolded(block, sources));
        take_out_lines(settled.back(), diagnostics);
        pass_over_dashes(settled.back(), holds);
        if (holds != trade::Holds::prose) continue;
        for (syntax::Node& node : settled.back())
            if (is_sentence(node)) take_label_off(node, sources);
    }
    settled = rows_as_entries(std::move(settled), holds, diagnostics);
    const std::vector<Nodes> read(settled.begin(), settled.end());
    return with_labels(closed_up(read, holds, sources, diagnostics), holds);
}

}
