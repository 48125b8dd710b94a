#include "compiler/stages/model/guesses.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/stages/model/messages.hpp"
#include "compiler/trade/guessed_labels.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <string>

namespace quoin::model {
namespace {

std::string title_of(std::string label) {
    std::ranges::replace(label, '-', ' ');
    return capitalised(std::move(label));
}

// From the line's start up to its value.
Place before_value(const syntax::Node& node) {
    const Place value = node.value.place();
    return {value.file, node.place.line, 1, value.column - 1};
}

bool is_guess(const syntax::Node& node) {
    return node.kind == syntax::Node::Kind::field && node.tags.empty() &&
           node.value.slices.size() == 1;
}

}

void report_guess(const syntax::Node& node, std::string_view meant, Diagnostics& diagnostics) {
    diagnostics.error(node.label.place,
                      fill<messages::guessed_label>(in_quotes(node.label.text), meant),
                      {{node.label.place, std::string(meant)}});
}

bool report_other_meaning(const syntax::Node& node, Diagnostics& diagnostics) {
    const std::string& label = node.label.text;
    if (trade::means_bullets(label)) {
        const bool here = node.value.place().line == node.place.line;
        diagnostics.error(node.label.place, fill<messages::guessed_bullets>(in_quotes(label)),
                          here ? Edits{{before_value(node), "- "}} : Edits{});
        return true;
    }
    if (!trade::means_section(label)) return false;
    diagnostics.error(node.label.place,
                      fill<messages::guessed_section>(in_quotes(label), title_of(label)));
    return true;
}

bool are_range(const syntax::Node& from, const syntax::Node& to) {
    return is_guess(from) && is_guess(to) && trade::begins_range(from.label.text) &&
           trade::ends_range(to.label.text);
}

void report_range(const syntax::Node& from, const syntax::Node& to, trade::Holds holds,
                  Diagnostics& diagnostics) {
    const std::string_view label = trade::meant_in(holds, from.label.text).value_or("dates");
    const std::string dates = from.value.joined() + " - " + to.value.joined();
    Place whole = to.place; // with its line end
    ++whole.length;
    diagnostics.error(
        from.label.place,
        fill<messages::range_on_two_lines>(from.label.text, to.label.text, label, dates),
        {{from.label.place, std::string(label)}, {from.value.place(), dates}, {whole, ""}});
}

}
