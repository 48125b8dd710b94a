// The shape of a document: sections, entries and bullets as symbols, as what folds, and as what is
// selected around a position.
#include "compiler/server/spot.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>

namespace quoin::server {

namespace {

using session::Position;
using session::Range;

enum class SymbolKind { namespace_ = 3, object = 19, string = 15 }; // of the protocol

struct Part { // of the document, with what it holds
    std::string name;
    SymbolKind kind = SymbolKind::string;
    std::uint32_t first = 0, last = 0; // lines from 1
    std::vector<Part> parts = {};
};

std::string shown_name(const std::string& name, std::string_view otherwise) {
    return name.empty() ? std::string(otherwise) : name; // a symbol must have one
}

// By the label that names an entry, else by its first line.
std::string name_of_block(const syntax::Block& block) {
    for (const syntax::Node& node : block)
        if (const trade::Word* word = trade::find_word(node.label.text);
            node.kind == syntax::Node::Kind::field && word && trade::names_entry(*word))
            return node.value.joined();
    return block.front().kind == syntax::Node::Kind::field &&
                   !trade::find_word(block.front().label.text)
               ? block.front().spelled
               : block.front().value.joined();
}

Part part_of(const syntax::Block& block) {
    Part part{shown_name(name_of_block(block), "entry"), SymbolKind::object,
              block.front().place.line, last_line_of(block.back())};
    for (const syntax::Node& node : block)
        if (node.kind == syntax::Node::Kind::bullet)
            part.parts.push_back({shown_name(node.value.joined(), "bullet"), SymbolKind::string,
                                  node.place.line, last_line_of(node)});
    return part;
}

Part part_of(const syntax::SectionTree& section) {
    const std::uint32_t line = section.opening.place.line;
    Part part{shown_name(section.opening.value.joined(), "section"), SymbolKind::namespace_, line,
              line};
    for (const syntax::Block& block : section.blocks) {
        if (block.empty()) continue;
        part.parts.push_back(part_of(block));
        part.last = std::max(part.last, part.parts.back().last);
    }
    return part;
}

std::vector<Part> parts_of(const session::Document& document) {
    std::vector<Part> parts;
    for (const syntax::SectionTree& section : own_tree(document).tree.sections)
        parts.push_back(part_of(section));
    return parts;
}

class LineRanges {
public:
    LineRanges(const session::Document& document, session::Units units)
        : lines_(document.text), units_(units) {}

    Range of(std::uint32_t first, std::uint32_t last) const {
        return {{first - 1, 0}, {last - 1, session::units_in(lines_.line(last - 1), units_)}};
    }
    Range all() const { return of(1, lines_.count()); }

private:
    session::TextLines lines_;
    session::Units units_;
};

Json symbol_of(const Part& part, const LineRanges& ranges) {
    Json symbol{{"name", part.name},
                {"kind", static_cast<int>(part.kind)},
                {"range", to_json(ranges.of(part.first, part.last))},
                {"selectionRange", to_json(ranges.of(part.first, part.first))},
                {"children", Json::array()}};
    for (const Part& inner : part.parts)
        symbol["children"].push_back(symbol_of(inner, ranges));
    return symbol;
}

Answer symbols(Desk& desk, const Json& params) {
    const Addressed one = addressed_text(desk, params);
    if (!one.document) return one.refusal;
    const LineRanges ranges(*one.document, desk.units);
    Json all = Json::array();
    for (const Part& part : parts_of(*one.document))
        all.push_back(symbol_of(part, ranges));
    return all;
}

void add_folds(const std::vector<Part>& parts, Json& folds) {
    for (const Part& part : parts) {
        if (part.last > part.first)
            folds.push_back({{"startLine", part.first - 1}, {"endLine", part.last - 1}});
        add_folds(part.parts, folds);
    }
}

Answer folding_ranges(Desk& desk, const Json& params) {
    const Addressed one = addressed_text(desk, params);
    if (!one.document) return one.refusal;
    Json folds = Json::array();
    add_folds(parts_of(*one.document), folds);
    return folds;
}

// From the widest: the document, its section, the entry, the bullet.
std::vector<Range> around(const std::vector<Part>& parts, std::uint32_t line,
                          const LineRanges& ranges) {
    std::vector<Range> all{ranges.all()};
    const std::vector<Part>* inner = &parts;
    while (inner) {
        const auto part = std::ranges::find_if(
            *inner, [&](const Part& one) { return one.first <= line && line <= one.last; });
        if (part == inner->end()) break;
        all.push_back(ranges.of(part->first, part->last));
        inner = &part->parts;
    }
    all.push_back(ranges.of(line, line));
    all.erase(std::unique(all.begin(), all.end()), all.end());
    return all;
}

Json chain_of(const std::vector<Range>& from_the_widest) {
    Json chain;
    for (const Range& range : from_the_widest) {
        Json inner{{"range", to_json(range)}};
        if (!chain.is_null()) inner["parent"] = std::move(chain);
        chain = std::move(inner);
    }
    return chain;
}

Answer selection_ranges(Desk& desk, const Json& params) {
    const Addressed one = addressed_text(desk, params);
    if (!one.document) return one.refusal;
    const LineRanges ranges(*one.document, desk.units);
    const std::vector<Part> parts = parts_of(*one.document);
    const std::uint32_t last = session::TextLines(one.document->text).count();
    Json answers = Json::array();
    for (const Json& asked : params.at("positions")) {
        const std::uint32_t line = std::min(position_from(asked).line, last - 1) + 1;
        answers.push_back(chain_of(around(parts, line, ranges)));
    }
    return answers;
}

constexpr Method methods_of_outline[] = {{"textDocument/documentSymbol", symbols},
                                         {"textDocument/foldingRange", folding_ranges},
                                         {"textDocument/selectionRange", selection_ranges}};

void announce_outline(Json& capabilities) {
    capabilities["documentSymbolProvider"] = true;
    capabilities["foldingRangeProvider"] = true;
    capabilities["selectionRangeProvider"] = true;
}

}

Feature outline_feature() {
    return {methods_of_outline, announce_outline};
}

}
