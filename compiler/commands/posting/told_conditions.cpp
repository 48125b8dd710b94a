#include "compiler/commands/posting/told_conditions.hpp"

#include "compiler/base/utf8.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <string_view>

namespace quoin::commands {

namespace {

// As much of a sentence as tells what is asked.
std::string_view beginning_of(std::string_view sentence) {
    constexpr std::size_t most_told_bytes = 160;
    if (sentence.size() <= most_told_bytes) return sentence;
    std::size_t end = most_told_bytes;
    while (continues_character(sentence[end]))
        --end;
    return sentence.substr(0, end);
}

}

std::string conditions_text(const postings::Posting& posting) {
    if (posting.conditions.empty()) return {};
    std::string text = "Conditions, which no share counts: be ready to answer\n";
    for (const postings::Condition& condition : posting.conditions) {
        const std::string_view told = beginning_of(condition.sentence);
        text += fmt::format("  {}: posting, line {}: {}{}\n", condition.about, condition.line, told,
                            told.size() < condition.sentence.size() ? "\u2026" : "");
    }
    return text;
}

nlohmann::ordered_json conditions_json(const postings::Posting& posting) {
    auto json = nlohmann::ordered_json::array();
    for (const postings::Condition& condition : posting.conditions)
        json.push_back({{"about", condition.about},
                        {"line", condition.line},
                        {"sentence", condition.sentence}});
    return json;
}

}
