// Sections whose `section:` line is not there, or not whole. A line alone above an entry that
// cannot stand where it does is a title of the writer's own words: `Work stuff` between a school
// and a job. An entry above all sections stands in one of the usual title for what it is.
#include "compiler/stages/model/build_steps.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/stages/model/messages.hpp"
#include "compiler/stages/syntax/line_words.hpp"
#include "compiler/stages/syntax/messages.hpp"
#include "compiler/trade/guessed_labels.hpp"
#include "compiler/trade/section_titles.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace quoin::model {
namespace {

using Kind = syntax::Node::Kind;

bool is_lone_title(Nodes block) {
    constexpr std::size_t most_words = 5;
    const syntax::Node& node = block.front();
    if (block.size() > 1 || node.kind != Kind::bare || node.value.slices.size() != 1 ||
        !node.tags.empty())
        return false;
    const std::string_view title = syntax::bare_title(node.value.slices.front().text);
    return !title.empty() && !has_digit(title) && title.find_first_of(".,;:|@") == title.npos &&
           word_count(title) <= most_words;
}

// The word that a label stands for, as typed or as guessed; null if none is known.
const trade::Word* word_of(const syntax::Node& node) {
    if (node.kind != Kind::field) return nullptr;
    if (const trade::Word* word = trade::find_word(node.label.text)) return word;
    const auto meant = trade::meant_by(node.label.text);
    return meant.empty() ? nullptr : trade::find_word(meant.front());
}

// By a label that has no place above the first section.
bool names_an_entry(Nodes block) {
    return std::ranges::any_of(block, [](const syntax::Node& node) {
        const trade::Word* word = word_of(node);
        return word && trade::names_entry(*word) && !word->heading;
    });
}

// By labels none of which a section of the kind has.
bool names_other_entry(Nodes block, trade::Holds holds) {
    return std::ranges::none_of(block, [holds](const syntax::Node& node) {
        const trade::Word* word = word_of(node);
        return word && trade::names_entry(*word) && word->kinds.has(holds);
    });
}

// What a section holds by its own word, or by the blocks that it has so far.
std::optional<trade::Holds> kind_so_far(const syntax::SectionTree& section) {
    for (const syntax::Block& block : section.blocks)
        for (const syntax::Node& node : block)
            if (is_label(node, "holds")) return trade::named<trade::Holds>(node.value.joined());
    const std::string title = section.opening.value.joined();
    const std::vector<Nodes> blocks(section.blocks.begin(), section.blocks.end());
    return blocks.empty() ? trade::usual_holds(title) : infer_holds(blocks, title);
}

syntax::SectionTree section_titled(std::string title, const Place& place, const Place& line) {
    syntax::SectionTree section{syntax::section_node(line), {}};
    section.opening.value.slices.push_back({std::move(title), place});
    return section;
}

syntax::SectionTree opened_by(const syntax::Node& line, Diagnostics& diagnostics) {
    const syntax::Slice& found = line.value.slices.front();
    const std::string title(syntax::bare_title(found.text));
    diagnostics.error(line.place, fill<syntax::messages::title_alone>(in_quotes(found.text), title),
                      {{line.place, "section: " + title}});
    return section_titled(title, found.place, line.place);
}

// By what it holds; the first kind of those that the labels allow.
std::string usual_title(std::span<const syntax::Block> blocks) {
    const std::vector<Nodes> all(blocks.begin(), blocks.end());
    const std::string_view title =
        trade::usual_title(infer_holds(all, {}).value_or(trade::Holds::experience));
    return std::string(title.empty() ? trade::usual_title(trade::Holds::experience) : title);
}

// By a label, typed or guessed, that no entry has.
bool is_of_heading(const syntax::Node& node) {
    if (node.kind != Kind::field) return false;
    const auto of_heading = [](std::string_view label) {
        const trade::Word* word = trade::find_word(label);
        return word->heading && word->kinds.empty();
    };
    if (trade::find_word(node.label.text)) return of_heading(node.label.text);
    const auto meant = trade::meant_by(node.label.text);
    return !meant.empty() && std::ranges::all_of(meant, of_heading);
}

// By two lines at least, for one may be a label of the writer's own.
bool is_entry(Nodes block) {
    constexpr std::ptrdiff_t least_lines = 2;
    const auto is_of_entry = [](const syntax::Node& node) {
        return word_of(node) || node.kind == Kind::bullet;
    };
    return names_an_entry(block) && std::ranges::count_if(block, is_of_entry) >= least_lines;
}

bool is_entry_in_heading(Nodes block) {
    return is_entry(block) && std::ranges::none_of(block, is_of_heading);
}

// The blocks of the heading from such an entry on, taken off.
std::optional<syntax::SectionTree> untitled_in_heading(std::vector<syntax::Block>& heading,
                                                       Diagnostics& diagnostics) {
    const auto first = std::ranges::find_if(heading, is_entry_in_heading);
    if (first == heading.end()) return std::nullopt;
    const std::string title = usual_title({first, first + 1});
    const syntax::Node& line = first->front();
    const Place start{line.place.file, line.place.line, 1, 0};
    diagnostics.error(line.place, fill<messages::entry_in_heading>(title),
                      {{start, "section: " + title + "\n\n"}});
    syntax::SectionTree section = section_titled(title, line.place, line.place);
    section.blocks.assign(std::make_move_iterator(first), std::make_move_iterator(heading.end()));
    heading.erase(first, heading.end());
    return section;
}

void give_title(syntax::SectionTree& section) {
    if (section.opening.value.empty())
        section.opening.value.slices.push_back(
            {usual_title(section.blocks), section.opening.label.place});
}

class Parting { // of the blocks of a section, in one pass
public:
    Parting(std::vector<syntax::SectionTree>& sections, Diagnostics& diagnostics)
        : sections_(sections), diagnostics_(diagnostics) {}

    void part(syntax::SectionTree whole) {
        std::vector<syntax::Block> blocks = std::exchange(whole.blocks, {});
        begin(std::move(whole));
        for (std::size_t i = 0; i < blocks.size(); ++i)
            if (i + 1 < blocks.size() && opens_another(blocks[i], blocks[i + 1]))
                begin(opened_by(blocks[i].front(), diagnostics_));
            else
                add(std::move(blocks[i]));
    }

private:
    void begin(syntax::SectionTree section) {
        sections_.push_back(std::move(section));
        kind_.reset();
    }

    // An entry below a list stands in a section of its own.
    void add(syntax::Block block) {
        if (!sections_.back().blocks.empty() && is_entry(block) && kind() && has_groups(*kind()))
            begin(section_of_stray(block));
        sections_.back().blocks.push_back(std::move(block));
    }

    syntax::SectionTree section_of_stray(const syntax::Block& block) {
        const std::string title = usual_title({&block, 1});
        const Place& line = block.front().place;
        const bool stands = std::ranges::any_of(sections_, [&](const syntax::SectionTree& section) {
            return trade::usual_holds(section.opening.value.joined()) == trade::usual_holds(title);
        });
        const Place start{line.file, line.line, 1, 0};
        diagnostics_.error(line,
                           stands ? fill<messages::entry_strayed>(title)
                                  : fill<messages::entry_in_heading>(title),
                           stands ? Edits{} : Edits{{start, "section: " + title + "\n\n"}});
        return section_titled(title, line, line);
    }

    // What the section holds is told once, where first there is something to ask.
    std::optional<trade::Holds> kind() {
        if (!kind_) kind_ = kind_so_far(sections_.back());
        return *kind_;
    }

    bool opens_another(Nodes line, Nodes below) {
        return is_lone_title(line) && names_an_entry(below) && kind() &&
               names_other_entry(below, *kind());
    }

    std::vector<syntax::SectionTree>& sections_;
    Diagnostics& diagnostics_;
    std::optional<std::optional<trade::Holds>> kind_;
};

// The blocks of the heading from such a line on, taken off; the first line of all is the name.
std::optional<syntax::SectionTree> section_in_heading(std::vector<syntax::Block>& heading,
                                                      Diagnostics& diagnostics) {
    if (heading.empty()) return std::nullopt;
    const auto line =
        std::adjacent_find(heading.begin() + 1, heading.end(), [](Nodes block, Nodes below) {
            return is_lone_title(block) && names_an_entry(below);
        });
    if (line == heading.end()) return std::nullopt;
    syntax::SectionTree section = opened_by(line->front(), diagnostics);
    section.blocks.assign(std::make_move_iterator(line + 1),
                          std::make_move_iterator(heading.end()));
    heading.erase(line, heading.end());
    return section;
}

}

void open_sections(syntax::Tree& tree, Diagnostics& diagnostics) {
    std::vector<syntax::SectionTree> sections;
    Parting parting(sections, diagnostics);
    auto titled = section_in_heading(tree.heading, diagnostics);
    if (auto untitled = untitled_in_heading(tree.heading, diagnostics))
        parting.part(*std::move(untitled));
    if (titled) parting.part(*std::move(titled));
    for (syntax::SectionTree& section : tree.sections) {
        give_title(section);
        parting.part(std::move(section));
    }
    tree.sections = std::move(sections);
}

}
