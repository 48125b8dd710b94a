// Sections: the title, what stands right under it, its entries, and files taken in between.
#include "compiler/stages/model/build_steps.hpp"

#include "compiler/stages/model/messages.hpp"
#include "compiler/stages/model/odd_values.hpp"
#include "compiler/stages/model/settle_blocks.hpp"
#include "compiler/stages/model/text_pieces.hpp"
#include "compiler/trade/section_titles.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace quoin::model {
namespace {

struct SectionOpening { // a section and what its first lines state
    Section section;
    bool stated = false; // `holds:` was there and could be read
    bool faulty = false; // it was there and could not
    bool column = false;
};

bool is_comment(const syntax::Node& node) {
    return node.kind == syntax::Node::Kind::comment;
}

// A block that takes in files rather than making an entry.
bool is_include(Nodes block) {
    return std::ranges::any_of(
               block, [](const syntax::Node& node) { return is_label(node, "include"); }) &&
           std::ranges::all_of(block, [](const syntax::Node& node) {
               return is_comment(node) || is_label(node, "include");
           });
}

void read_holds(const syntax::Node& node, SectionOpening& opening, Diagnostics& diagnostics) {
    const JoinedValue value{node.value};
    const auto kind = trade::named<trade::Holds>(value.text());
    refuse_tags(node, diagnostics);
    if (opening.stated)
        return diagnostics.error(node.label.place, fill<messages::stands_twice>("holds"));
    if (!kind) {
        opening.faulty = true;
        return diagnostics.error(value.place(0, value.text().size()),
                                 fill<messages::section_cannot_hold>(
                                     in_quotes(value.text()),
                                     listed(trade::names_of<trade::Holds>()),
                                     did_you_mean(value.text(), trade::names_of<trade::Holds>())));
    }
    opening.section.holds = *kind;
    opening.stated = true;
}

void read_column(const syntax::Node& node, SectionOpening& opening, Diagnostics& diagnostics) {
    const JoinedValue value{node.value};
    refuse_tags(node, diagnostics);
    if (opening.column)
        return diagnostics.error(node.label.place, fill<messages::stands_twice>("column"));
    opening.column = true;
    opening.section.side = value.text() == "side";
    if (!opening.section.side)
        diagnostics.error(value.place(0, value.text().size()),
                          fill<messages::no_column>(in_quotes(value.text())));
}

// Reads the lines right under the title; what is left of the block may be an entry.
Nodes read_first_lines(Nodes block, SectionOpening& opening, Diagnostics& diagnostics) {
    while (!block.empty()) {
        if (is_label(block.front(), "holds"))
            read_holds(block.front(), opening, diagnostics);
        else if (is_label(block.front(), "column"))
            read_column(block.front(), opening, diagnostics);
        else if (!is_comment(block.front()))
            break;
        block = block.subspan(1);
    }
    return block;
}

SectionOpening open_section(const syntax::Node& node, Diagnostics& diagnostics) {
    SectionOpening opening;
    Section& section = opening.section;
    warn_of_odd_title(node, diagnostics);
    section.title = read_text(node.value, diagnostics);
    section.tags = read_tags(node.tags);
    section.place = node.value.place();
    return opening;
}

void report_untold(const Section& section, Diagnostics& diagnostics) {
    diagnostics.error(section.place, fill<messages::cannot_tell_what_it_holds>(
                                         in_quotes(section.title.plain()),
                                         listed(trade::names_of<trade::Holds>())));
}

// Where neither labels nor title tell, the title may be of another language: `Ausbildung`.
std::optional<trade::Holds> kind_of(std::span<const Nodes> blocks, const std::string& title,
                                    OtherLanguages& others) {
    const auto kind = infer_holds(blocks, title);
    if (kind && *kind != trade::Holds::other) return kind;
    const auto elsewhere = others.holds(title);
    return elsewhere ? infer_holds(blocks, std::string(trade::usual_title(*elsewhere))) : kind;
}

void add_entries(SectionOpening& opening, std::span<const Nodes> blocks, Build& build) {
    Diagnostics& diagnostics = build.diagnostics;
    Section& section = opening.section;
    if (opening.faulty) return; // how its lines are to be read is not known
    if (!opening.stated) {
        const auto kind = kind_of(blocks, section.title.plain(), build.others);
        if (!kind) return report_untold(section, diagnostics);
        section.holds = *kind;
    }
    std::vector<syntax::Block> settled =
        settled_blocks(blocks, section.holds, build.sources, diagnostics);
    read_dittos(settled, diagnostics);
    for (const syntax::Block& block : settled)
        if (auto entry = build_entry(block, section.holds, build.dates, diagnostics))
            section.entries.push_back(*std::move(entry));
}

// The blocks up to the first that takes in files; after that, an entry has no section.
std::size_t own_blocks(std::span<const Nodes> blocks) {
    return static_cast<std::size_t>(std::ranges::find_if(blocks, is_include) - blocks.begin());
}

void take_in_all(Build& build, std::span<const Nodes> blocks) {
    for (const Nodes block : blocks) {
        if (is_include(block)) {
            for (const syntax::Node& node : block)
                if (!is_comment(node)) take_in(build, node);
            continue;
        }
        const auto first = std::ranges::find_if_not(block, is_comment);
        if (first != block.end())
            build.diagnostics.error(first->place, fill<messages::entry_below_include>());
    }
}

void build_section(Build& build, const syntax::SectionTree& tree) {
    SectionOpening opening = open_section(tree.opening, build.diagnostics);
    std::vector<Nodes> blocks(tree.blocks.begin(), tree.blocks.end());
    if (!blocks.empty())
        blocks.front() = read_first_lines(blocks.front(), opening, build.diagnostics);
    const std::span<const Nodes> all{blocks};
    const std::size_t own = own_blocks(all);
    add_entries(opening, all.first(own), build);
    build.resume.sections.push_back(std::move(opening.section));
    take_in_all(build, all.subspan(own));
}

}

void build_sections(Build& build, const syntax::Tree& tree) {
    for (const syntax::SectionTree& section : tree.sections)
        build_section(build, section);
}

}
