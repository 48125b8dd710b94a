// Values that stand for the line of the same label above them, as in a list by hand.
#include "compiler/stages/model/settle_blocks.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/stages/model/messages.hpp"
#include "compiler/trade/guessed_labels.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <map>
#include <string>

namespace quoin::model {

void read_dittos(std::vector<syntax::Block>& blocks, Diagnostics& diagnostics) {
    std::map<std::string, std::string, std::less<>> above; // by label
    for (syntax::Block& block : blocks)
        for (syntax::Node& node : block) {
            if (node.kind != syntax::Node::Kind::field || node.value.slices.size() != 1) continue;
            if (!trade::find_word(node.label.text)) continue;
            std::string& text = node.value.slices.front().text;
            const auto said = above.find(node.label.text);
            if (said == above.end() || !trade::is_ditto(text)) {
                above.insert_or_assign(node.label.text, text);
                continue;
            }
            const Place place = node.value.place();
            diagnostics.error(place,
                              fill<messages::ditto>(in_quotes(text), node.label.text, said->second),
                              {{place, said->second}});
            text = said->second;
        }
}

}
