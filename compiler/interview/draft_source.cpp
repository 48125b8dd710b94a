#include "compiler/interview/draft_source.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/interview/messages.hpp"
#include "compiler/interview/questions.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <utility>

namespace quoin::interview {

namespace {

class SourceWriter {
public:
    SourceWriter(const Plan& plan, const Draft& draft, const std::set<Spot>& set_aside)
        : plan_(plan), draft_(draft), set_aside_(set_aside) {}

    DraftSource write() {
        line(fmt::format("# {}", fill<messages::opening_comment>()));
        line("# " + fill<messages::how_comments_go>());
        line("# " + fill<messages::how_entries_go>());
        line("");
        for (const Spot& spot : all_spots(plan_, draft_))
            if (spot.section > 0) add(spot);
        add_unplanned();
        return std::move(source_);
    }

private:
    void line(const std::string& text) {
        source_.text += text + '\n';
        ++lines_;
    }

    const PlannedSection& section(const Spot& spot) const { return plan_[spot.section]; }

    bool is_there(const Spot& spot) const {
        return spot.entry < draft_.entries(section(spot).name).size();
    }

    void add(const Spot& spot) {
        const bool further = section(spot).has_entries() && !is_there(spot);
        if (further && spot.entry > 0) return; // one to come, below those there are
        if (spot.step == 0 && spot.line == 0) open(spot);
        if (further)
            add_hints(spot);
        else
            add_answer(spot);
        if (spot.section == 1 && is_last_of_heading(spot)) add_settings();
    }

    bool is_last_of_heading(const Spot& spot) const {
        return spot.step + 1 == section(spot).labels.size();
    }

    // What stands above an entry: a blank line, and above the first of them its section's.
    void open(const Spot& spot) {
        if (!section(spot).holds) return;
        line("");
        if (spot.entry > 0) return;
        const bool filled = has_answers(section(spot));
        line(fmt::format("{}section: {}", filled ? "" : "# ", section(spot).title));
        line(filled ? "" : "#");
    }

    bool has_answers(const PlannedSection& one) const {
        return std::ranges::any_of(draft_.entries(one.name), [](const AnsweredEntry& entry) {
            return !entry.values.empty() || !entry.lines.empty();
        });
    }

    void add_hints(Spot spot) {
        for (spot.step = 0; spot.step < section(spot).labels.size(); ++spot.step)
            hint(spot);
    }

    void add_answer(const Spot& spot) {
        const std::string text = answer_at(plan_, draft_, spot);
        const std::string_view label = label_at(plan_, spot);
        if (text.empty() && label == "name")
            line(fmt::format("name: {}", trade::name_to_come));
        else if (!text.empty())
            answer(spot, label, text);
        else if (spot.line == 0)
            hint(spot);
    }

    void answer(const Spot& spot, std::string_view label, const std::string& text) {
        const bool aside = set_aside_.contains(spot);
        if (!aside) source_.spots.emplace(lines_ + 1, spot);
        const std::string sign = aside ? "# " : "";
        if (aside) line("# " + fill<messages::could_not_be_read>());
        if (label == bullet_label)
            line(sign + "- " + text);
        else if (label == more_groups)
            line(sign + text);
        else
            line(fmt::format("{}{}: {}", sign, label, text));
    }

    void hint(const Spot& spot) {
        const std::string_view label = label_at(plan_, spot);
        const Question question =
            question_at(section(spot), label, draft_.value(choice_section, "field"));
        if (label == bullet_label)
            line(fmt::format("# - {}", question.goes_in));
        else if (label == more_groups)
            line("# " + fill<messages::group_hint>());
        else
            line(fmt::format("# {}: {}", label, question.goes_in));
    }

    void add_settings() {
        line(fmt::format("stage: {}", draft_.value(choice_section, "stage").empty()
                                          ? trade::name_of(trade::Stage::undergraduate)
                                          : draft_.value(choice_section, "stage")));
        line("# " + fill<messages::updated_hint>());
    }

    // Of another stage or field that was chosen first: nothing that was typed is lost.
    void add_unplanned() {
        std::vector<std::string> lines;
        for (const auto& [name, entries] : draft_.sections) {
            const auto planned = std::ranges::find(plan_, name, &PlannedSection::name);
            for (const AnsweredEntry& entry : entries) {
                for (const auto& [label, text] : entry.values)
                    if (planned == plan_.end() || !is_one_of(label, planned->labels))
                        lines.push_back(fmt::format("# {}: {}", label, text));
                for (const std::string& text : entry.lines)
                    if (planned == plan_.end()) lines.push_back("# - " + text);
            }
        }
        if (lines.empty()) return;
        line("");
        line("# " + fill<messages::not_asked_for>());
        std::ranges::for_each(lines, [&](const std::string& text) { line(text); });
    }

    const Plan& plan_;
    const Draft& draft_;
    const std::set<Spot>& set_aside_;
    DraftSource source_;
    std::uint32_t lines_ = 0;
};

}

DraftSource draft_source(const Plan& plan, const Draft& draft, const std::set<Spot>& set_aside) {
    return SourceWriter(plan, draft, set_aside).write();
}

std::string answers_alone(const DraftSource& source) {
    std::string text;
    for (const std::string_view line : pieces_of(source.text, "\n"))
        if (!line.empty() && !line.starts_with('#')) text += fmt::format("  {}\n", line);
    return text;
}

}
