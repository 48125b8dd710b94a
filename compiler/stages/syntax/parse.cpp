// Actions on the grammar of lines: what is matched becomes a tree, what is wrong a diagnostic.
#include "compiler/stages/syntax/parse.hpp"

#include "compiler/stages/syntax/messages.hpp"
#include "grammar/lines.hpp"
#include "grammar/messages.hpp"

#include <algorithm>
#include <optional>
#include <string_view>
#include <utility>

namespace quoin::syntax {

namespace {

namespace lines = grammar::lines;
namespace pegtl = tao::pegtl;

// A file of another kind given by mistake has something wrong on every line.
constexpr std::size_t most_faults = 200;

// A label as tables have it: ASCII letters in lower case, runs of spaces made one `-`.
std::string folded_label(std::string_view spelled) {
    std::string folded;
    bool space = false;
    for (const char c : spelled) {
        const bool is_space = c == ' ' || c == '\t';
        if (space && !is_space) folded += '-';
        if (!is_space) folded += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        space = is_space;
    }
    return folded;
}

class TreeBuilder {
public:
    TreeBuilder(const SourceFile& source, std::uint32_t file, Diagnostics& diagnostics)
        : source_(source), diagnostics_(diagnostics) {
        tree_.file = file;
    }

    void comment(const Slice& text) {
        Node node = on_line(text.place, Node::Kind::comment);
        if (!text.text.empty()) node.value.slices.push_back(text);
        // Between a line and its fold it stands after both.
        (node_ ? comments_ : block_).push_back(std::move(node));
    }

    void begin_field(Slice label) {
        node_ = on_line(label.place, Node::Kind::field);
        node_->spelled = std::move(label.text);
        node_->label = {folded_label(node_->spelled), label.place};
    }

    void begin_bullet(const Slice& dashes) {
        node_ = on_line(dashes.place, Node::Kind::bullet);
        node_->level = static_cast<int>(dashes.text.size());
    }

    void slice(Slice text) { node_->value.slices.push_back(std::move(text)); }

    void tag(const Slice& word) {
        const bool leaves_out = word.text.starts_with('!');
        node_->tags.push_back({word.text.substr(leaves_out ? 1 : 0), leaves_out, word.place});
    }

    void end_node() {
        Node node = *std::exchange(node_, std::nullopt);
        if (node.kind == Node::Kind::field && node.label.text == "section") {
            end_block();
            tree_.sections.push_back({std::move(node), {}});
        } else {
            block_.push_back(std::move(node));
        }
        std::move(comments_.begin(), comments_.end(), std::back_inserter(block_));
        comments_.clear();
    }

    void end_block() {
        if (block_.empty()) return;
        auto& blocks = tree_.sections.empty() ? tree_.heading : tree_.sections.back().blocks;
        blocks.push_back(std::exchange(block_, {}));
    }

    void fault(Severity severity, Place place, std::string text) {
        if (++faults_ > most_faults) return;
        if (severity == Severity::warning)
            diagnostics_.warning(place, std::move(text));
        else
            diagnostics_.error(place, std::move(text));
    }

    Tree finish() {
        end_block();
        if (faults_ > most_faults)
            diagnostics_.note({.file = tree_.file},
                              fill<messages::faults_left_out>(faults_, most_faults));
        return std::move(tree_);
    }

    // What a rule matched, up to the end of its first line.
    template<typename Input>
    Slice matched(const Input& in) const {
        const pegtl::position at = in.position();
        const std::string text = in.string();
        std::string line = text.substr(0, text.find('\n'));
        const Place place{tree_.file, static_cast<std::uint32_t>(at.line),
                          static_cast<std::uint32_t>(at.column),
                          static_cast<std::uint32_t>(line.size())};
        return {std::move(line), place};
    }

private:
    Node on_line(const Place& place, Node::Kind kind) const {
        Node node;
        node.kind = kind;
        node.place = {place.file, place.line, 1,
                      static_cast<std::uint32_t>(source_.line(place.line).size())};
        return node;
    }

    const SourceFile& source_;
    Diagnostics& diagnostics_;
    Tree tree_;
    Block block_;                // the lines since the last blank one
    std::optional<Node> node_;   // the line being read
    std::vector<Node> comments_; // that stand between the line being read and its folds
    std::size_t faults_ = 0;
};

template<typename Rule>
struct LineAction : pegtl::nothing<Rule> {};

template<void (TreeBuilder::*Member)(Slice)>
struct TakeSlice {
    template<typename Input>
    static void apply(const Input& in, TreeBuilder& builder) {
        (builder.*Member)(builder.matched(in));
    }
};

template<void (TreeBuilder::*Member)(const Slice&)>
struct ReadSlice {
    template<typename Input>
    static void apply(const Input& in, TreeBuilder& builder) {
        (builder.*Member)(builder.matched(in));
    }
};

template<void (TreeBuilder::*Member)()>
struct CallMember {
    static void apply0(TreeBuilder& builder) { (builder.*Member)(); }
};

template<typename Rule, Severity severity = Severity::error>
struct Report {
    template<typename Input>
    static void apply(const Input& in, TreeBuilder& builder) {
        const Slice found = builder.matched(in);
        builder.fault(severity, found.place, worded<grammar::message<Rule>>(found.text));
    }
};

template<>
struct LineAction<lines::blank> : CallMember<&TreeBuilder::end_block> {};
template<>
struct LineAction<lines::comment_text> : ReadSlice<&TreeBuilder::comment> {};
template<>
struct LineAction<lines::section_label> : TakeSlice<&TreeBuilder::begin_field> {};
template<>
struct LineAction<lines::field_label> : TakeSlice<&TreeBuilder::begin_field> {};
template<>
struct LineAction<lines::bullet_dashes> : ReadSlice<&TreeBuilder::begin_bullet> {};
template<typename Piece>
struct LineAction<lines::slice<Piece>> : TakeSlice<&TreeBuilder::slice> {};
template<>
struct LineAction<lines::tag> : ReadSlice<&TreeBuilder::tag> {};
template<>
struct LineAction<lines::node_end> : CallMember<&TreeBuilder::end_node> {};

template<>
struct LineAction<lines::section_without_title> : Report<lines::section_without_title> {};
template<>
struct LineAction<lines::field_without_value> : Report<lines::field_without_value> {};
template<>
struct LineAction<lines::bullet_without_text> : Report<lines::bullet_without_text> {};
template<>
struct LineAction<lines::nothing_tagged> : Report<lines::nothing_tagged> {};
template<>
struct LineAction<lines::line_of_dashes> : Report<lines::line_of_dashes> {};
template<>
struct LineAction<lines::bullet_too_deep> : Report<lines::bullet_too_deep> {};
template<>
struct LineAction<lines::bullet_without_space> : Report<lines::bullet_without_space> {};
template<>
struct LineAction<lines::foreign_bullet> : Report<lines::foreign_bullet> {};
template<>
struct LineAction<lines::indented_bullet> : Report<lines::indented_bullet, Severity::warning> {};
template<>
struct LineAction<lines::equals_for_colon> : Report<lines::equals_for_colon> {};
template<>
struct LineAction<lines::foreign_colon> : Report<lines::foreign_colon> {};
template<>
struct LineAction<lines::label_without_colon> : Report<lines::label_without_colon> {};
template<>
struct LineAction<lines::fold_of_nothing> : Report<lines::fold_of_nothing> {};
template<>
struct LineAction<lines::unknown_line> : Report<lines::unknown_line> {};
template<>
struct LineAction<lines::tags_missing> : Report<lines::tags_missing> {};
template<>
struct LineAction<lines::tags_unclosed> : Report<lines::tags_unclosed> {};
template<>
struct LineAction<lines::tags_ill_formed> : Report<lines::tags_ill_formed> {};
template<>
struct LineAction<lines::tags_apart> : Report<lines::tags_apart> {};
template<>
struct LineAction<lines::tags_before_stop> : Report<lines::tags_before_stop> {};

}

Tree parse(const Sources& sources, std::uint32_t file, Diagnostics& diagnostics, Braces braces) {
    const SourceFile& source = sources.file(file);
    TreeBuilder builder(source, file, diagnostics);
    pegtl::memory_input in(source.text, source.name);
    if (braces == Braces::tags)
        pegtl::parse<lines::tagged_file, LineAction>(in, builder);
    else
        pegtl::parse<lines::plain_file, LineAction>(in, builder);
    return builder.finish();
}

}
