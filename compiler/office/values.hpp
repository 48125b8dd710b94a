// The values of rules out of their text, by grammar/office.hpp.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/office/limits.hpp"
#include "compiler/stages/syntax/tree.hpp"

#include <optional>
#include <string>
#include <vector>

namespace quoin::office {

struct RuleItem { // `text (remark)`
    std::string text;
    std::string remark;
    Place place; // of the text
};

enum class ItemForm { rulings, words, names, choices };

// None if it is at fault, which is reported.
std::optional<std::vector<RuleItem>> read_rule_items(const syntax::Value& value, ItemForm form,
                                                     Diagnostics& diagnostics);

struct LimitValue { // a single number is both
    double least = 0, most = 0;
    std::string remark;
};

// Within the range of its row.
std::optional<LimitValue> read_limit(const syntax::Value& value, const LimitRow& row,
                                     Diagnostics& diagnostics);

}
