#include "compiler/commands/help/table_json.hpp"

#include "compiler/base/json_text.hpp"
#include "compiler/commands/command_line.hpp"
#include "compiler/commands/verbs.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace quoin::commands {

namespace {

using Json = nlohmann::ordered_json;

// `-o`; empty if there is none.
std::string_view letter_of(const Option& option) {
    return option.names().substr(0, std::min(option.names().find(','), option.names().find("--")));
}

// `letter, a4` of `paper size: letter, a4`.
Json words_of(const Option& option) {
    Json words = Json::array();
    std::string_view left = option.words;
    while (!left.empty()) {
        left.remove_prefix(left.find(' ', left.find_first_of(":,")) + 1);
        words.push_back(left.substr(0, left.find(',')));
        if (left.find(',') == left.npos) break;
    }
    return words;
}

Json option_json(const Option& option) {
    return {{"name", option.name()},         {"letter", letter_of(option)},
            {"argument", option.argument()}, {"repeats", option.repeats()},
            {"does", option.does},           {"words", words_of(option)}};
}

Json verb_json(const Verb& verb) {
    Json options = Json::array();
    for (const Option& option : all_options())
        if (option.verb == verb.name) options.push_back(option_json(option));
    for (const Option& option : common_options())
        options.push_back(option_json(option));
    return {{"name", verb.name},
            {"does", verb.does},
            {"operands", verb.operands},
            {"notes", verb.notes},
            {"options", options}};
}

}

std::string table_json(std::span<const std::string_view> pages) {
    Json verbs = Json::array();
    for (const Verb& verb : all_verbs())
        verbs.push_back(verb_json(verb));
    return json_text(
        {{"version", 1}, {"program", version()}, {"references", pages}, {"verbs", verbs}});
}

}
