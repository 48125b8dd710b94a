// Actions on the grammar of lines: what is matched becomes a tree, what is wrong a diagnostic.
#include "compiler/stages/syntax/parse.hpp"

#include "compiler/stages/syntax/tree_builder.hpp"
#include "grammar/lines.hpp"

namespace quoin::syntax {

namespace {

namespace lines = grammar::lines;
namespace pegtl = tao::pegtl;

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
        builder.template report<Rule>(builder.matched(in), severity);
    }
};

// Reports what the rule matched and goes on reading from it.
template<typename Rule, void (TreeBuilder::*Member)(const Slice&)>
struct ReportAndRead {
    template<typename Input>
    static void apply(const Input& in, TreeBuilder& builder) {
        const Slice found = builder.matched(in);
        builder.report<Rule>(found);
        (builder.*Member)(found);
    }
};

template<>
struct LineAction<lines::blank> : CallMember<&TreeBuilder::end_block> {};
template<>
struct LineAction<lines::comment_text> : ReadSlice<&TreeBuilder::comment> {};
template<>
struct LineAction<lines::section_label> : ReadSlice<&TreeBuilder::begin_field> {};
template<>
struct LineAction<lines::field_label> : ReadSlice<&TreeBuilder::begin_field> {};
template<>
struct LineAction<lines::bare_start> : CallMember<&TreeBuilder::begin_bare> {};
template<>
struct LineAction<lines::bullet_dashes> : ReadSlice<&TreeBuilder::begin_bullet> {};
template<typename Piece>
struct LineAction<lines::slice<Piece>> : TakeSlice<&TreeBuilder::slice> {};
template<>
struct LineAction<lines::tag> : ReadSlice<&TreeBuilder::tag> {};
template<>
struct LineAction<lines::node_end> : CallMember<&TreeBuilder::end_node> {};

template<>
struct LineAction<lines::section_without_title>
    : ReportAndRead<lines::section_without_title, &TreeBuilder::open_untitled> {};
template<>
struct LineAction<lines::field_without_value> : ReadSlice<&TreeBuilder::field_without_value> {};
template<>
struct LineAction<lines::bullet_without_text> : Report<lines::bullet_without_text> {};
template<>
struct LineAction<lines::skipped> : CallMember<&TreeBuilder::drop_node> {};
template<>
struct LineAction<lines::nothing_tagged> : Report<lines::nothing_tagged> {};
template<>
struct LineAction<lines::line_of_dashes> : Report<lines::line_of_dashes> {};
template<>
struct LineAction<lines::bullet_too_deep> : Report<lines::bullet_too_deep> {};
template<>
struct LineAction<lines::bullet_without_space>
    : ReportAndRead<lines::bullet_without_space, &TreeBuilder::begin_mistyped_bullet> {};
template<>
struct LineAction<lines::foreign_bullet> : ReadSlice<&TreeBuilder::begin_foreign_bullet> {};
template<>
struct LineAction<lines::marked_label> {
    template<typename Input>
    static bool apply(const Input& in, TreeBuilder& builder) {
        return builder.begin_marked_field(builder.matched(in));
    }
};
template<>
struct LineAction<lines::foreign_comment> : Report<lines::foreign_comment> {};
template<>
struct LineAction<lines::indented_bullet> : Report<lines::indented_bullet, Severity::warning> {};
template<>
struct LineAction<lines::equals_for_colon> : ReadSlice<&TreeBuilder::begin_equals_field> {};
template<>
struct LineAction<lines::foreign_colon>
    : ReportAndRead<lines::foreign_colon, &TreeBuilder::begin_mistyped_field> {};
template<>
struct LineAction<lines::fold_of_nothing> : Report<lines::fold_of_nothing> {};
template<>
struct LineAction<lines::unknown_line> : Report<lines::unknown_line> {};
template<>
struct LineAction<lines::conflict_line> : ReadSlice<&TreeBuilder::conflict> {};
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
    const PulledOut pulled =
        braces == Braces::tags ? pull_out(source) : PulledOut{source.text, {}, {}};
    TreeBuilder builder(source, file, braces, pulled, diagnostics);
    pegtl::memory_input in(pulled.text, source.name);
    if (braces == Braces::tags)
        pegtl::parse<lines::tagged_file, LineAction>(in, builder);
    else
        pegtl::parse<lines::plain_file, LineAction>(in, builder);
    return builder.finish();
}

}
