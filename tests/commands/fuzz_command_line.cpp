// Fuzz target: any words as a command line, a line each; no verb is run. What cannot be run is
// told, and what can be reads the same when it is written out in full.
#include "compiler/commands/read_command_line.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::commands {

namespace {

void require(bool holds) {
    if (!holds) std::abort();
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    for (std::size_t begin = 0; begin < text.size();) {
        const std::size_t end = std::min(text.find('\n', begin), text.size());
        lines.push_back(text.substr(begin, end - begin));
        begin = end + 1;
    }
    return lines;
}

// With long options, each with its value in one word, and the operands where nothing is an option.
std::vector<std::string> in_full(const Verb& verb, const Given& given) {
    std::vector<std::string> words{std::string(verb.name)};
    const auto add = [&](std::string_view option, const std::string& value) {
        if (!value.empty()) words.push_back("--" + std::string(option) + '=' + value);
    };
    for (const auto& [option, value] : given.texts)
        add(option, value);
    for (const auto& [option, values] : given.lists)
        for (const std::string& value : values)
            add(option, value);
    for (const auto& [option, is_given] : given.flags)
        if (is_given) words.push_back("--" + std::string(option));
    words.emplace_back("--");
    words.insert(words.end(), given.operands.begin(), given.operands.end());
    return words;
}

bool has_empty_value(const Given& given) {
    for (const auto& [option, values] : given.lists)
        for (const std::string& value : values)
            if (value.empty()) return true;
    return false;
}

}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static CommandLine line, again;
    const Asked asked = line.read(lines_of(std::string(data, data + size)));
    if (asked.what != Asked::What::verb) {
        require(asked.text.ends_with('\n'));
        return 0;
    }
    if (has_empty_value(line.given())) return 0;
    const Asked same = again.read(in_full(*asked.verb, line.given()));
    require(same.what == Asked::What::verb && same.verb == asked.verb && same.text == asked.text);
    require(again.given().operands == line.given().operands);
    require(again.given().all_options() == line.given().all_options());
    return 0;
}

}
