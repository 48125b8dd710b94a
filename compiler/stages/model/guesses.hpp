// What is said of labels that people guess (compiler/trade/guessed_labels.hpp), with the mend.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/syntax/tree.hpp"
#include "compiler/trade/kinds.hpp"

#include <string_view>

namespace quoin::model {

// "'company' is 'employer' here"
void report_guess(const syntax::Node& node, std::string_view meant, Diagnostics& diagnostics);

// Of labels that stand for bullets or for a section; false if this one does not.
bool report_other_meaning(const syntax::Node& node, Diagnostics& diagnostics);

// `from:` and `to:` one below the other, which are one line of dates.
bool are_range(const syntax::Node& from, const syntax::Node& to);
void report_range(const syntax::Node& from, const syntax::Node& to, trade::Holds holds,
                  Diagnostics& diagnostics);

}
