// Entries that blank lines have torn apart. A block is the rest of the entry above it if it holds
// nothing that could be an entry by itself.
#include "compiler/stages/model/settle_blocks.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/stages/model/messages.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <set>
#include <string>

namespace quoin::model {
namespace {

struct Contents {
    std::set<std::string_view> labels; // of those that stand once in an entry
    bool names = false;                // one of them names an entry
    bool bullets = false;
    bool readable = true; // nothing but fields of the kind, bullets and comments
    std::size_t lines = 0;

    bool has(std::string_view label) const { return labels.contains(label); }

    void take_in(const Contents& more) {
        labels.insert(more.labels.begin(), more.labels.end());
        names = names || more.names;
        bullets = bullets || more.bullets;
        readable = readable && more.readable;
        lines += more.lines;
    }
};

Contents contents_of(std::span<const syntax::Node> block, trade::Holds holds) {
    Contents contents;
    for (const syntax::Node& node : block) {
        if (node.kind == syntax::Node::Kind::comment) continue;
        ++contents.lines;
        contents.bullets = contents.bullets || node.kind == syntax::Node::Kind::bullet;
        if (node.kind == syntax::Node::Kind::bullet) continue;
        const trade::Word* word = trade::find_word(node.label.text);
        const auto* field = word ? std::get_if<trade::FieldName>(&word->means) : nullptr;
        if (node.kind != syntax::Node::Kind::field || !field || !word->kinds.has(holds)) {
            contents.readable = false;
            continue;
        }
        if (!word->repeats) contents.labels.insert(word->label);
        contents.names =
            contents.names || trade::names_entry(*word) || *field == trade::FieldName::title;
    }
    return contents;
}

// Of the two labels that name an entry together the block below has the one that is missing above.
bool completes(const Contents& above, const Contents& below) {
    constexpr std::pair<std::string_view, std::string_view> together[]{
        {"role", "employer"}, {"school", "degree"}, {"activity", "role"}};
    return std::ranges::any_of(together, [&](const auto& pair) {
        return (above.has(pair.first) && !above.has(pair.second) && below.has(pair.second) &&
                !below.has(pair.first)) ||
               (above.has(pair.second) && !above.has(pair.first) && below.has(pair.first) &&
                !below.has(pair.second));
    });
}

bool shares_label(const Contents& above, const Contents& below) {
    return std::ranges::any_of(below.labels,
                               [&](const std::string_view label) { return above.has(label); });
}

bool is_rest_of(const Contents& above, const Contents& below) {
    if (!above.readable || !below.readable || below.lines == 0) return false;
    if (!above.names && !above.bullets) return false;
    if (shares_label(above, below)) return false;
    return below.names ? completes(above, below) && !above.bullets : true;
}

// The blank lines right above a line.
std::vector<std::uint32_t> blank_lines_above(const Place& place, const Sources& sources) {
    std::vector<std::uint32_t> lines;
    for (std::uint32_t line = place.line - 1; line > 0; --line) {
        if (!trimmed(sources.file(place.file).line(line)).empty()) break;
        lines.push_back(line);
    }
    std::ranges::reverse(lines);
    return lines;
}

class TornEntry { // one entry, and the blank lines within it
public:
    TornEntry(Nodes first, Contents contents)
        : block_(first.begin(), first.end()), contents_(std::move(contents)) {}

    void take_in(Nodes rest, const Contents& contents, const Sources& sources) {
        contents_.take_in(contents);
        const auto lines = blank_lines_above(rest.front().place, sources);
        blank_.insert(blank_.end(), lines.begin(), lines.end());
        block_.insert(block_.end(), rest.begin(), rest.end());
    }

    void report(const Sources& sources, Diagnostics& diagnostics) const {
        constexpr std::size_t most_shown = 6;
        const auto number_of = [](std::uint32_t line) { return std::to_string(line); };
        if (blank_.empty()) return;
        const std::uint32_t file = block_.front().place.file;
        Edits mend;
        for (const std::uint32_t line : blank_) {
            const auto size = static_cast<std::uint32_t>(sources.file(file).line(line).size());
            mend.push_back({{file, line, 1, size + 1}, ""});
        }
        diagnostics.warning({file, blank_.front(), 0, 0},
                            blank_.size() == 1 ? fill<messages::torn_by_a_line>(blank_.front())
                                               : fill<messages::torn_by_lines>(joined(
                                                     blank_, " and ", most_shown, number_of)),
                            std::move(mend));
    }

    const Contents& contents() const { return contents_; }
    syntax::Block take() { return std::move(block_); }

private:
    syntax::Block block_;
    Contents contents_;
    std::vector<std::uint32_t> blank_;
};

}

std::vector<syntax::Block> closed_up(std::span<const Nodes> blocks, trade::Holds holds,
                                     const Sources& sources, Diagnostics& diagnostics) {
    std::vector<TornEntry> entries;
    const bool may_be_torn = !trade::has_groups(holds) && holds != trade::Holds::prose;
    for (const Nodes block : blocks) {
        Contents contents = contents_of(block, holds);
        if (may_be_torn && !entries.empty() && is_rest_of(entries.back().contents(), contents))
            entries.back().take_in(block, contents, sources);
        else
            entries.emplace_back(block, std::move(contents));
    }
    std::vector<syntax::Block> whole;
    for (TornEntry& entry : entries) {
        entry.report(sources, diagnostics);
        whole.push_back(entry.take());
    }
    return whole;
}

}
