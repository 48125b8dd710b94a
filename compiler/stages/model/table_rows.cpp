// Tables pasted from a spreadsheet: a row of labels, and below it rows that each are an entry.
#include "compiler/stages/model/settle_blocks.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/stages/model/bare_forms.hpp"
#include "compiler/stages/model/dates_meant.hpp"
#include "compiler/stages/model/messages.hpp"
#include "compiler/stages/syntax/line_words.hpp"
#include "compiler/trade/guessed_labels.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>

namespace quoin::model {
namespace {

using Cells = std::vector<std::string_view>;
constexpr std::string_view range_start = "from", range_end = "to"; // columns that are one line

Cells cells_of(std::string_view text, std::string_view sign) {
    const bool quoted = text.starts_with('"'); // "Cook";"Baked; sold"
    const std::string between = quoted ? '"' + std::string(sign) + '"' : std::string(sign);
    Cells cells = pieces_of(sign == "|" ? trimmed(text, " \t|") : text, between);
    for (std::string_view& cell : cells)
        cell = trimmed(cell, " \t\"");
    return cells;
}

// The label of a column of such entries that none before it has; none if it is no label.
std::optional<std::string_view> column_label(std::string_view cell, trade::Holds holds,
                                             const Cells& before) {
    const std::string label = syntax::folded_label(cell);
    if (trade::begins_range(label)) return range_start;
    if (trade::ends_range(label)) return range_end;
    if (trade::means_bullets(label)) return "-";
    Cells meant = trade::meant_by(label);
    if (const trade::Word* word = trade::find_word(label)) meant.insert(meant.begin(), word->label);
    const auto fits = std::ranges::find_if(meant, [&](std::string_view one) {
        return trade::find_word(one)->kinds.has(holds) && !is_one_of(one, before);
    });
    return fits == meant.end() ? std::nullopt : std::optional{*fits};
}

struct TableHeading { // of a table
    std::string_view sign;
    Cells labels;
};

bool is_plain_bare(const syntax::Node& node) {
    return node.kind == syntax::Node::Kind::bare && node.value.slices.size() == 1 &&
           node.tags.empty();
}

std::optional<TableHeading> heading_of(const syntax::Node& node, trade::Holds holds) {
    constexpr std::array<std::string_view, 4> signs{"\t", "|", ";", ","};
    constexpr std::size_t least = 2, least_by_commas = 3;
    if (!is_plain_bare(node)) return std::nullopt;
    for (const std::string_view sign : signs) {
        const Cells cells = cells_of(node.value.slices.front().text, sign);
        if (cells.size() < (sign == "," ? least_by_commas : least)) continue;
        TableHeading heading{sign, {}};
        for (const std::string_view cell : cells)
            if (const auto label = column_label(cell, holds, heading.labels))
                heading.labels.push_back(*label);
        if (heading.labels.size() == cells.size()) return heading;
    }
    return std::nullopt;
}

class TableReader { // of the blocks of a section
public:
    TableReader(trade::Holds holds, Diagnostics& diagnostics)
        : holds_(holds), diagnostics_(diagnostics) {}

    std::vector<syntax::Block> read(std::vector<syntax::Block> blocks) {
        for (syntax::Block& block : blocks) {
            entries_.emplace_back();
            for (syntax::Node& node : block)
                take(node);
        }
        std::erase_if(entries_, [](const syntax::Block& block) { return block.empty(); });
        return std::move(entries_);
    }

private:
    void take(syntax::Node& node) {
        if (auto heading = heading_of(node, holds_)) {
            heading_ = std::move(heading);
            return tell_heading(node);
        }
        if (!heading_ || !is_plain_bare(node)) return entries_.back().push_back(std::move(node));
        const std::string& text = node.value.slices.front().text;
        if (text.find_first_not_of("|-:+= ") == text.npos) return tell_heading(node);
        const Cells cells = cells_of(text, heading_->sign);
        if (cells.size() < 2 || cells.size() > heading_->labels.size())
            return entries_.back().push_back(std::move(node));
        row(node, cells);
    }

    void tell_heading(const syntax::Node& node) {
        diagnostics_.error(node.value.place(),
                           fill<messages::table_heading>(in_quotes(node.value.joined())),
                           {{whole_line(node), ""}});
    }

    void row(const syntax::Node& node, const Cells& cells) {
        const bool opens = entries_.back().empty();
        const std::vector<LabelledLine> lines = lines_of_row(cells);
        std::string all;
        for (const LabelledLine& line : lines)
            all += (all.empty() ? "" : "\n") + line.whole();
        const auto quoted = [](const LabelledLine& line) { return '\'' + line.whole() + '\''; };
        diagnostics_.error(node.value.place(),
                           fill<messages::bare_fields>(in_quotes(node.value.joined()),
                                                       joined(lines, " and ", all_of_them, quoted)),
                           {{node.value.place(), (opens ? "" : "\n") + all}});
        if (!opens) entries_.emplace_back();
        keep(node, lines);
    }

    std::vector<LabelledLine> lines_of_row(const Cells& cells) const {
        std::vector<LabelledLine> lines;
        std::string from, to;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            const std::string_view label = heading_->labels[i];
            if (cells[i].empty() || trade::is_empty_value(cells[i])) continue;
            if (label == range_start || label == range_end)
                (label == range_start ? from : to) = cells[i];
            else
                lines.push_back({label, as_typed(label, cells[i])});
        }
        const std::string dates = from + (from.empty() || to.empty() ? "" : " - ") + to;
        if (!dates.empty()) lines.push_back({"dates", as_dates(dates).value_or(dates)});
        std::stable_partition(lines.begin(), lines.end(),
                              [](const auto& line) { return line.label != "-"; });
        return lines;
    }

    static std::string as_typed(std::string_view label, std::string_view cell) {
        const trade::Word* word = trade::find_word(label);
        const bool dates = word && word->value == trade::ValueKind::dates;
        return dates ? as_dates(cell).value_or(std::string(cell)) : std::string(cell);
    }

    // What is said of the row is enough: its texts alone are read.
    void keep(const syntax::Node& node, const std::vector<LabelledLine>& lines) {
        for (const LabelledLine& line : lines) {
            const trade::Word* word = trade::find_word(line.label);
            if (!word || word->value != trade::ValueKind::text) continue;
            syntax::Node field = node;
            field.kind = syntax::Node::Kind::field;
            field.spelled = line.label;
            field.label = {field.spelled, node.value.place()};
            field.value.slices.front().text = line.text;
            entries_.back().push_back(std::move(field));
        }
    }

    trade::Holds holds_;
    Diagnostics& diagnostics_;
    std::optional<TableHeading> heading_;
    std::vector<syntax::Block> entries_;
};

}

std::vector<syntax::Block> rows_as_entries(std::vector<syntax::Block> blocks, trade::Holds holds,
                                           Diagnostics& diagnostics) {
    if (trade::has_groups(holds) || holds == trade::Holds::prose) return blocks;
    return TableReader(holds, diagnostics).read(std::move(blocks));
}

}
