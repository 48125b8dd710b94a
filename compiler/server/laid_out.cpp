#include "compiler/server/laid_out.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/server/spot.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <map>
#include <string_view>
#include <vector>

namespace quoin::server {

namespace {

constexpr std::size_t fold_column = 100; // characters

bool is_blank(std::string_view line) {
    return trimmed(line).empty();
}

// Whether a line may be folded before this word: what would then begin the line is read as nothing
// but words.
bool may_begin_fold(std::string_view text, std::size_t word) {
    const std::string_view own = text.substr(word, text.find(' ', word) - word);
    return !own.empty() && own.find(':') == own.npos && is_letter(first_character(own).code) &&
           word >= 2 && text[word - 2] != '\\' && text[word - 2] != ' ';
}

// Greedily, at single spaces.
std::string folded_at(std::string_view text) {
    std::string out;
    std::size_t column = 0, begin = 0;
    while (begin < text.size()) {
        std::size_t end = text.find(' ', begin + 1);
        if (end == text.npos) end = text.size();
        const std::string_view piece = text.substr(begin, end - begin); // with its space before it
        const std::size_t width = characters_in(piece);
        if (column + width > fold_column && begin > 0 && may_begin_fold(text, begin + 1)) {
            out += "\n  " + std::string(piece.substr(1));
            column = width + 1;
        } else {
            out += piece;
            column += width;
        }
        begin = end;
    }
    return out;
}

using LinesOfText = std::vector<std::string_view>;

LinesOfText lines_of_text(std::string_view text) {
    LinesOfText lines;
    const session::TextLines all(text);
    for (std::uint32_t line = 0; line < all.count(); ++line)
        lines.push_back(all.line(line));
    return lines;
}

std::map<std::uint32_t, const syntax::Node*> nodes_by_line(const syntax::Tree& tree) {
    std::map<std::uint32_t, const syntax::Node*> nodes;
    const auto add = [&](const syntax::Node& node) { nodes[node.place.line] = &node; };
    for (const syntax::Block& block : tree.heading)
        std::ranges::for_each(block, add);
    for (const syntax::SectionTree& section : tree.sections) {
        add(section.opening);
        for (const syntax::Block& block : section.blocks)
            std::ranges::for_each(block, add);
    }
    return nodes;
}

std::string beginning_of(const syntax::Node& node, std::string_view first, std::size_t& used) {
    if (node.kind == syntax::Node::Kind::bullet) {
        used = static_cast<std::size_t>(node.level);
        return std::string(used, '-') + ' ';
    }
    used = first.find(':') + 1;
    const std::string label(trimmed(first.substr(0, used - 1)));
    return (trade::find_word(node.label.text) ? lower_case(label) : label) + ": ";
}

class LayingOut {
public:
    explicit LayingOut(const std::string& text)
        : lines_(lines_of_text(text)), own_(own_tree({.text = text})),
          nodes_(nodes_by_line(own_.tree)) {}

    std::string run() {
        for (std::size_t line = 0; line < lines_.size();)
            line = lay_out(line);
        while (out_.ends_with("\n\n"))
            out_.pop_back();
        return std::move(out_);
    }
    const syntax::Tree& tree() const { return own_.tree; }

private:
    void add(std::string_view line) {
        if (line.empty() && (out_.empty() || out_.ends_with("\n\n"))) return;
        out_ += line;
        out_ += '\n';
    }

    // The lines that go on with the one at `line`.
    std::size_t end_of(std::size_t line) const {
        ++line;
        while (line < lines_.size() && !is_blank(lines_[line]) &&
               (lines_[line].starts_with(' ') || lines_[line].starts_with('\t')))
            ++line;
        return line;
    }

    // Returns the next line to look at.
    std::size_t lay_out(std::size_t line) {
        const auto known = nodes_.find(static_cast<std::uint32_t>(line + 1));
        const bool is_value = known != nodes_.end() && is_laid_out(*known->second);
        if (!is_value) {
            add(is_blank(lines_[line]) ? std::string_view{} : lines_[line]);
            return line + 1;
        }
        const syntax::Node& node = *known->second;
        const std::size_t end = end_of(line);
        std::size_t used = 0;
        const std::string begin = beginning_of(node, lines_[line], used);
        std::string value(trimmed(lines_[line].substr(used)));
        for (std::size_t more = line + 1; more < end; ++more)
            value += (value.empty() ? "" : " ") + std::string(trimmed(lines_[more]));
        if (node.label.text == "section" && !out_.empty() && !is_comment_above(line)) add({});
        add(trimmed(folded_at(begin + value)));
        return end;
    }

    bool is_comment_above(std::size_t line) const {
        return line > 0 && lines_[line - 1].starts_with('#');
    }

    static bool is_laid_out(const syntax::Node& node) {
        return node.kind == syntax::Node::Kind::field || node.kind == syntax::Node::Kind::bullet;
    }

    LinesOfText lines_;
    OwnTree own_;
    std::map<std::uint32_t, const syntax::Node*> nodes_;
    std::string out_;
};

// With known labels as they are folded, and values as if they were not: how they were typed is
// layout.
std::string dump_without_case(syntax::Tree tree) {
    const auto look_at = [](syntax::Node& node) {
        if (trade::find_word(node.label.text)) node.spelled = node.label.text;
        node.value.slices = {{node.value.joined(), {}}};
    };
    for (syntax::Block& block : tree.heading)
        std::ranges::for_each(block, look_at);
    for (syntax::SectionTree& section : tree.sections) {
        look_at(section.opening);
        for (syntax::Block& block : section.blocks)
            std::ranges::for_each(block, look_at);
    }
    return dump(tree);
}

}

std::string laid_out(const std::string& text) {
    LayingOut once(text);
    std::string first = once.run();
    LayingOut again(first);
    if (again.run() != first || dump_without_case(once.tree()) != dump_without_case(again.tree()))
        return text;
    return first;
}

}
