#include "compiler/interview/draft.hpp"

#include <utility>

namespace quoin::interview {

const std::vector<AnsweredEntry>& Draft::entries(std::string_view section) const {
    static const std::vector<AnsweredEntry> none;
    const auto found = sections.find(section);
    return found == sections.end() ? none : found->second;
}

std::string_view Draft::value(std::string_view section, std::string_view label) const {
    const auto& all = entries(section);
    if (all.empty()) return {};
    const auto found = all.front().values.find(label);
    return found == all.front().values.end() ? std::string_view{} : found->second;
}

void Draft::set(std::string_view section, std::string_view label, std::string text) {
    auto& all = sections[std::string(section)];
    if (all.empty()) all.emplace_back();
    all.front().values[std::string(label)] = std::move(text);
}

}
