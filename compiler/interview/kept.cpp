#include "compiler/interview/kept.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/numbers.hpp"
#include "compiler/interview/choices.hpp"
#include "compiler/interview/messages.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <utility>

namespace quoin::interview {

namespace {

constexpr std::string_view between = " / ";

std::string spot_text(const Plan& plan, const Spot& spot) {
    return fmt::format("{1}{0}{2}{0}{3}{0}{4}", between, plan.at(spot.section).name, spot.entry + 1,
                       label_at(plan, spot), spot.line + 1);
}

// From 1; none if it is no such number.
std::optional<std::size_t> number_in(std::string_view text) {
    constexpr std::size_t most = 100000; // what is kept has fewer lines
    const std::size_t number = number_from<std::size_t>(text).value_or(0);
    return number > 0 && number <= most ? std::optional(number - 1) : std::nullopt;
}

std::optional<Spot> spot_in(std::string_view text, const Plan& plan) {
    const auto pieces = pieces_of(text, between);
    if (pieces.size() != 4) return std::nullopt;
    const auto section = std::ranges::find(plan, pieces[0], &PlannedSection::name);
    if (section == plan.end()) return std::nullopt;
    const auto label = std::ranges::find(section->labels, pieces[2]);
    const auto entry = number_in(pieces[1]), line = number_in(pieces[3]);
    if (label == section->labels.end() || !entry || !line) return std::nullopt;
    return Spot{static_cast<std::size_t>(section - plan.begin()), *entry,
                static_cast<std::size_t>(label - section->labels.begin()), *line};
}

// Every section that is asked about at some stage, with the labels of all fields.
using KnownLabels = std::map<std::string_view, std::vector<std::string_view>>;

KnownLabels known_labels() {
    KnownLabels known;
    for (const std::string_view stage : trade::names_of<trade::Stage>())
        for (const std::string_view field : field_names())
            for (const PlannedSection& section :
                 plan_for(*trade::named<trade::Stage>(stage), field))
                for (const std::string_view label : section.labels)
                    if (auto& labels = known[section.name]; !is_one_of(label, labels))
                        labels.push_back(label);
    return known;
}

// Behind those that are listed, the others.
void add_keys(std::vector<std::string_view>& list, const auto& map) {
    for (const auto& [key, value] : map)
        if (!is_one_of(std::string_view(key), list)) list.push_back(key);
}

std::string entry_text(const AnsweredEntry& entry, std::vector<std::string_view> labels) {
    std::string text;
    add_keys(labels, entry.values);
    for (const std::string_view label : labels)
        if (const auto found = entry.values.find(label); found != entry.values.end())
            text += fmt::format("{}: {}\n", label, found->second);
    for (const std::string& line : entry.lines)
        text += fmt::format("- {}\n", line);
    return text;
}

class KeptReader {
public:
    KeptReader(const SourceFile& file, std::uint32_t number, Diagnostics& diagnostics)
        : file_(file), number_(number), diagnostics_(diagnostics) {}

    std::optional<Kept> read() {
        if (file_.line(1) != kept_version) {
            fault(1, fill<messages::other_version>(kept_version));
            return std::nullopt;
        }
        for (line_ = 2; line_ <= file_.line_starts.size() && good_; ++line_)
            read_line(file_.line(line_));
        const auto next = spot_in(next_, plan_for(kept_.draft));
        if (good_ && !next) fault(next_line_, fill<messages::no_spot>(in_quotes(next_)));
        if (!good_) return std::nullopt;
        kept_.next = *next;
        return std::move(kept_);
    }

private:
    void fault(std::uint32_t line, std::string text) {
        diagnostics_.error({number_, line, line == 0 ? 0U : 1U, 0}, std::move(text));
        good_ = false;
    }

    void read_line(std::string_view text) {
        if (text.empty()) {
            entry_ = nullptr;
        } else if (text.starts_with('#')) {
            return;
        } else if (text.starts_with("- ")) {
            if (AnsweredEntry* entry = entry_here()) entry->lines.emplace_back(text.substr(2));
        } else if (const std::size_t colon = text.find(": "); colon == text.npos) {
            fault(line_, fill<messages::no_answer_line>(in_quotes(text)));
        } else {
            read_labelled(text.substr(0, colon), text.substr(colon + 2));
        }
    }

    void read_labelled(std::string_view label, std::string_view value) {
        if (label == "next" && section_.empty()) {
            next_ = value;
            next_line_ = line_;
        } else if (label == "section") {
            open_section(value);
        } else if (AnsweredEntry* entry = entry_here()) {
            read_answer(*entry, label, value);
        }
    }

    void open_section(std::string_view name) {
        section_ = name;
        entry_ = nullptr;
        if (known_.contains(name)) return;
        std::vector<std::string_view> names;
        for (const auto& [each, labels] : known_)
            names.push_back(each);
        fault(line_, fill<messages::no_such_section>(in_quotes(name), did_you_mean(name, names)));
    }

    void read_answer(AnsweredEntry& entry, std::string_view label, std::string_view value) {
        const auto& labels = known_.at(section_);
        const bool is_choice = section_ == choice_section && is_one_of(label, labels);
        if (is_choice && !choices_for(label).chosen(value))
            fault(line_, choices_for(label).refusal(value));
        else if (!is_one_of(label, labels))
            fault(line_,
                  fill<messages::no_such_label>(in_quotes(label), did_you_mean(label, labels)));
        else if (!entry.values.emplace(label, value).second)
            fault(line_, fill<messages::answered_twice>(in_quotes(label)));
    }

    AnsweredEntry* entry_here() {
        if (section_.empty()) {
            fault(line_, fill<messages::no_section_yet>());
            return nullptr;
        }
        if (!entry_) entry_ = &kept_.draft.sections[std::string(section_)].emplace_back();
        return entry_;
    }

    const SourceFile& file_;
    std::uint32_t number_, line_ = 0, next_line_ = 0;
    Diagnostics& diagnostics_;
    const KnownLabels known_ = known_labels();
    Kept kept_;
    std::string_view section_, next_;
    AnsweredEntry* entry_ = nullptr;
    bool good_ = true;
};

}

std::string kept_text(const Kept& kept) {
    const Plan plan = plan_for(kept.draft);
    std::string text = fmt::format("{}\n# {}\nnext: {}\n", kept_version,
                                   fill<messages::kept_comment>(), spot_text(plan, kept.next));
    std::vector<std::string_view> names;
    for (const PlannedSection& section : plan)
        names.push_back(section.name);
    add_keys(names, kept.draft.sections);
    for (const std::string_view name : names) {
        if (kept.draft.entries(name).empty()) continue;
        const auto planned = std::ranges::find(plan, name, &PlannedSection::name);
        text += fmt::format("\nsection: {}\n", name);
        for (const AnsweredEntry& entry : kept.draft.entries(name))
            text += '\n' + entry_text(entry, planned == plan.end() ? std::vector<std::string_view>{}
                                                                   : planned->labels);
    }
    return text;
}

std::optional<Kept> read_kept(const Sources& sources, std::uint32_t file,
                              Diagnostics& diagnostics) {
    return KeptReader(sources.file(file), file, diagnostics).read();
}

}
