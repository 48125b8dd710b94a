// The syntax tree's own forms: as markup, and as a dump for tests and bug reports.
#include "compiler/stages/syntax/tree.hpp"

#include "compiler/stages/syntax/line_words.hpp"
#include "compiler/trade/section_titles.hpp"

#include <fmt/format.h>

#include <string_view>

namespace quoin::syntax {

namespace {

void print_tags(const Node& node, std::string& out) {
    if (node.tags.empty()) return;
    for (const char* before = " {"; const TagMark& tag : node.tags) {
        out += before;
        if (tag.leaves_out) out += '!';
        out += tag.name;
        before = " ";
    }
    out += '}';
}

// A bullet that goes on, and begins as a title or a label does: right behind the dash it would open
// a section or an entry.
bool begins_below_dash(const Node& node) {
    const std::vector<Slice>& slices = node.value.slices;
    return node.kind == Node::Kind::bullet && slices.size() > 1 &&
           (slices.front().text.find(':') != std::string::npos ||
            trade::is_section_title(bare_title(slices.front().text)));
}

void print_node(const Node& node, std::string& out) {
    if (node.kind == Node::Kind::comment) {
        out += '#' + node.value.joined() + '\n';
        return;
    }
    if (node.kind == Node::Kind::field) out += node.spelled + ':';
    if (node.kind == Node::Kind::bullet) out.append(static_cast<std::size_t>(node.level), '-');
    const char* before = node.kind == Node::Kind::bare ? ""
                         : begins_below_dash(node)     ? "\n  "
                                                       : " ";
    for (const Slice& slice : node.value.slices) {
        out += before + slice.text;
        before = "\n  ";
    }
    print_tags(node, out);
    out += '\n';
}

// Below a blank line a word that is a title would open a section, right below one it is text.
bool stands_right_below(const Block& block, bool first) {
    return first && !block.empty() && block.front().kind == Node::Kind::bare;
}

void print_blocks(const std::vector<Block>& blocks, std::string& out) {
    for (const Block& block : blocks) {
        if (!out.empty() && !stands_right_below(block, &block == &blocks.front())) out += '\n';
        for (const Node& node : block)
            print_node(node, out);
    }
}

std::string in_quotation_marks(std::string_view text) {
    std::string out = "\"";
    for (const char c : text) {
        if (c == '"' || c == '\\') out += '\\';
        out += c;
    }
    return out += '"';
}

class Dump {
public:
    explicit Dump(bool places) : places_(places) {}

    std::string run(const Tree& tree) {
        out_ += "heading\n";
        dump_blocks(tree.heading);
        for (const SectionTree& section : tree.sections) {
            out_ += "section\n";
            dump_node(section.opening, 1);
            dump_blocks(section.blocks);
        }
        return std::move(out_);
    }

private:
    void dump_blocks(const std::vector<Block>& blocks) {
        for (const Block& block : blocks) {
            out_ += "  block\n";
            for (const Node& node : block)
                dump_node(node, 2);
        }
    }

    void dump_node(const Node& node, std::size_t depth) {
        out_.append(2 * depth, ' ');
        if (node.kind == Node::Kind::comment) out_ += "comment";
        if (node.kind == Node::Kind::bullet) out_ += fmt::format("bullet {}", node.level);
        if (node.kind == Node::Kind::bare) out_ += "bare";
        if (node.kind == Node::Kind::field)
            out_ += fmt::format("field {} {}", in_quotation_marks(node.label.text),
                                in_quotation_marks(node.spelled));
        if (places_) {
            out_ += at(node.place);
            if (node.kind == Node::Kind::field) out_ += " label" + at(node.label.place);
        }
        for (const Slice& slice : node.value.slices)
            dump_piece(in_quotation_marks(slice.text), slice.place);
        for (const TagMark& tag : node.tags)
            dump_piece((tag.leaves_out ? "{!" : "{") + tag.name + '}', tag.place);
        out_ += '\n';
    }

    void dump_piece(const std::string& text, const Place& place) {
        out_ += ' ' + text;
        if (places_) out_ += at(place);
    }

    static std::string at(const Place& place) {
        return fmt::format("@{}:{}+{}", place.line, place.column, place.length);
    }

    bool places_;
    std::string out_;
};

}

void take_off_front(Slice& slice, std::size_t count) {
    slice.text.erase(0, count);
    slice.place.column += static_cast<std::uint32_t>(count);
    slice.place.length -= static_cast<std::uint32_t>(count);
}

std::string Value::joined() const {
    std::string text;
    for (const Slice& slice : slices) {
        if (&slice != &slices.front()) text += ' ';
        text += slice.text;
    }
    return text;
}

Place Value::place() const {
    return slices.empty() ? Place{} : slices.front().place;
}

Node section_node(const Place& place) {
    Node node;
    node.place = place;
    node.spelled = "section";
    node.label = {node.spelled, {place.file, place.line, 1, 0}};
    return node;
}

bool Value::empty() const {
    return slices.empty();
}

std::string print(const Tree& tree) {
    std::string out;
    print_blocks(tree.heading, out);
    for (const SectionTree& section : tree.sections) {
        if (!out.empty()) out += '\n';
        print_node(section.opening, out);
        print_blocks(section.blocks, out);
    }
    return out;
}

std::string dump(const Tree& tree, bool places) {
    return Dump(places).run(tree);
}

}
