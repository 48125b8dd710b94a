// Lines with neither label nor dash: what they are where a section's kind has a use for them, and
// what to write where it has none.
#include "compiler/stages/model/settle_blocks.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/stages/model/contact_links.hpp"
#include "compiler/stages/model/dates.hpp"
#include "compiler/stages/model/messages.hpp"
#include "compiler/stages/model/text_pieces.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

namespace quoin::model {
namespace {

using Kind = syntax::Node::Kind;

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

Place start_of(const syntax::Node& node) {
    return {node.place.file, node.place.line, 1, 0};
}

void give_label(syntax::Node& node, std::string_view label) {
    node.kind = Kind::field;
    node.spelled = label;
    node.label = {std::string(label), start_of(node)};
}

bool begins_small(const syntax::Node& node) {
    const std::string& text = node.value.slices.front().text;
    return is_small_letter(text.front()) || text.front() == '&';
}

bool is_comment_node(const syntax::Node& node) {
    return node.kind == Kind::comment;
}

// A line that has lost its indentation goes on with the one above.
bool goes_on(const syntax::Node& node, const syntax::Node* above) {
    return above && above->kind != Kind::bare &&
           (above->kind == Kind::bullet || begins_small(node));
}

// Each bare line opens an entry of its own, with the labelled lines below it.
std::vector<syntax::Block> entries_of(syntax::Block block, std::string_view label) {
    std::vector<syntax::Block> blocks(1);
    const syntax::Node* above = nullptr;
    for (syntax::Node& node : block) {
        if (node.kind == Kind::bare && !goes_on(node, above)) {
            if (!std::ranges::all_of(blocks.back(), is_comment_node)) blocks.emplace_back();
            give_label(node, label);
        }
        blocks.back().push_back(std::move(node));
        if (!is_comment_node(blocks.back().back())) above = &blocks.back().back();
    }
    return blocks;
}

// Lines of a paragraph need no indentation.
syntax::Block paragraphs_of(syntax::Block block) {
    syntax::Block joined;
    for (syntax::Node& node : block) {
        const bool further = node.kind == Kind::bare && !joined.empty() &&
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
bool has_labelled_group(const std::vector<syntax::Block>& blocks) {
    return std::ranges::any_of(blocks, [](const syntax::Block& block) {
        return std::ranges::any_of(block, [](const syntax::Node& node) {
            return node.kind == Kind::field && !trade::find_word(node.label.text);
        });
    });
}

struct Advice {
    std::string text;
    Edits mend;
};

Advice advise_label(const syntax::Node& node, std::string_view label) {
    const std::string text = node.value.joined();
    return {fill<messages::bare_field>(in_quotes(text), label, text),
            {{start_of(node), std::string(label) + ": "}}};
}

// `Role Lab assistant`: a label whose colon was forgotten.
std::optional<Advice> advise_colon(const syntax::Node& node, const auto& fits) {
    const syntax::Slice& line = node.value.slices.front();
    const std::size_t end = line.text.find(' ');
    const std::string first = line.text.substr(0, end);
    const trade::Word* word = trade::find_word(lower_case(first));
    if (!word || !fits(*word)) return std::nullopt;
    const Place after{line.place.file, line.place.line,
                      line.place.column + static_cast<std::uint32_t>(first.size()), 0};
    return Advice{fill<messages::colon_forgotten>(first, word->label), {{after, ":"}}};
}

bool reads_as_dates(const std::string& text) {
    return std::holds_alternative<DateRange>(read_dates(text));
}

Advice advice_in_entry(const syntax::Node& node, const syntax::Node* above, trade::Holds holds) {
    const std::string text = node.value.joined();
    if (auto advice =
            advise_colon(node, [&](const trade::Word& word) { return word.kinds.has(holds); }))
        return *std::move(advice);
    if (trade::has_groups(holds)) return {fill<messages::bare_group>(in_quotes(text), text), {}};
    if (goes_on(node, above))
        return {fill<messages::fold_not_indented>(in_quotes(text)), {{start_of(node), "  "}}};
    if (reads_as_dates(text))
        return advise_label(node, holds == trade::Holds::education ? "graduation" : "dates");
    const auto labels = labels_of(holds);
    return {fill<messages::bare_in_entry>(in_quotes(text), text, labels.front(), text), {}};
}

bool is_address_of_web(const std::string& text) {
    return text.find(' ') == std::string::npos && text.find('.') != std::string::npos;
}

// What a line of the heading surely is.
std::optional<std::string_view> contact_label(const std::string& text, bool has_name) {
    constexpr std::size_t longest_address = 60;
    if (email_uri(text)) return "email";
    if (phone_uri(text)) return "phone";
    if (is_address_of_web(text)) return "link";
    if (text.find(", ") != std::string::npos && text.size() < longest_address) return "address";
    if (!has_name && !has_digit(text)) return "name";
    return std::nullopt;
}

void report(const syntax::Node& node, Advice advice, Diagnostics& diagnostics) {
    diagnostics.error(node.value.place(), std::move(advice.text), std::move(advice.mend));
}

}

std::vector<syntax::Block> with_labels(std::vector<syntax::Block> blocks, trade::Holds holds) {
    const auto label = label_of_bare(holds);
    if (!label) return blocks;
    if (trade::has_groups(holds) && has_labelled_group(blocks)) return blocks;
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
    return with_labels(closed_up(blocks, holds, sources, diagnostics), holds);
}

void report_bare_line(const syntax::Node& node, const syntax::Node* above, trade::Holds holds,
                      Diagnostics& diagnostics) {
    report(node, advice_in_entry(node, above, holds), diagnostics);
}

std::optional<std::string_view> report_bare_line_in_heading(const syntax::Node& node, bool has_name,
                                                            Diagnostics& diagnostics) {
    const std::string text = node.value.joined();
    const auto fits = [](const trade::Word& word) {
        return word.heading || word.label == "section";
    };
    if (auto advice = advise_colon(node, fits)) {
        report(node, *std::move(advice), diagnostics);
        return std::nullopt;
    }
    const auto label = contact_label(text, has_name);
    report(node,
           label ? advise_label(node, *label)
                 : Advice{fill<messages::bare_in_heading>(in_quotes(text), text), {}},
           diagnostics);
    return label;
}

}
