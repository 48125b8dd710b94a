#include "compiler/stages/syntax/line_warnings.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/stages/syntax/line_mends.hpp"
#include "compiler/stages/syntax/line_words.hpp"
#include "compiler/stages/syntax/messages.hpp"

#include <string>

namespace quoin::syntax {

void warn_of_indented_label(const Node& node, const Slice& text, Diagnostics& diagnostics) {
    const std::size_t colon = text.text.find(':');
    if (colon == std::string::npos || text.place.line == node.value.slices.back().place.line)
        return;
    const std::string label = text.text.substr(0, colon);
    if (!is_label_or_guess(folded_label(label))) return;
    diagnostics.warning(text.place, fill<messages::indented_label>(label),
                        mend_indentation(text.text, text.place));
}

void warn_of_numbered_comment(const Node* above, const Slice& text, Diagnostics& diagnostics) {
    const std::string_view words = trimmed(text.text);
    if (above && above->kind == Node::Kind::bullet && !words.empty() && is_figure(words.front()))
        diagnostics.warning(text.place, fill<messages::numbered_comment>());
}

void warn_of_foreign_heading(std::string_view line, const Place& place, Diagnostics& diagnostics) {
    const std::string_view title = foreign_title(line);
    if (!title.empty())
        diagnostics.warning(place, fill<messages::foreign_heading>(in_quotes(line), title));
}

}
