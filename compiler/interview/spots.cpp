// The order of questions: which there are, and what an answer to each changes.
#include "compiler/interview/plan.hpp"

#include "compiler/trade/limits.hpp"

#include <algorithm>
#include <utility>

namespace quoin::interview {

namespace {

constexpr std::size_t most_entries = 12, most_groups = 8;

std::size_t most_lines(std::string_view label) {
    return label == bullet_label ? trade::most_bullets : most_groups;
}

const AnsweredEntry* entry_at(const PlannedSection& section, const Draft& draft, std::size_t at) {
    const auto& entries = draft.entries(section.name);
    return at < entries.size() ? &entries[at] : nullptr;
}

// Of an entry that is there, or of the only one; of one to come, what it is called by.
void add_spots(const PlannedSection& section, const AnsweredEntry* entry, Spot spot,
               std::vector<Spot>& spots) {
    const bool whole = entry || !section.has_entries();
    for (spot.step = 0; spot.step < (whole ? section.labels.size() : 1); ++spot.step) {
        const std::string_view label = section.labels[spot.step];
        const std::size_t lines = entry ? entry->lines.size() : 0;
        const std::size_t asked =
            asks_for_lines(label) ? std::min(lines + 1, most_lines(label)) : 1;
        for (spot.line = 0; spot.line < std::max(asked, asks_for_lines(label) ? lines : 0);
             ++spot.line)
            spots.push_back(spot);
    }
}

void put_line(AnsweredEntry& entry, std::size_t at, std::string text) {
    if (at >= entry.lines.size() && !text.empty())
        entry.lines.push_back(std::move(text));
    else if (at < entry.lines.size() && text.empty())
        entry.lines.erase(entry.lines.begin() + static_cast<std::ptrdiff_t>(at));
    else if (at < entry.lines.size())
        entry.lines[at] = std::move(text);
}

}

bool asks_for_lines(std::string_view label) {
    return label == bullet_label || label == more_groups;
}

std::string_view label_at(const Plan& plan, const Spot& spot) {
    return plan.at(spot.section).labels.at(spot.step);
}

std::vector<Spot> all_spots(const Plan& plan, const Draft& draft) {
    std::vector<Spot> spots;
    for (std::size_t at = 0; at < plan.size(); ++at) {
        const std::size_t there = draft.entries(plan[at].name).size();
        const std::size_t asked =
            plan[at].has_entries() ? std::max(there, std::min(there + 1, most_entries)) : 1;
        for (std::size_t entry = 0; entry < asked; ++entry)
            add_spots(plan[at], entry_at(plan[at], draft, entry), {at, entry, 0, 0}, spots);
    }
    return spots;
}

std::string answer_at(const Plan& plan, const Draft& draft, const Spot& spot) {
    const AnsweredEntry* entry = entry_at(plan.at(spot.section), draft, spot.entry);
    if (!entry) return {};
    const std::string_view label = label_at(plan, spot);
    if (asks_for_lines(label))
        return spot.line < entry->lines.size() ? entry->lines[spot.line] : std::string{};
    const auto found = entry->values.find(label);
    return found == entry->values.end() ? std::string{} : found->second;
}

void put_answer(const Plan& plan, Draft& draft, const Spot& spot, std::string text) {
    const PlannedSection& section = plan.at(spot.section);
    const std::string_view label = label_at(plan, spot);
    auto& entries = draft.sections[std::string(section.name)];
    if (spot.entry >= entries.size() && text.empty()) return;
    if (spot.entry >= entries.size()) entries.emplace_back();
    AnsweredEntry& entry = entries[std::min(spot.entry, entries.size() - 1)];
    if (asks_for_lines(label))
        put_line(entry, spot.line, std::move(text));
    else if (!text.empty())
        entry.values[std::string(label)] = std::move(text);
    else if (spot.step == 0 && section.has_entries())
        entries.erase(entries.begin() + static_cast<std::ptrdiff_t>(spot.entry));
    else
        entry.values.erase(std::string(label));
}

}
