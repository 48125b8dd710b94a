// What each label does to the rules.
#include "compiler/office/rules_reader.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <array>

namespace quoin::office {

namespace {

template<typename Value>
Value value_of(Allowed<Value> Rules::*);
template<typename Member>
using AllowedValue = decltype(value_of(Member{}));

}

template<auto allowed>
void RulesReader::allow_named(const Statement& one) {
    using Value = AllowedValue<decltype(allowed)>;
    const auto found = items(*one.node, ItemForm::choices);
    if (!found) return;
    Allowed<Value> values{{}, {one.line(), {}}};
    const auto names = trade::names_of<Value>();
    for (const RuleItem& item : *found)
        if (const auto value = trade::named<Value>(item.text); !value)
            diagnostics_.error(item.place, fill<messages::no_choice>(
                                               in_quotes(one.row->label), in_quotes(item.text),
                                               listed(names), did_you_mean(item.text, names)));
        else if (is_one_of(*value, values.values))
            diagnostics_.error(item.place,
                               fill<messages::given_twice>(in_quotes(item.text), one.line()));
        else
            values.values.push_back(*value);
    each(one.stages, [&](Rules& rules) { rules.*allowed = values; });
}

template<auto names>
void RulesReader::know_names(const Statement& one) {
    const auto found = items(*one.node, ItemForm::names);
    if (!found) return;
    for (const RuleItem& item : *found)
        if (is_first(one, std::string(one.row->label) + ' ' + item.text, in_quotes(item.text), {},
                     item.place))
            each(one.stages, [&](Rules& rules) {
                (rules.*names).push_back({item.text, item.place.line});
            });
}

// What each label does; those within a phrase are read with it.
struct RulesReader::Handler {
    LabelName name;
    void (RulesReader::*run)(const Statement&);
};
constexpr RulesReader::Handler RulesReader::handlers[] = {
    {LabelName::office, &RulesReader::name_office},
    {LabelName::closing, &RulesReader::close},
    {LabelName::must, &RulesReader::rule_checks},
    {LabelName::should, &RulesReader::rule_checks},
    {LabelName::consider, &RulesReader::rule_checks},
    {LabelName::off, &RulesReader::rule_checks},
    {LabelName::always, &RulesReader::forbid_accepting},
    {LabelName::avoid, &RulesReader::avoid},
    {LabelName::prefer, &RulesReader::prefer},
    {LabelName::phrase, &RulesReader::add_phrase},
    {LabelName::order, &RulesReader::allow_named<&Rules::order>},
    {LabelName::dates_as, &RulesReader::allow_named<&Rules::date_forms>},
    {LabelName::themes, &RulesReader::allow_themes},
    {LabelName::employers, &RulesReader::know_names<&Rules::employers>},
    {LabelName::schools, &RulesReader::know_names<&Rules::schools>},
    {LabelName::courses, &RulesReader::know_names<&Rules::courses>},
};

void RulesReader::name_office(const Statement& one) {
    office_.name = one.node->value.joined();
}

void RulesReader::close(const Statement& one) {
    office_.closing = one.node->value.joined();
}

void RulesReader::run(const Statement& one) {
    if (one.limit) return set_limit(one);
    const std::string label(one.row->label);
    const bool once = one.row->where == Where::once || one.row->once_a_stage;
    if (once && !is_first(one, label, in_quotes(label), {}, one.node->label.place)) return;
    const auto* handler = std::ranges::find(handlers, one.row->name, &Handler::name);
    (this->*handler->run)(one);
}

void RulesReader::set_limit(const Statement& one) {
    const LimitRow& row = *one.limit;
    const std::string label(row.label);
    const auto value = read_limit(one.node->value, row, diagnostics_);
    if (!value || !is_first(one, label, in_quotes(label), {}, one.node->label.place)) return;
    each(one.stages, [&](Rules& rules) {
        rules.limits.*row.of = value->least;
        if (row.most) rules.limits.*row.most = value->most;
        rules.limits_set[label] = {one.line(), value->remark};
    });
}

bool RulesReader::is_known_check(const RuleItem& item) {
    if (is_one_of(std::string_view(item.text), known_.checks)) return true;
    diagnostics_.error(
        item.place,
        fill<messages::no_check>(in_quotes(item.text), did_you_mean(item.text, known_.checks)));
    return false;
}

void RulesReader::rule_checks(const Statement& one) {
    const auto found = items(*one.node, ItemForm::rulings);
    if (!found) return;
    const std::string label(one.row->label);
    std::optional<trade::Weight> weight;
    for (const trade::Weight each :
         {trade::Weight::must, trade::Weight::should, trade::Weight::consider})
        if (name_of(each) == label) weight = each;
    for (const RuleItem& item : *found)
        if (is_known_check(item) &&
            is_first(one, "check " + item.text, in_quotes(item.text), in_quotes(label), item.place))
            each(one.stages, [&](Rules& rules) {
                rules.checks[item.text] = {weight, {item.place.line, item.remark}};
            });
}

void RulesReader::forbid_accepting(const Statement& one) {
    const auto found = items(*one.node, ItemForm::rulings);
    if (!found) return;
    for (const RuleItem& item : *found)
        if (is_known_check(item) &&
            is_first(one, "always " + item.text, in_quotes(item.text), {}, item.place))
            each(one.stages, [&](Rules& rules) {
                rules.not_acceptable[item.text] = {item.place.line, item.remark};
            });
}

void RulesReader::avoid(const Statement& one) {
    const auto found = items(*one.node, ItemForm::words);
    if (!found) return;
    for (const RuleItem& item : *found)
        if (is_first(one, "word " + lower_case(item.text), in_quotes(item.text), item.remark,
                     item.place))
            each(one.stages, [&](Rules& rules) {
                rules.avoid.push_back({lower_case(item.text), item.remark, item.place.line});
            });
}

void RulesReader::prefer(const Statement& one) {
    const auto found = items(*one.node, ItemForm::words);
    if (!found) return;
    for (const RuleItem& item : *found)
        if (is_first(one, "verb " + lower_case(item.text), in_quotes(item.text), item.remark,
                     item.place))
            each(one.stages, [&](Rules& rules) {
                rules.prefer.push_back({lower_case(item.text),
                                        parted(lower_case(item.remark), ", \t"), item.place.line});
            });
}

// A line below a phrase.
void RulesReader::add_to(OfficePhrase& phrase, const Statement& one, const syntax::Node& node) {
    constexpr std::array<std::string_view, 3> weights{"must", "should", "consider"};
    const std::string text = node.value.joined();
    const LabelName name = label_row(node.label.text)->name;
    if (name == LabelName::weight) {
        const auto* weight = std::ranges::find(weights, text);
        if (weight != weights.end())
            phrase.weight = static_cast<trade::Weight>(weight - weights.begin());
        else
            diagnostics_.error(node.value.place(),
                               fill<messages::no_choice>("'weight'", in_quotes(text),
                                                         quoin::listed(weights),
                                                         did_you_mean(text, weights)));
        return;
    }
    std::string& own = name == LabelName::advice ? phrase.advice : phrase.source;
    if (own.empty())
        own = text;
    else
        diagnostics_.error(node.label.place,
                           fill<messages::given_twice>(in_quotes(node.label.text), one.line()));
}

void RulesReader::add_phrase(const Statement& one) {
    OfficePhrase phrase{one.node->value.joined(), {}, {}, trade::Weight::should, one.line()};
    const Place place = one.node->value.place();
    if (!is_first(one, "phrase " + lower_case(phrase.words), in_quotes(phrase.words), {}, place))
        return;
    for (const syntax::Node* node : one.below)
        add_to(phrase, one, *node);
    if (phrase.advice.empty())
        diagnostics_.error(place, fill<messages::phrase_without_advice>(in_quotes(phrase.words)));
    each(one.stages, [&](Rules& rules) { rules.phrases.push_back(phrase); });
}

void RulesReader::allow_themes(const Statement& one) {
    const auto found = items(*one.node, ItemForm::choices);
    if (!found) return;
    const std::vector<std::string_view> names(known_.themes.begin(), known_.themes.end());
    Allowed<std::string> themes{{}, {one.line(), {}}};
    for (const RuleItem& item : *found) {
        const bool is_file = item.text.ends_with(".theme");
        if (!is_file && !is_one_of(std::string_view(item.text), names))
            diagnostics_.error(item.place,
                               fill<messages::no_theme>(in_quotes(item.text), joined(names, " or "),
                                                        did_you_mean(item.text, names)));
        const std::filesystem::path path(item.text);
        themes.values.push_back(is_file ? path.stem().string() : item.text);
    }
    each(one.stages, [&](Rules& rules) { rules.themes = themes; });
}

}
