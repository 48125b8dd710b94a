// Lines to rules: those of all stages first, then those of some, which take their place.
#include "compiler/office/rules_reader.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/stages/syntax/parse.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace quoin::office {

namespace {

const LimitRow* limit_row(std::string_view label) {
    const auto* found = std::ranges::find(limit_rows, label, &LimitRow::label);
    return found == std::end(limit_rows) ? nullptr : found;
}

}

const LabelRow* label_row(std::string_view label) {
    const auto* found = std::ranges::find(label_rows, label, &LabelRow::label);
    return found == std::end(label_rows) ? nullptr : found;
}

void RulesReader::read(const syntax::Tree& tree) {
    for (const syntax::Block& block : tree.heading)
        read_block(block);
    for (const syntax::SectionTree& section : tree.sections)
        diagnostics_.error(section.opening.place, fill<messages::section_in_rules>());
    for (const bool of_all : {true, false})
        for (const Statement& one : statements_)
            if (one.stages.all() == of_all) run(one);
    check_whole();
}

void RulesReader::read_block(const syntax::Block& block) {
    Stages stages;
    stages.set();
    const LabelRow* before = nullptr;
    bool first = true;
    for (const syntax::Node& node : block) {
        if (node.kind == syntax::Node::Kind::bullet)
            diagnostics_.error(node.place, fill<messages::bullet_in_rules>());
        if (node.kind != syntax::Node::Kind::field) continue;
        add_statement(node, stages, std::exchange(first, false), before);
        before = label_row(node.label.text);
    }
}

void RulesReader::refuse_label(const syntax::Node& node) {
    std::vector<std::string_view> labels;
    for (const LabelRow& row : label_rows)
        labels.push_back(row.label);
    for (const LimitRow& row : limit_rows)
        labels.push_back(row.label);
    diagnostics_.error(node.label.place,
                       fill<messages::no_label>(in_quotes(node.label.text),
                                                did_you_mean(node.label.text, labels)));
}

void RulesReader::add_statement(const syntax::Node& node, Stages& stages, bool is_first,
                                const LabelRow* before) {
    const LabelRow* row = label_row(node.label.text);
    const LimitRow* limit = limit_row(node.label.text);
    if (!row && !limit) return refuse_label(node);
    const Where where = row ? row->where : Where::anywhere;
    if (where == Where::opens) {
        if (is_first)
            stages = stages_of(node);
        else
            diagnostics_.error(node.label.place, fill<messages::opens_block>());
    } else if (where == Where::in_phrase) {
        const bool goes_on =
            before && (before->name == LabelName::phrase || before->where == Where::in_phrase);
        if (goes_on && !statements_.empty())
            statements_.back().below.push_back(&node);
        else
            diagnostics_.error(node.label.place,
                               fill<messages::under_phrase>(in_quotes(node.label.text)));
    } else if (where == Where::once && !stages.all()) {
        diagnostics_.error(node.label.place,
                           fill<messages::not_in_block>(in_quotes(node.label.text)));
    } else {
        statements_.push_back({&node, row, limit, {}, stages});
    }
}

// All of them after an error, so that what stands in the block is read all the same.
Stages RulesReader::stages_of(const syntax::Node& node) {
    Stages stages;
    if (const auto found = items(node, ItemForm::choices))
        for (const RuleItem& item : *found) {
            const auto names = trade::names_of<trade::Stage>();
            if (const auto stage = trade::named<trade::Stage>(lower_case(item.text)))
                stages.set(static_cast<std::size_t>(*stage));
            else
                diagnostics_.error(item.place, fill<messages::no_choice>(
                                                   "'for'", in_quotes(item.text), listed(names),
                                                   did_you_mean(item.text, names)));
        }
    return stages.none() ? stages.set() : stages;
}

// Said again in its scope it is at fault, be it alike or otherwise.
bool RulesReader::is_first(const Statement& one, const std::string& key, const std::string& shown,
                           const std::string& what, const Place& place) {
    bool first = true;
    const auto say = [&](std::size_t scope) {
        const auto [before, is_new] = said_.try_emplace({key, scope}, Said{one.line(), what});
        if (is_new || !first) return;
        first = false;
        const Said& there = before->second;
        diagnostics_.error(place,
                           there.what == what
                               ? fill<messages::given_twice>(shown, there.line)
                               : fill<messages::otherwise>(shown, there.line, there.what, what));
    };
    if (one.stages.all()) say(stage_count);
    for (std::size_t stage = 0; stage < stage_count && !one.stages.all(); ++stage)
        if (one.stages[stage]) say(stage);
    places_.emplace(std::pair(key, one.line()), place);
    return first;
}

// Where what was said first reads well by itself.
void RulesReader::fault_once(const std::string& key, std::uint32_t line, std::string text) {
    if (!told_.insert(fmt::format("{}:{}", key, line)).second) return;
    const auto place = places_.find({key, line});
    diagnostics_.error(place == places_.end() ? Place{file_, line, 0, 0} : place->second,
                       std::move(text));
}

void RulesReader::check_stage(const Rules& rules) {
    for (const auto& [name, asked] : rules.not_acceptable)
        if (const auto off = rules.checks.find(name);
            off != rules.checks.end() && !off->second.weight)
            fault_once("always " + name, asked.line,
                       fill<messages::always_and_off>(in_quotes(name), off->second.asked.line));
    std::map<std::string_view, std::uint32_t> avoided;
    for (const WordToAvoid& word : rules.avoid)
        avoided.emplace(word.words, word.line);
    for (const PreferredVerb& verb : rules.prefer)
        if (const auto line = avoided.find(verb.verb); line != avoided.end())
            fault_once("verb " + verb.verb, verb.line,
                       fill<messages::avoided_and_preferred>(in_quotes(verb.verb), line->second));
    const Limits& limits = rules.limits;
    const Asked* shown = rules.set_by(&Limits::gpa_show);
    const Asked* left_out = rules.set_by(&Limits::gpa_leave_out);
    if (limits.gpa_leave_out > limits.gpa_show)
        fault_once(left_out ? "gpa-leave-out" : "gpa-show", (left_out ? left_out : shown)->line,
                   fill<messages::leaves_out_what_it_shows>(limits.gpa_leave_out, limits.gpa_show));
}

void RulesReader::check_whole() {
    for (const Rules& rules : office_.by_stage)
        check_stage(rules);
}

std::optional<Office> read_rules(const Sources& sources, std::uint32_t file, const Known& known,
                                 Diagnostics& diagnostics) {
    const std::size_t before = diagnostics.count(Severity::error);
    const syntax::Tree tree = parse(sources, file, diagnostics, syntax::Braces::text);
    RulesReader reader(file, known, diagnostics);
    reader.read(tree);
    if (diagnostics.count(Severity::error) > before) return std::nullopt;
    Office office = reader.take();
    const SourceFile& source = sources.file(file);
    office.path = source.path.empty() ? std::filesystem::path(source.name) : source.path;
    return office;
}

}
