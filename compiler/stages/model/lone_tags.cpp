// Braces at a line's end are tags, which nobody sees on the page; who writes code means text by
// them.
#include "compiler/stages/model/odd_values.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/stages/model/build_steps.hpp"
#include "compiler/stages/model/messages.hpp"

#include <array>
#include <cstdint>
#include <functional>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>

namespace quoin::model {
namespace {

// Words that no line ends in.
constexpr std::array<std::string_view, 22> leading_words{
    "a",     "an", "and", "as", "by",  "called", "for", "from", "in",   "into",  "like",
    "named", "of", "on",  "or", "the", "to",     "use", "used", "uses", "using", "with"};

bool leads_on(const std::string& text) {
    const std::string_view before = trimmed(text);
    const std::size_t space = before.rfind(' ');
    const std::string_view last =
        space == std::string_view::npos ? before : before.substr(space + 1);
    return is_one_of(last.size() > 1 ? lower_case(last) : std::string(last), leading_words);
}

struct TagUse {                               // in a whole file
    std::map<std::string, std::size_t> lines; // by the tag's name
    bool known = false;                       // what is there shows that tags are meant

    void look(const syntax::Node& node, std::set<std::string>& labels) {
        const std::string& label = node.label.text;
        known = known || label == "for" || label == "include" ||
                (label == "section" && !node.tags.empty());
        for (const syntax::TagMark& tag : node.tags) {
            const std::string name = lower_case(tag.name);
            known = known || tag.leaves_out || name == keep_tag || ++lines[name] > 1;
        }
        if (!label.empty() && !labels.insert(label).second && !lines.empty())
            known = true; // another wording of the same
    }
};

void each_line(const syntax::Tree& tree,
               const std::function<void(const syntax::Node&, std::size_t block)>& visit) {
    std::size_t block = 0;
    for (const syntax::Block& lines : tree.heading) // blank lines mean nothing there
        for (const syntax::Node& node : lines)
            visit(node, block);
    for (const syntax::SectionTree& section : tree.sections) {
        visit(section.opening, ++block);
        for (const syntax::Block& lines : section.blocks) {
            ++block;
            for (const syntax::Node& node : lines)
                visit(node, block);
        }
    }
}

std::set<std::uint32_t> lines_with_errors(std::uint32_t file, const Diagnostics& diagnostics) {
    std::set<std::uint32_t> lines;
    for (const Diagnostic& one : diagnostics.all())
        if (one.severity == Severity::error && one.place.file == file) lines.insert(one.place.line);
    return lines;
}

void warn(const syntax::Node& node, Diagnostics& diagnostics) {
    const syntax::TagMark& tag = node.tags.front();
    diagnostics.warning(tag.place, fill<messages::tag_or_text>(tag.name, tag.name));
}

}

void warn_of_lone_tags(const syntax::Tree& tree, Diagnostics& diagnostics) {
    TagUse use;
    std::set<std::string> labels; // with tags, in one block
    std::size_t current = 0;
    each_line(tree, [&](const syntax::Node& node, std::size_t block) {
        if (std::exchange(current, block) != block) labels.clear();
        use.look(node, labels);
    });
    const std::set<std::uint32_t> told = lines_with_errors(tree.file, diagnostics);
    each_line(tree, [&](const syntax::Node& node, std::size_t) {
        if (told.contains(node.place.line)) return;
        if (node.tags.empty() || node.value.empty() || node.tags.front().leaves_out) return;
        if (!use.known || leads_on(node.value.slices.back().text)) warn(node, diagnostics);
    });
}

}
