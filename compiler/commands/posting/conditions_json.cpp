#include "compiler/commands/posting/conditions_json.hpp"

#include <nlohmann/json.hpp>

namespace quoin::commands {

nlohmann::ordered_json conditions_json(const postings::Posting& posting) {
    auto json = nlohmann::ordered_json::array();
    for (const postings::Condition& condition : posting.conditions)
        json.push_back({{"about", condition.about},
                        {"line", condition.line},
                        {"sentence", condition.sentence}});
    return json;
}

}
