// The heading block: contact fields, settings, and files whose sections come first.
#include "compiler/stages/model/build_steps.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/suggest.hpp"
#include "compiler/stages/model/bare_advice.hpp"
#include "compiler/stages/model/guesses.hpp"
#include "compiler/stages/model/messages.hpp"
#include "compiler/stages/model/odd_values.hpp"
#include "compiler/stages/model/settle_blocks.hpp"
#include "compiler/trade/guessed_labels.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace quoin::model {
namespace {

void report_misplaced(const syntax::Node& node, const trade::Word* word, bool alone,
                      Diagnostics& diagnostics) {
    const std::string label = in_quotes(node.label.text);
    if (!word) {
        if (report_in_heading(node, alone, diagnostics)) return;
        if (report_contacts(node, diagnostics)) return;
        auto candidates = trade::heading_labels();
        candidates.push_back("section");
        std::string mend = did_you_mean(node.label.text, candidates);
        if (mend.empty()) mend = fill<messages::expected_in_heading>();
        return diagnostics.error(node.label.place, fill<messages::unknown_label>(label, mend));
    }
    if (const auto* directive = std::get_if<trade::Directive>(&word->means)) {
        return diagnostics.error(node.label.place,
                                 *directive == trade::Directive::for_tags
                                     ? fill<messages::belongs_in_entry>(label)
                                     : fill<messages::belongs_under_a_title>(label));
    }
    diagnostics.error(node.label.place, fill<messages::not_in_heading>(label, kinds_with(*word)));
}

void add_contact(const trade::Word& word, const syntax::Node& node, Build& build,
                 Diagnostics& diagnostics) {
    warn_of_odd_field(node, diagnostics);
    auto field = read_field(word, node, build.dates, diagnostics);
    if (!field) return;
    if (build.contact.add(word, field->tags, node, fill<messages::keep_one_contact>(), diagnostics))
        build.resume.heading.push_back(*std::move(field));
}

// What a label of the heading holds: a setting, a file to take in, or contact data.
void add_labelled(const trade::Word& word, const syntax::Node& node, Build& build,
                  Diagnostics& diagnostics) {
    if (const auto* setting = std::get_if<trade::SettingName>(&word.means)) {
        refuse_tags(node, diagnostics);
        return read_setting(*setting, node, build.resume.settings, diagnostics);
    }
    if (std::holds_alternative<trade::Directive>(word.means)) return take_in(build, node);
    add_contact(word, node, build, diagnostics);
}

// What a label that is none may stand for, by its words or as a slip: `Adress`.
std::optional<std::string_view> meant_by_label(std::string_view label) {
    if (const auto meant = trade::meant_in_heading(label)) return meant;
    const bool other = trade::find_word(label) || !trade::meant_by(label).empty() ||
                       trade::means_bullets(label) || trade::means_section(label) ||
                       !trade::has_no_place(label).empty();
    if (other) return std::nullopt;
    return slip_of(label, trade::heading_labels());
}

void add_node(const syntax::Node& node, bool alone, Build& build) {
    if (node.kind == syntax::Node::Kind::comment) return;
    if (node.kind == syntax::Node::Kind::bullet)
        return build.diagnostics.error(node.place, fill<messages::bullet_in_heading>());
    if (node.kind == syntax::Node::Kind::bare) {
        const bool has_name = build.resume.find(trade::FieldName::name) != nullptr;
        if (const auto meant = report_bare_line_in_heading(node, has_name, build.diagnostics))
            add_labelled(*trade::find_word(meant->label.text), *meant, build, build.diagnostics);
        return;
    }
    if (report_empty_value(node, build.diagnostics)) return;
    const trade::Word* word = trade::find_word(node.label.text);
    if (word && word->heading) return add_labelled(*word, node, build, build.diagnostics);
    const auto meant = meant_by_label(node.label.text);
    if (!meant) return report_misplaced(node, word, alone, build.diagnostics);
    if (*meant == "link" && report_no_address(node, build.diagnostics)) return;
    Diagnostics found;
    report_guess(node, *meant, found);
    add_labelled(*trade::find_word(*meant), node, build, found);
    report_together(found, build.diagnostics);
}

}

bool is_label(const syntax::Node& node, std::string_view label) {
    return node.kind == syntax::Node::Kind::field && node.label.text == label;
}

void build_heading(Build& build, const syntax::Tree& tree) {
    for (const syntax::Block& block : tree.heading) {
        const syntax::Block lines = unfolded(block, build.sources);
        for (Nodes rest{lines}; !rest.empty();) {
            const std::size_t pieces = count_pieces(rest, true);
            const auto whole =
                pieces > 0
                    ? std::optional{report_pieces(rest.first(pieces), true, build.diagnostics)}
                    : std::nullopt;
            add_node(whole ? *whole : rest.front(), lines.size() == 1, build);
            rest = rest.subspan(std::max<std::size_t>(pieces, 1));
        }
    }
}

void build_included_heading(Build& build, const syntax::Tree& tree) {
    const std::string& first = build.sources.file(build.open.front().file).name;
    for (const syntax::Block& block : tree.heading) {
        for (const syntax::Node& node : block) {
            if (node.kind == syntax::Node::Kind::comment) continue;
            if (is_label(node, "include"))
                take_in(build, node);
            else if (node.kind != syntax::Node::Kind::field)
                add_node(node, false, build);
            else if (const trade::Word* word = trade::find_word(node.label.text);
                     word && word->heading)
                build.diagnostics.error(node.label.place,
                                        fill<messages::heading_in_included_file>(
                                            in_quotes(word->label), in_quotes(first)));
            else
                report_misplaced(node, word, false, build.diagnostics);
        }
    }
}

}
